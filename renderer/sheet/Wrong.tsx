import { useWriting } from '../state/shop.ts';
import type { CallError } from '../state/transport.ts';
import { errorSentence, figureWords, heldSentence, problemSentence } from '../words/error-sentence.ts';
import type { Writing } from '../words/figures.ts';
import { tMaybe } from '../words/t.ts';

/** What went wrong, as a sentence beside the control that was used. */
export function Wrong({ error }: { readonly error: CallError | null }) {
  const writing = useWriting();
  if (error === null) return null;
  return (
    <p className="wrong-words" role="alert">
      {wrongSentence(error, writing)}
    </p>
  );
}

/** The sentence of an error on the order page: the page's own words where it has them, else the program's. */
export function wrongSentence(error: CallError, writing: Writing): string {
  if (error.code === 'held')
    return error.reasons
      .map(
        (reason) =>
          tMaybe(`sheet.held-${reason.what}`, figureWords(reason.with, writing)) ?? heldSentence(reason, writing),
      )
      .join(' ');
  if (error.code !== 'bad-input' || error.fields.length === 0) return errorSentence(error, writing);
  return error.fields
    .map(
      (field) =>
        tMaybe(`sheet.wrong-${field.problem}`) ??
        `${tMaybe(`sheet.field-${field.path}`) ?? field.path}: ${problemSentence(field.problem, field.with)}.`,
    )
    .join(' ');
}
