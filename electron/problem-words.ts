import type { Problem } from '../core/contract/problems.ts';

/** What does not fit with a field, as the command line says it: the end of a sentence that begins with the field. */
const SENTENCES: Readonly<Record<Problem, string>> = {
  missing: 'is missing',
  'too-long': 'is longer than {most} signs',
  'too-much': 'is more than {most}',
  'too-little': 'is less than {least}',
  'too-many': 'has more than {most}',
  'too-few': 'has fewer than {least}',
  'not-whole': 'is no whole number',
  'not-a-number': 'is no number',
  'not-text': 'is no text',
  'not-yes-or-no': 'is neither true nor false',
  'not-a-list': 'is no list',
  'not-fields': 'is no object with fields',
  'unknown-field': 'is a field that nobody asked for',
  'not-one-of-these': 'is none of: {choices}',
  'wrong-form': 'does not have the form that is wanted',
  'control-character': 'holds a character that cannot be printed',
  'broken-character': 'holds half a character',
  'not-a-plate': 'is no plate: letters, digits, spaces and dashes only',
  'vin-character': 'holds I, O or Q, which no VIN has',
  'out-of-range': 'is out of range',
  'not-json': 'is not JSON ({why})',
  'practice-only': 'is taken in practice shops only',
  'used-for-another': 'was used for another call',
  'owner-needed': 'needs at least one owner',
  'one-usual': 'needs exactly one that is the usual one',
  'same-name-twice': 'is the name of another one already',
  'same-row-twice': 'stands there twice',
  'row-missing': 'leaves out a row that is there',
  'number-taken': 'is the number of another one already',
  'unknown-zone': 'is no time zone that is known',
  'set-once': 'is set once, at the beginning',
  'already-here': 'is here already',
  'arrived-already': 'has arrived already',
  'corrected-already': 'was corrected already',
  'in-the-future': 'lies in the future',
  'in-the-past': 'lies in the past',
  'before-on': 'lies before the beginning',
  'before-from': 'lies before the first day',
  'before-the-last': 'lies before {from}, when the present one began',
  'below-mileage-in': 'is less than the {in} with which the car came in',
  'steps-out-of-order': 'are not numbered in order',
  'needed-for-work': 'is needed for work',
  'needed-for-yes': 'is needed for a yes',
  needed: 'is needed',
  'number-needed': 'needs the number that was tried',
  'signature-needed': 'needs a signature',
  'more-than-billed': 'is more than the {left} that stand on the invoice',
  'more-than-nothing': 'has to be more than nothing',
};

/** One problem in words; a check without a name of its own speaks for itself. */
export function sayProblem(problem: string, figures: Readonly<Record<string, string | number>> = {}): string {
  const sentence = Object.hasOwn(SENTENCES, problem) ? SENTENCES[problem as Problem] : problem;
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => String(figures[name] ?? whole));
}
