/** Why something is held, and the stops before an invoice. Amounts come in as text. */
export const held = {
  'clock-open': '{person}’s clock is still running.',
  'clock-forgotten': '{person} forgot a clock; put it right.',
  'job-without-yes': '{letter} has no yes yet.',
  'over-the-yes': '{excess} beyond the yes.',
  'over-own-maximum': '{excess} over the most that the customer wants to spend.',
  'po-missing': 'The account wants a purchase order number.',
  'part-on-no-line': '{words} was drawn from stock but stands on no line.',
  'torque-missing': '{letter}, step {step}: {missing} torque entries are missing.',
  'second-missing': '{letter}, step {step}: the second person has not signed.',
  'mileage-out-missing': 'The mileage on leaving is missing.',
  'outside-bill-missing': 'The bill for “{words}” is not here; its cost is a guess.',
  'old-parts-unanswered': 'Nobody has said what becomes of the old parts.',
  other: 'It waits on something else ({what}).',
} as const;
