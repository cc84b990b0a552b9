/**
 * Everything that can hold an operation, with the figures that always come with it: sums in minor units, quantities in
 * thousandths. Sentences live in the words of each door; a test holds that each has one, and that it asks for no figure
 * that does not come.
 */
export const HELD = {
  // Stops before an invoice.
  'clock-open': ['person'],
  'clock-forgotten': ['person'],
  'job-without-yes': ['letter'],
  'over-the-yes': ['excess'],
  /** The same for whoever may not see prices. */
  'beyond-the-yes': [],
  'over-own-maximum': ['maximum', 'excess'],
  'beyond-own-maximum': [],
  'po-missing': [],
  'part-on-no-line': ['words'],
  'torque-missing': ['letter', 'step', 'missing'],
  'second-missing': ['letter', 'step'],
  'step-failed': ['letter', 'step'],
  'step-not-needed': ['letter', 'step'],
  'final-check-missing': ['letter'],
  quarantine: ['words'],
  'mileage-out-missing': [],
  'outside-bill-missing': ['words'],
  'old-parts-unanswered': [],
  // On the sheet.
  invoiced: ['number'],
  'nothing-on-the-sheet': [],
  'quote-declined': [],
  'quote-empty': [],
  'job-worked-on': ['letter'],
  'discount-over-limit': ['percent', 'fits'],
  'storage-not-agreed': [],
  'storage-none-due': [],
  'storage-stays': [],
  'storage-charged': ['until'],
  // At the door.
  'mileage-lower': ['last', 'typed'],
  // The yes.
  'unsafe-no-needs-signature': ['letter'],
  'free-work-needs-owner': ['letter'],
  'charged-work-needs-customer': ['letter'],
  'nobody-else-pays': [],
  'not-named': ['name'],
  'over-their-limit': ['name', 'upTo'],
  // On account.
  'over-credit-limit': ['name', 'over'],
  /** The same for whoever may not see prices. */
  'beyond-credit-limit': ['name'],
  'inside-credit-limit': [],
  'po-before-work': ['name'],
  // What somebody asks about themselves.
  'must-stay': ['what'],
  // On the bench.
  'no-clock-running': [],
  'clock-before-last': ['on'],
  'hold-point': ['step', 'hold'],
  'second-is-first': [],
  'other-does-it': ['letter', 'step'],
  'measure-outside': ['what', 'least', 'most'],
  'step-settled': ['letter', 'step'],
  'torque-not-due': ['touch', 'due'],
  'torque-too-many': ['left'],
  'torque-none-made': [],
  'procedure-wrong': ['step', 'rule'],
  'procedure-draft': [],
  'by-other': [],
  'more-than-issued': ['left'],
  'photo-not-printable': [],
  // Money.
  'no-invoice-yet': [],
  'more-than-open': ['open'],
  'more-than-held': ['held'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type HeldWhat = keyof typeof HELD;

/** The figures that a reason comes with. */
export type HeldWith<W extends HeldWhat> = Readonly<Record<(typeof HELD)[W][number], string | number>>;

/** Why something is held, as it is answered. */
export interface HeldReason {
  readonly what: HeldWhat;
  readonly with: Readonly<Record<string, string | number>>;
}

/** The reasons that may stand before an invoice. */
export const STOP_WHATS = [
  'clock-open',
  'clock-forgotten',
  'job-without-yes',
  'over-the-yes',
  'beyond-the-yes',
  'over-own-maximum',
  'beyond-own-maximum',
  'po-missing',
  'part-on-no-line',
  'torque-missing',
  'second-missing',
  'step-failed',
  'step-not-needed',
  'final-check-missing',
  'quarantine',
  'mileage-out-missing',
  'outside-bill-missing',
  'old-parts-unanswered',
] as const satisfies readonly HeldWhat[];
export type StopWhat = (typeof STOP_WHATS)[number];
