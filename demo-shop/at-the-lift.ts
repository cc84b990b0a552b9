import type { PersonName } from './garage.ts';
import { PEOPLE } from './garage.ts';
import type { Story } from './story.ts';
import { Visit } from './visit.ts';

const MINUTE = 60_000;
const JOB = 'Transfer case';
const UNIT = { name: 'Transfer case', serial: '' };
/** The ring of the cover in pairs: ten bolts, two rounds and once more round. */
const COVER = 6;

/** What the bench remembers and shows: a measured pump, wrenches, the same job twice before, and once on the lift now. */
export function atTheLift(story: Story): void {
  let pumpId = '';
  let wrenchId = '';
  story.scene(story.day(28, '07:20'), async () => {
    const calibration = { strokes: 53, quantity: 1120 };
    pumpId = (await story.did('Nessa', 'pump.add', { name: 'Blue pump', calibration })).id;
    const wrench = { least: 5000, most: 60_000, lever: 280_000 };
    wrenchId = (await story.did('Piet', 'wrench.add', { name: 'Small wrench 2', ...wrench, dueOn: story.tomorrow })).id;
    await story.did('Piet', 'wrench.add', {
      ...{ name: 'Long wrench 1', least: 40_000, most: 300_000, lever: 610_000 },
      dueOn: story.yesterday,
    });
  });
  const tools = () => ({ pumpId, wrenchId });
  sealedBefore(story, tools, 8, { name: 'Bertil Aske', phone: '555-0181', plate: 'WLD 550', mileage: 74_310 }, 165, 71);
  sealedBefore(story, tools, 6, { name: 'Hedda Krog', phone: '555-0182', plate: 'NOR 8812', mileage: 51_920 }, 195, 73);
  onTheLift(story, tools);
}

interface Came {
  readonly name: string;
  readonly phone: string;
  readonly plate: string;
  readonly mileage: number;
}
type Tools = () => { readonly pumpId: string; readonly wrenchId: string };

/** The car is here with the job from the book on its sheet, said yes to. */
function here(story: Story, at: number, { name, phone, plate, mileage }: Came): Visit {
  const visit = new Visit(story);
  story.scene(at, async () => {
    await visit.book({
      customer: { add: { name, phone } },
      car: { add: { plate, words: 'Corvane Trail', unit: 'mi' } },
      ...{ complaint: 'Oil under the middle of the car.', mileage, here: true },
    });
    const { rows } = await story.did('Piet', 'jobBook.list', {});
    await visit.fromBook(rows.find(({ title }) => title.startsWith(JOB))?.id ?? '');
    await visit.quote();
    await visit.yes(['A']);
  });
  return visit;
}

/** A visit that is over: worked step by step in so many minutes, filled by so many strokes, invoiced, paid and fetched. */
function sealedBefore(story: Story, tools: Tools, n: number, came: Came, minutes: number, strokes: number): void {
  const visit = here(story, story.day(n, '08:20'), came);
  const from = story.day(n, '09:00');
  story.scene(from, () => visit.on('Nessa', 'A'));
  for (let step = 1; step < 8; step += 1)
    story.scene(from + (minutes / 8) * step * MINUTE, () => work(story, visit, step, tools, strokes));
  story.scene(from + minutes * MINUTE, async () => {
    await visit.off('Nessa');
    await tick(story, visit, 8, 'Piet');
  });
  story.scene(from + (minutes + 30) * MINUTE, async () => {
    const { toPay } = await visit.invoice(came.mileage + 4);
    await visit.pay('payment', 'card', toPay);
    await visit.handOver();
  });
}

/** The one that stands open now: in the second round of the cover, a touch a minute. */
function onTheLift(story: Story, tools: Tools): void {
  const visit = here(story, story.ago(230), {
    name: 'Ragna Lund',
    phone: '555-0183',
    plate: 'FJL 306',
    mileage: 60_485,
  });
  story.scene(story.ago(222), () => visit.on('Nessa', 'A'));
  story.scene(story.ago(100), () => visit.off('Nessa'));
  for (let step = 1; step < COVER; step += 1)
    story.scene(story.ago(220 - step * 14), () => work(story, visit, step, tools, 0));
  for (let touch = 0; touch < 13; touch += 1)
    story.scene(story.ago(130 - touch), async () => {
      const { wrenchId } = tools();
      await story.did('Nessa', 'torque.make', { jobId: visit.jobId('A'), step: COVER, touch, wrenchId });
    });
}

/** Nessa does a step with all that it asks to be written down; Piet signs where a second person has to. */
async function work(story: Story, visit: Visit, n: number, tools: Tools, strokes: number): Promise<void> {
  const jobId = visit.jobId('A');
  const { pumpId, wrenchId } = tools();
  const oil = { jobId, step: n, unit: UNIT, fluid: 'transfer case oil' };
  const { made, touches } =
    n === COVER || n === 7 ? await story.did('Nessa', 'torque.get', { jobId, step: n }) : { made: 0, touches: [] };
  if (touches.length > 0)
    await story.did('Nessa', 'torque.make', { jobId, step: n, touch: made, count: touches.length, wrenchId });
  if (n === 3) await story.did('Nessa', 'fluid.record', { ...oil, direction: 'out', amount: { value: 1350, in: 'L' } });
  if (n === 7) await story.did('Nessa', 'fluid.record', { ...oil, direction: 'in', amount: { strokes, pumpId } });
  await tick(story, visit, n, 'Nessa');
}

async function tick(story: Story, visit: Visit, n: number, by: PersonName): Promise<void> {
  const piet = PEOPLE.find((person) => person.name === 'Piet');
  const second = n === COVER && piet ? { personId: story.personId('Piet'), code: piet.code } : null;
  await story.did(by, 'step.tick', { jobId: visit.jobId('A'), n, state: 'done', second });
}
