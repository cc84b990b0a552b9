import { MESSAGE_WORDS, type MessageAbout } from './message-words.ts';

/** Figures by name, ready to be read; an empty one is not known. */
export type MessageFigures = Readonly<Record<string, string>>;

export interface Message {
  readonly subject: string;
  readonly text: string;
  /** Names of figures that the wording asks for and nobody knows: they stand as … */
  readonly missing: readonly string[];
}

/**
 * A message in the shop's own wording, or the program's where `own` is empty: each {name} becomes its figure. A name that
 * no figure has stays as it was typed, so that a slip of the pen is seen.
 */
export function writeMessage(
  about: MessageAbout,
  language: 'en' | 'de',
  own: string,
  figures: MessageFigures,
): Message {
  const missing = new Set<string>();
  const fill = (wording: string) =>
    wording.replace(/\{(\w+)\}/g, (whole, name: string) => {
      if (!Object.hasOwn(figures, name)) return whole;
      const figure = figures[name] ?? '';
      if (figure === '') missing.add(name);
      return figure === '' ? '…' : figure;
    });
  const words = MESSAGE_WORDS[language];
  const subject = fill(words.subject[about]);
  return { subject, text: fill(own === '' ? words.text[about] : own), missing: [...missing] };
}
