import { useSyncExternalStore } from 'react';

/** The eight places, in the order of Alt 1 to Alt 8. */
export const PLACES = ['today', 'orders', 'cars', 'customers', 'stock', 'job-book', 'money', 'shop'] as const;
export type PlaceName = (typeof PLACES)[number];

/** `#/orders/ID/yes?from=today` is place 'orders', path ['ID', 'yes'], query {from: 'today'}. */
export interface Route {
  readonly place: PlaceName;
  readonly path: readonly string[];
  readonly query: URLSearchParams;
}

/** Reads a hash. What is not known is Today. */
export function readRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const [place, ...rest] = path
    .split('/')
    .filter((part) => part !== '')
    .map(decode);
  const known = PLACES.find((name) => name === place);
  return { place: known ?? 'today', path: known ? rest : [], query: new URLSearchParams(query) };
}

function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** The hash of a place, for links: hrefOf('orders', id, 'yes'). */
export function hrefOf(place: PlaceName, ...path: readonly string[]): string {
  return `#/${[place, ...path.map(encodeURIComponent)].join('/')}`;
}

/** Goes there. */
export function goTo(place: PlaceName, ...path: readonly string[]): void {
  window.location.hash = hrefOf(place, ...path);
}

const hash = () => window.location.hash;
function onHash(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

/** Where the window is. */
export function useRoute(): Route {
  return readRoute(useSyncExternalStore(onHash, hash));
}
