import { enableCompileCache } from 'node:module';
import { resolve } from 'node:path';

// What Node made of the sources is kept beside its packages: the next start takes half the time. Not in the machine's
// common folder for such things, where another account could lay something in. Where it cannot be written, nothing is kept.
enableCompileCache(resolve(import.meta.dirname, '../node_modules/.cache/crownwheel'));
