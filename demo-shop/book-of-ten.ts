import type { InputOf } from '../core/contract/index.ts';

export type BookJob = InputOf<'jobBook.save'>['content'];
type Step = BookJob['steps'][number];
type Line = BookJob['lines'][number];

const INVENTED = 'invented for practice, no figure of a real car: write the maker’s manual and its page here';
const FIRST = 'The maker’s manual, local rules and licensed people come first.';

const numbered = (steps: readonly Omit<Step, 'n'>[]): Step[] => steps.map((step, at) => ({ n: at + 1, ...step }));

/** A new part, so many whole ones, its price and what it costs us in cents. */
const fresh = (words: string, count: number, unitPrice: number, unitCost: number): Line => ({
  ...{ kind: 'part', words, condition: 'new' },
  ...{ quantity: count * 1000, unitPrice, unitCost },
});
const oil = (words: string, millilitres: number, unitPrice: number, unitCost: number): Line => ({
  ...{ kind: 'fluid', words, quantity: millilitres, unit: 'L' },
  ...{ unitPrice, unitCost },
});
const ring = (what: string, count: number, newtonMetres: readonly number[], sides = 1): Step['torque'] => ({
  ...{ what, pattern: 'ring', count, sides },
  stages: newtonMetres.map((Nm) => ({ Nm })),
});
const wheels = (Nm: number): Omit<Step, 'n'> => ({
  do: 'Wheels on, crosswise, car on the floor',
  second: 'signs',
  torque: ring('Wheel bolts', 5, [Nm], 2),
  recheckCard: true,
});
const LIFT: Omit<Step, 'n'> = {
  do: 'Lift on the maker’s points, rock test, arms locked',
  second: 'looks',
  hold: 'the car rocks: down again',
};
const DRIVE: Omit<Step, 'n'> = {
  do: 'Test drive by the other person; leaks, noise, heat',
  second: 'does it',
  hold: 'noise or heat: the car does not leave',
};
const AGAIN: NonNullable<BookJob['after']>[number] = {
  ...{ source: 'wheel-recheck', words: 'Tighten the wheels again', days: 14, distance: 50 },
};

/** What the demo garage wrote into its job book besides the jobs that a book begins with. All figures invented. */
export const OUTPUT_SEAL: BookJob = {
  title: 'Left output seal of the rear differential',
  car: 'Corvane R coupe (invented)',
  bookHours: 1100,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Output seal', 1, 1875, 820),
    fresh('Shaft circlip', 1, 390, 150),
    oil('Gear oil 75W-90', 200, 3150, 1480),
  ],
  cautions: ['The bore is soft: no screwdriver on it.', 'Oil can be hot: gloves and eye cover.', FIRST],
  steps: numbered([
    LIFT,
    { do: 'Wheel off, shaft drawn from the side gear, hung up level', oneTime: [{ part: 'shaft circlip', count: 1 }] },
    { do: 'Old seal prised out all round, a little at a time', care: 'oil runs out: tray under it' },
    {
      do: 'Bore and lip looked at; the running mark on the shaft felt',
      hold: 'a groove: stop, price a shaft',
      photoWanted: true,
    },
    {
      do: 'New seal in square to its depth, lip oiled',
      tool: 'seal driver',
      oneTime: [{ part: 'output seal', count: 1 }],
    },
    { do: 'Shaft in with a new circlip, pulled to prove it' },
    {
      do: 'Top up on level ground',
      level: 'it runs over the lip of the hole',
      fluidIn: { what: 'gear oil 75W-90', quantity: 200, strokes: 10 },
      torque: { what: 'Fill plug', pattern: 'free', count: 1, stages: [{ Nm: 35 }] },
    },
    wheels(110),
    DRIVE,
  ]),
  after: [AGAIN],
};

const CLUTCH: BookJob = {
  title: 'Clutch with its flywheel looked at',
  car: 'Oriel Estate 2.0d (invented)',
  people: 2,
  bookHours: 5400,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Clutch, set', 1, 26_800, 17_400),
    fresh('Flywheel bolt', 8, 420, 190),
    fresh('Cover bolt', 6, 260, 110),
    oil('Gearbox oil 75W', 1900, 2400, 1150),
  ],
  cautions: [
    'The gearbox is heavy: jack under it before the last bolt.',
    'Clutch dust of old cars as asbestos: no air line, no dry brush.',
    FIRST,
  ],
  steps: numbered([
    { do: 'Battery off; lift on the maker’s points, arms locked', second: 'looks', hold: 'the car rocks: down again' },
    { do: 'Fill plug of the gearbox loosened', plug: 'fill-opened', hold: 'seized: stop, price, ask' },
    {
      do: 'Gearbox drained warm',
      plug: 'drained',
      care: 'oil can be hot: gloves, eyes',
      fluidOut: { what: 'gearbox oil', quantity: 1900 },
    },
    { do: 'Shafts out, mount off, gearbox down on the jack', second: 'holds', hold: 'balance of the car' },
    { do: 'Clutch off a turn at a time; flywheel looked at for cracks and blue spots', photoWanted: true },
    {
      do: 'Play of the flywheel measured',
      hold: 'outside: stop, price a flywheel',
      measure: { what: 'play', unit: 'mm', least: 0, most: 12, places: 2 },
    },
    {
      do: 'Flywheel on, new bolts, locked',
      second: 'signs',
      oneTime: [{ part: 'flywheel bolt', count: 8 }],
      torque: {
        ...{ what: 'Flywheel bolts', pattern: 'ring', count: 8 },
        stages: [{ Nm: 25 }, { Nm: 60 }, { degrees: 90 }],
        thread: { words: 'M10 x 1', diameter: 10, nut: 'lubricated' },
      },
    },
    {
      do: 'Disc centred, cover on evenly',
      oneTime: [{ part: 'cover bolt', count: 6 }],
      torque: {
        ...{ what: 'Cover bolts', pattern: 'ring', count: 6 },
        stages: [{ Nm: 10 }, { Nm: 22 }],
        checkRound: true,
      },
    },
    { do: 'Gearbox up, dowels in, bolts by hand first', second: 'holds' },
    {
      do: 'Bell housing bolts',
      second: 'signs',
      torque: {
        what: 'Bell housing',
        pattern: 'angles',
        count: 7,
        degrees: [0, 48, 96, 150, 205, 258, 310],
        stages: [{ Nm: 45 }],
      },
    },
    {
      do: 'Gearbox filled on level ground',
      level: 'it runs over the lip of the hole',
      fluidIn: { what: 'gearbox oil 75W', quantity: 1900 },
    },
    wheels(110),
    DRIVE,
  ]),
  after: [AGAIN],
};

const HEAD_GASKET: BookJob = {
  title: 'Cylinder head gasket',
  car: 'Marlow Kestrel 1.6 (invented)',
  people: 2,
  bookHours: 9200,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Head gasket, set', 1, 14_200, 7900),
    fresh('Head bolt', 10, 690, 310),
    oil('Engine oil 5W-30', 4500, 1400, 610),
    oil('Coolant', 6000, 650, 240),
    { kind: 'outside', words: 'Head skimmed and tried for leaks', quantity: 1000, unitPrice: 18_500, unitCost: 14_000 },
  ],
  cautions: [
    'Never open a hot cooling system.',
    'Coolant is poison for people and animals: none is left standing.',
    FIRST,
  ],
  steps: numbered([
    { do: 'Engine cold, cap off, coolant drained', hold: 'hot: wait', fluidOut: { what: 'coolant', quantity: 6000 } },
    { do: 'Belt marks set and photographed, belt off', photoWanted: true },
    { do: 'Head bolts out from the outside in, head off with a helper', second: 'holds' },
    {
      do: 'Face of the block measured for flatness',
      hold: 'outside: stop, ring',
      measure: { what: 'gap under the rule', unit: 'mm', least: 0, most: 0.05, places: 6 },
      tool: 'straight edge and feeler',
    },
    { do: 'Head to be skimmed and tried for leaks, back with its slip' },
    { do: 'Bolt holes blown out and dry, new gasket on its dowels', care: 'oil in a hole cracks the block' },
    {
      do: 'Head on, new bolts, from the middle out',
      second: 'signs',
      oneTime: [{ part: 'head bolt', count: 10 }],
      torque: {
        ...{ what: 'Head bolts', pattern: 'rows', count: 10, rows: [5, 5] },
        stages: [{ Nm: 20, lbfft: 15 }, { Nm: 40, lbfft: 30 }, { degrees: 90 }, { degrees: 90 }],
        thread: { words: 'M11 x 1.5', diameter: 11, nut: 'lubricated' },
      },
    },
    { do: 'Belt on by its marks, two turns by hand', second: 'looks', hold: 'it stops: take it apart', reopens: [9] },
    {
      do: 'Oil and filter; coolant filled and bled',
      fluidIn: { what: 'coolant', quantity: 6000 },
      level: 'between the marks, cold',
    },
    { do: 'Run to heat; leaks, exhaust gas in the coolant tried' },
    DRIVE,
  ]),
  after: [{ source: 'run-in', words: 'Look at coolant and oil again', days: 30, distance: 600 }],
};

const WHEEL_BEARING: BookJob = {
  title: 'Front wheel bearing with its hub',
  car: 'Brackwater Hauler van (invented)',
  bookHours: 2100,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Hub with bearing', 1, 12_600, 7400),
    fresh('Axle nut, used once', 1, 980, 410),
    fresh('Hub bolt', 4, 380, 160),
  ],
  cautions: ['The axle nut is never used twice.', 'No weight on the wheel before the nut is tight.', FIRST],
  steps: numbered([
    { do: 'Axle nut loosened while the wheel stands', oneTime: [{ part: 'axle nut', count: 1 }] },
    LIFT,
    { do: 'Caliper off and hung up, not on its hose; disc off', care: 'brake dust: no air line, no dry brush' },
    { do: 'Sensor out, shaft pushed back, hub bolts out', oneTime: [{ part: 'hub bolt', count: 4 }] },
    { do: 'Seat cleaned and looked at', hold: 'worn: price a knuckle', photoWanted: true },
    {
      do: 'New hub on, new bolts',
      second: 'signs',
      torque: {
        ...{ what: 'Hub bolts', pattern: 'ring', count: 4 },
        stages: [{ Nm: 40 }, { Nm: 85 }],
        extension: { length: 120, angle: 90, lever: null },
      },
    },
    {
      do: 'New axle nut, brake held, staked',
      second: 'signs',
      hold: 'no weight on the wheel before this',
      torque: { what: 'Axle nut', pattern: 'free', count: 1, stages: [{ Nm: 210 }] },
    },
    { ...wheels(140), torque: ring('Wheel bolts', 5, [140]) },
    DRIVE,
  ]),
  after: [AGAIN],
};

const TRANSFER_CASE: BookJob = {
  title: 'Transfer case cover sealed again',
  car: 'Corvane Trail (invented)',
  bookHours: 2800,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Cover gasket', 1, 2400, 980),
    fresh('Plug washer', 2, 210, 60),
    oil('Transfer case oil', 1500, 2900, 1350),
  ],
  cautions: ['Fill plug before drain plug.', 'Oil can be hot: gloves and eye cover.', FIRST],
  steps: numbered([
    LIFT,
    { do: 'Fill plug loosened', plug: 'fill-opened', hold: 'seized: stop, price, ask' },
    {
      do: 'Drained warm, magnet looked at',
      plug: 'drained',
      care: 'oil can be hot: gloves, eyes',
      oneTime: [{ part: 'plug washer', count: 2 }],
      fluidOut: { what: 'transfer case oil', quantity: 1500 },
      photoWanted: true,
    },
    { do: 'Cover prised all round a little at a time; clips of each pair of bolts kept' },
    { do: 'Both faces cleaned with plastic, dry', care: 'sealing faces are soft' },
    {
      do: 'Cover on with a new gasket, pair by pair',
      second: 'signs',
      oneTime: [{ part: 'cover gasket', count: 1 }],
      torque: {
        what: 'Cover, in pairs with their clips',
        pattern: 'pairs',
        count: 10,
        stages: [{ Nm: 8 }, { Nm: 16 }],
        checkRound: true,
      },
    },
    {
      do: 'Filled on level ground, plugs with new washers',
      level: 'it runs over the lip of the hole',
      fluidIn: { what: 'transfer case oil', quantity: 1500, strokes: 71 },
      torque: { what: 'Plugs', pattern: 'free', count: 2, stages: [{ Nm: 35 }] },
    },
    DRIVE,
  ]),
};

const TIMING_BELT: BookJob = {
  title: 'Timing belt with the water pump',
  car: 'Marlow Kestrel 1.6 (invented)',
  bookHours: 4300,
  sourceOfFigures: INVENTED,
  lines: [
    fresh('Timing belt, set', 1, 11_800, 6200),
    fresh('Water pump', 1, 8400, 4300),
    fresh('Pulley bolt', 1, 740, 300),
    oil('Coolant', 5000, 650, 240),
  ],
  cautions: ['The engine is never turned backwards.', 'Never open a hot cooling system.', FIRST],
  steps: numbered([
    { do: 'Engine cold, coolant drained', hold: 'hot: wait', fluidOut: { what: 'coolant', quantity: 5000 } },
    { do: 'Turned to its marks, locked, photographed', photoWanted: true, second: 'looks' },
    { do: 'Pulley off, old belt off; oil leaks looked for', oneTime: [{ part: 'pulley bolt', count: 1 }] },
    {
      do: 'New pump on a clean face',
      torque: {
        what: 'Pump',
        pattern: 'angles',
        count: 5,
        degrees: [0, 70, 140, 225, 300],
        stages: [{ Nm: 6 }, { Nm: 12 }],
      },
    },
    { do: 'New belt and rollers, tension set as its maker says', hold: 'marks are off: again' },
    { do: 'Two turns by hand, marks looked at again', second: 'looks', hold: 'it stops: take it apart', reopens: [7] },
    {
      do: 'Pulley with its new bolt',
      second: 'signs',
      torque: { what: 'Pulley bolt', pattern: 'free', count: 1, stages: [{ Nm: 90 }, { degrees: 90 }] },
    },
    { do: 'Coolant filled and bled', fluidIn: { what: 'coolant', quantity: 5000 }, level: 'between the marks, cold' },
    DRIVE,
  ]),
  after: [{ source: 'service', words: 'Timing belt and pump again', days: 1825, distance: 60_000 }],
};

/** With the four that every book begins with, ten. */
export const SIX_MORE: readonly BookJob[] = [
  OUTPUT_SEAL,
  CLUTCH,
  HEAD_GASKET,
  WHEEL_BEARING,
  TRANSFER_CASE,
  TIMING_BELT,
];
