import { AGAIN, type BookJob, DRIVE, FIRST, fresh, INVENTED, numbered, oil, wheels } from './pieces.ts';

export const CLUTCH: BookJob = {
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

export const HEAD_GASKET: BookJob = {
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

export const TIMING_BELT: BookJob = {
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
