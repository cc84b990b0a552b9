import { t } from '../../words/t.ts';

const ABOUTS = ['ready', 'found', 'part-late', 'reminder', 'other'] as const;
const WAYS = ['phone', 'message', 'mail', 'letter', 'person'] as const;

/** What a word to a customer is about. */
export type About = (typeof ABOUTS)[number];
/** How it went to them. */
export type Way = (typeof WAYS)[number];

/** Every way to reach somebody, with its words. */
export const wayOptions = () => WAYS.map((value) => ({ value, words: t(`contact.way-${value}`) }));

/** Everything a word may be about, with its words. */
export const aboutOptions = () => ABOUTS.map((value) => ({ value, words: t(`contact.about-${value}`) }));

export const readAbout = (text: string): About => ABOUTS.find((about) => about === text) ?? 'other';

/** Whether what was sent this way is known to have reached them: only where somebody spoke with them. */
export const isTalk = (way: Way): boolean => way === 'phone' || way === 'person';
