/** Words of Shop's settings that a sheet is reckoned by. */
export const rules = {
  // The fee for waste.
  waste: 'Waste fee',
  wasteNo: 'none',
  wasteYes: 'once an order',
  wasteSays:
    'Stands under the jobs of an order that charges for work, never typed, and bears the tax of the kind fee. A local rule may forbid, limit or name it.',
  wasteAmount: 'The fee',
  wasteCalled: 'Called on papers',
  wasteWords: 'Waste disposal',
  wasteWhen: 'It stands on',
  'waste-charged': 'every order with a charged job',
  'waste-part-or-fluid': 'only where a charged job holds a part or fluid',
  // Charges on old units.
  core: 'Tax on an old unit’s charge',
  'core-refunded': 'taxed, goes back with it',
  'core-kept': 'taxed, stays',
  'core-kept-on-new': 'stays on new parts only',
  'core-share': 'a share of the exchange price',
  'core-none': 'no tax',
  'coreSays-refunded': 'A line of kind core bears its taxes; a credit note for it gives them back.',
  'coreSays-kept': 'A line of kind core bears its taxes; a credit note for it gives back the charge without them.',
  'coreSays-kept-on-new':
    'A credit note gives the tax back where the job holds a rebuilt or reconditioned part; where it does not, the tax stays.',
  'coreSays-share':
    'The charge bears no tax. A job with a core line bears the taxes of kind core on a share of what its rebuilt or reconditioned parts come to; it stands on a line of its own.',
  'coreSays-none': 'A line of kind core bears no tax, whatever falls on its kind.',
  coreShare: 'The old unit counts as',
  coreShareSays: 'At 10 % and a tax of 19 %, an exchange for 1000.00 comes to 1000.00 + 190.00 + 19.00 = 1209.00.',
  // Clocked time on the bill.
  billing: 'Clocked time on the bill',
  billingSays: 'Counts for lines that charge as clocked; people are paid from their true minutes.',
  billingExample: '{minutes} min come to {hours}.',
  billingStep: 'Step, hours',
  billingWrong: 'Hours from 0.01 to 1, such as 0.1 or 0.25.',
  billingWay: 'Time between two steps',
  'billing-nearest': 'goes to the nearest',
  'billing-up': 'goes up',
} as const;
