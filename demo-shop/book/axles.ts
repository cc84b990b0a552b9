import { AGAIN, type BookJob, DRIVE, FIRST, fresh, INVENTED, LIFT, numbered, oil, ring, wheels } from './pieces.ts';

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

export const WHEEL_BEARING: BookJob = {
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

export const TRANSFER_CASE: BookJob = {
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
