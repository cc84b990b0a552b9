import type { HeldReason } from '../../core/contract/held.ts';
import { figureWords, heldSentence } from '../words/error-sentence.ts';
import type { Writing } from '../words/figures.ts';
import { tMaybe } from '../words/t.ts';

/** What stops the invoice, as one sentence. */
export function stopSentence(stop: HeldReason, writing: Writing): string {
  return tMaybe(`sheet.held-${stop.what}`, figureWords(stop.with, writing)) ?? heldSentence(stop, writing);
}
