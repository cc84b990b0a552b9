import './node-version.ts';
import './compile-cache.ts';

// Only what is loaded after the cache is there can come from it.
await import('./start-shop.ts');
