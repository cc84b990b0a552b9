import type { IncomingMessage } from 'node:http';
import { plainPage } from './plain-page.ts';

/** Why somebody is turned away, as a heading, and what to do about it; whatever else: the last one. */
const WORDS: Readonly<Record<string, readonly [title: string, todo: string]>> = {
  key: [
    'This link was used before, or is too old',
    'Each link opens one window, once, within ten minutes. Close this page and start Crownwheel again on this machine: it makes a new link, also while it runs already.',
  ],
  session: [
    'This window is not let in',
    'Crownwheel was started anew since this page was opened, or the page was never let in. Close it and start Crownwheel again on this machine: it opens a window of its own, also while it runs already.',
  ],
  path: ['There is nothing at this address', 'The window of the shop stands at <a href="/">the beginning</a>.'],
};
const OTHER = [
  'This page was turned away',
  'It did not come from Crownwheel’s own window. Close it and start Crownwheel again on this machine: it opens a window of its own, also while it runs already.',
] as const;

/** Whether it is a person who opened an address in a browser, and not a window, a script or the command line that calls. */
export const isPageVisit = (request: IncomingMessage): boolean =>
  request.method === 'GET' && /\btext\/html\b/i.test(request.headers.accept ?? '');

/** What a person sees who is turned away at the door, by the reason that a caller would be given. */
export function turnedAwayPage(why: string): string {
  const [title, todo] = Object.hasOwn(WORDS, why) ? (WORDS[why] ?? OTHER) : OTHER;
  return plainPage(title, `<p role="alert">${todo}</p>`);
}
