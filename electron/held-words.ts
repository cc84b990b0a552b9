import type { HeldReason, HeldWhat } from '../core/contract/held.ts';

/** Why something is held, as the command line says it. Sums are in minor units there, as everywhere in its answers. */
const SENTENCES: Readonly<Record<HeldWhat, string>> = {
  'clock-open': 'the clock of {person} is still running',
  'clock-forgotten': '{person} forgot a clock: correct it first',
  'job-without-yes': 'job {letter} has no yes',
  'over-the-yes': 'the sheet is {excess} beyond the yes',
  'beyond-the-yes': 'the sheet is beyond the yes',
  'over-own-maximum': "the sheet is {excess} over the customer's own maximum of {maximum}",
  'beyond-own-maximum': "the sheet is over the customer's own maximum",
  'po-missing': 'the account wants a purchase order number',
  'part-on-no-line': '"{words}" was issued and stands on no line',
  'torque-missing': 'job {letter}, step {step}: {missing} torque entries are missing',
  'second-missing': 'job {letter}, step {step}: the second person has not signed',
  'mileage-out-missing': 'the mileage on leaving is missing',
  'outside-bill-missing': 'the bill for "{words}" is not here',
  'old-parts-unanswered': 'nobody has said what becomes of the old parts',
  invoiced: 'invoice {number} is made and the sheet is closed: a credit note corrects it',
  'nothing-on-the-sheet': 'nothing stands on the sheet',
  'job-worked-on': 'job {letter} was worked on',
  'discount-over-limit': 'the desk takes off up to {percent} %, here {fits}; the owner may take off more',
  'mileage-lower': 'the car came with {last} last time and {typed} is less: say why with mileageDoubt',
  'unsafe-no-needs-signature': 'a no to job {letter} is unsafe and needs a signature',
  'free-work-needs-owner': 'job {letter} is free work: the owner says yes to it',
  'charged-work-needs-customer': 'job {letter} is charged: the owner cannot say yes for who pays',
  'nobody-else-pays': 'nobody but the customer pays for this order: name the payer first',
  'not-named': 'the customer has not named {name}',
  'over-their-limit': '{name} may say yes up to {upTo}',
  'no-clock-running': 'no clock is running',
  'clock-before-last': 'the clock would end before it began ({on})',
  'hold-point': 'step {step} holds: {hold}',
  'second-is-first': 'the second person must be somebody else',
  'more-than-issued': 'that is more than was issued and is not back yet: {left}',
  'photo-not-printable': 'a WebP picture cannot be printed: keep it as JPEG or PNG',
  'no-invoice-yet': 'there is no invoice yet: take it as a deposit',
  'more-than-open': 'only {open} is open',
  'more-than-held': 'only {held} is held for the customer',
};

/** One reason in words. */
export function sayHeld({ what, with: figures }: HeldReason): string {
  return SENTENCES[what].replace(/\{(\w+)\}/g, (whole, name: string) => String(figures[name] ?? whole));
}
