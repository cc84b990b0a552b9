import type { z } from 'zod';
import type { bookJobContent } from '../contract/procedure.ts';

type Content = z.input<typeof bookJobContent>;
type Step = Content['steps'][number];

const INVENTED = "invented for practice; write the maker's manual and its page here";
const FIRST = "The maker's manual, local rules and licensed people come first.";
const CAUTIONS = [
  'Fill plug before drain plug.',
  'Oil and exhaust can be hot: gloves and eye cover.',
  'A heavy unit comes out: the balance of the car on the lift changes.',
  FIRST,
];

const numbered = (steps: Omit<Step, 'n'>[]): Step[] => steps.map((step, at) => ({ n: at + 1, ...step }));

const ring = (what: string, count: number, newtonMetres: number[], sides = 1): Step['torque'] => ({
  what,
  pattern: 'ring',
  count,
  sides,
  stages: newtonMetres.map((Nm) => ({ Nm })),
});

/**
 * The four jobs that a new job book begins with. Every figure in them is invented and says so: no torque of a real car
 * is shipped, the shop writes its own with their source. The order of the steps is common practice, no source.
 */
export const STARTING_JOBS: readonly Content[] = [
  {
    title: 'Swap the differential carrier for a rebuilt one, ring gear moved over',
    car: 'Corvane R coupe, rear final drive in a subframe (invented)',
    people: 2,
    bookHours: 6200,
    sourceOfFigures: INVENTED,
    lines: [
      { kind: 'part', words: 'Rebuilt carrier, exchange', condition: 'rebuilt', quantity: 1000 },
      { kind: 'part', words: 'Ring-gear bolt', condition: 'new', quantity: 12_000 },
      { kind: 'part', words: 'Plug washer', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'Shaft circlip', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'Output seal', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'O-ring', condition: 'new', quantity: 1000 },
      { kind: 'fluid', words: 'Gear oil 75W-90', quantity: 1100, unit: 'L' },
      { kind: 'core', words: 'Old carrier, deposit', quantity: 1000 },
    ],
    cautions: CAUTIONS,
    steps: numbered([
      { do: 'Road test, complaint confirmed; odometer out and in', hold: 'not confirmed: back to the desk' },
      {
        do: "Lift on the maker's points, arms clear of plugs; rock test; arms locked; strap across the subframe",
        second: 'looks',
        hold: 'the car rocks: down again',
      },
      { do: 'Undertray off; eleven screws counted into a bag' },
      { do: 'Fill plug loosened', plug: 'fill-opened', hold: 'seized: stop, price, ask' },
      {
        do: 'Drain warm; sample mid-stream to a clean bottle, label read aloud; look at the magnet',
        plug: 'drained',
        care: 'oil can be hot: gloves, eyes',
        oneTime: [{ part: 'plug washer', count: 2 }],
        fluidOut: { what: 'gear oil 75W-90', quantity: 1200 },
        sample: { millilitres: 100, words: 'mid-stream' },
        photoWanted: true,
      },
      { do: 'Propshaft marked to its flange, off, tied up' },
      {
        do: 'Axle shafts drawn from the side gears',
        oneTime: [
          { part: 'shaft circlip', count: 2 },
          { part: 'output seal', count: 2 },
        ],
      },
      {
        do: 'Rear cover off, prised all round a little at a time; bearing caps marked left and right; shims kept side for side',
        care: 'sealing faces are soft: scrape with plastic',
      },
      {
        do: 'Old carrier out; old and new side by side: bearings, splines, ratio tag, serials',
        second: 'looks',
        hold: 'mismatch: stop',
      },
      {
        do: 'Ring gear over to the rebuilt carrier, new bolts, in three rounds',
        second: 'signs',
        torque: ring('Ring-gear bolts', 12, [30, 60, 85]),
        oneTime: [{ part: 'ring-gear bolt', count: 12 }],
      },
      {
        do: 'Carrier in, caps to their marks',
        second: 'signs',
        torque: { what: 'Bearing caps', pattern: 'rows', count: 4, stages: [{ Nm: 40 }, { Nm: 95 }] },
      },
      {
        do: 'Backlash measured at four places; tooth contact looked at',
        hold: 'outside: stop',
        measure: { what: 'backlash', unit: 'mm', least: 0.13, most: 0.18, places: 4 },
        photoWanted: true,
      },
      { do: 'Cover with a new O-ring', torque: ring('Cover', 10, [12, 24]), oneTime: [{ part: 'O-ring', count: 1 }] },
      {
        do: 'Axle shafts in with new circlips, pulled to prove them; propshaft to its marks',
        second: 'signs',
        torque: ring('Propshaft flange', 4, [70]),
      },
      {
        do: 'Fill on level ground; rest ten minutes; top up; plugs with new washers',
        level: 'it runs over the lip of the hole',
        torque: { what: 'Drain and fill plugs', pattern: 'free', count: 2, stages: [{ Nm: 35 }] },
        fluidIn: { what: 'gear oil 75W-90', quantity: 1100 },
      },
      {
        do: 'Undertray on, bag empty; wheels on the floor',
        second: 'signs',
        torque: ring('Wheel bolts', 5, [110], 2),
        recheckCard: true,
      },
      {
        do: 'Test drive by the other person; leaks, noise, heat, level',
        second: 'does it',
        hold: 'noise or heat: the car does not leave',
      },
      { do: 'Old carrier drained, tagged with serial and visit, crated; core slip' },
    ]),
  },
  {
    title: 'Swap the complete differential for a rebuilt unit',
    car: 'independent rear suspension (invented)',
    people: 2,
    bookHours: 4500,
    sourceOfFigures: INVENTED,
    lines: [
      { kind: 'part', words: 'Rebuilt differential, exchange', condition: 'rebuilt', quantity: 1000 },
      { kind: 'part', words: 'Axle nut, used once', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'Flange bolt, used once', condition: 'new', quantity: 8000 },
      { kind: 'part', words: 'Output seal', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'Plug washer', condition: 'new', quantity: 2000 },
      { kind: 'fluid', words: 'Gear oil', quantity: 1350, unit: 'L' },
      { kind: 'outside', words: 'Fluid lab, one sample', quantity: 1000 },
      { kind: 'core', words: 'Old unit, deposit', quantity: 1000 },
    ],
    cautions: CAUTIONS,
    steps: numbered([
      { do: 'Road test, complaint confirmed, odometer out and in', hold: 'not confirmed: back to the desk' },
      {
        do: "Lift on the maker's points, rock test, arms locked, strap",
        second: 'looks',
        hold: 'the car rocks: down again',
      },
      { do: 'Fill plug loosened', plug: 'fill-opened', hold: 'seized: the desk prices it' },
      {
        do: 'Drain warm, sample mid-stream, look at the magnet',
        plug: 'drained',
        care: 'oil can be hot: gloves, eyes',
        oneTime: [{ part: 'plug washer', count: 2 }],
        fluidOut: { what: 'gear oil', quantity: 1200 },
        sample: { millilitres: 100, words: 'mid-stream' },
        photoWanted: true,
      },
      { do: 'Index marks on the propshaft flange, unbolt, tie up', oneTime: [{ part: 'flange bolt', count: 8 }] },
      {
        do: 'Axle nuts, shafts out, seals looked at',
        oneTime: [
          { part: 'axle nut', count: 2 },
          { part: 'output seal', count: 2 },
        ],
      },
      { do: 'Sensor and vent off, jack under, mounts off, unit down', second: 'holds', hold: 'balance of the car' },
      {
        do: 'Old and new compared: ratio (count teeth), flange, sensor, vent, serials',
        second: 'looks',
        hold: 'mismatch: stop',
      },
      { do: 'Unit up, mounts in loosely', second: 'holds' },
      {
        do: 'Mount bolts; any suspension bush bolt at ride height later',
        second: 'signs',
        torque: { what: 'Mount bolts', pattern: 'free', count: 4, stages: [{ Nm: 90 }] },
      },
      {
        do: 'Flange bolts, crosswise, new ones only',
        second: 'signs',
        torque: { what: 'Flange bolts', pattern: 'ring', count: 8, stages: [{ Nm: 40 }, { Nm: 80 }, { degrees: 90 }] },
      },
      {
        do: 'Axle nuts, brake held, staked, new ones only',
        second: 'signs',
        hold: 'no weight on the wheels before this',
        torque: { what: 'Axle nuts', pattern: 'free', count: 2, stages: [{ Nm: 250 }] },
      },
      {
        do: 'Fill, spin, check again, plugs with new washers, car level',
        fluidIn: { what: 'gear oil', quantity: 1350 },
        torque: { what: 'Plugs', pattern: 'free', count: 2, stages: [{ Nm: 35 }] },
      },
      {
        do: 'Wheels, crosswise, on the floor; re-check card',
        second: 'signs',
        torque: ring('Wheel bolts', 5, [120], 2),
        recheckCard: true,
      },
      {
        do: 'Test drive by the other person, leak look, level',
        second: 'does it',
        hold: 'noise or heat: the car does not leave',
      },
      { do: 'Old unit drained, tagged with serial and visit, crated; core slip' },
    ]),
  },
  {
    title: 'Change the axle oil, sample to the lab',
    bookHours: 700,
    sourceOfFigures: INVENTED,
    lines: [
      { kind: 'part', words: 'Plug washer', condition: 'new', quantity: 2000 },
      { kind: 'fluid', words: 'Gear oil', quantity: 1200, unit: 'L' },
      { kind: 'outside', words: 'Fluid lab, one sample', quantity: 1000 },
    ],
    cautions: ['Fill plug before drain plug.', 'Oil can be hot: gloves and eye cover.', FIRST],
    steps: numbered([
      { do: "Lift on the maker's points, arms locked, car level" },
      { do: 'Fill plug loosened', plug: 'fill-opened', hold: 'seized: stop, price, ask' },
      {
        do: 'Drain warm, sample mid-stream, label read aloud',
        plug: 'drained',
        care: 'oil can be hot: gloves, eyes',
        oneTime: [{ part: 'plug washer', count: 2 }],
        fluidOut: { what: 'gear oil', quantity: 1200 },
        sample: { millilitres: 100, words: 'mid-stream' },
      },
      { do: 'Look at the magnet and into the hole', photoWanted: true },
      {
        do: 'Drain plug with a new washer; fill; fill plug with a new washer',
        level: 'it runs over the lip of the hole',
        fluidIn: { what: 'gear oil', quantity: 1200 },
        torque: { what: 'Plugs', pattern: 'free', count: 2, stages: [{ Nm: 35 }] },
      },
      { do: 'Look for drips after a run' },
    ]),
  },
  {
    title: 'Front brake discs and pads',
    bookHours: 1600,
    sourceOfFigures: INVENTED,
    lines: [
      { kind: 'part', words: 'Front disc', condition: 'new', quantity: 2000 },
      { kind: 'part', words: 'Front pads, set', condition: 'new', quantity: 1000 },
    ],
    cautions: ['Treat brake dust on old cars as asbestos: no air line, no dry brush.', FIRST],
    steps: numbered([
      { do: "Lift on the maker's points, arms locked; wheels off" },
      {
        do: 'Calipers off and hung up, not on their hoses; old discs off; hubs cleaned wet',
        care: 'no air line, no dry brush',
      },
      {
        do: 'New discs and pads; caliper bolts',
        second: 'signs',
        torque: { what: 'Caliper bolts', pattern: 'free', count: 4, stages: [{ Nm: 30 }] },
      },
      { do: 'Pedal pumped until firm; fluid level', hold: 'pedal soft: the car does not leave' },
      {
        do: 'Wheels, crosswise, on the floor; re-check card',
        second: 'signs',
        torque: ring('Wheel bolts', 5, [110], 2),
        recheckCard: true,
      },
      { do: 'Test drive, bedding in told to the customer', second: 'does it' },
    ]),
  },
];
