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
} as const;
