import type { DateForm } from '../time/date-form.ts';
import type { PaperDate, PaperGarage } from './parts.ts';

/** A letter to a customer: no paper with a number, only words. A text that is not there is ''. */
export interface LetterDocument {
  /** Practice shop: the letter says so. */
  readonly practice: boolean;
  readonly language: 'en' | 'de';
  /** Absent: as the language writes a date. */
  readonly dateForm?: DateForm;
  readonly size: 'A4' | 'Letter';
  readonly garage: PaperGarage;
  readonly date: PaperDate;
  /** The same moment in epoch milliseconds: the date inside the PDF file. */
  readonly writtenAt: number;
  /** Name first, then the lines of the address. */
  readonly to: readonly string[];
  readonly subject: string;
  /** Paragraphs parted by empty lines; a line break stays one. */
  readonly text: string;
}
