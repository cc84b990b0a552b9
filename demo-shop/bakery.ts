import type { Story } from './story.ts';
import { labour, part, Visit } from './visit.ts';

const NAME = 'Gull Street Bakery';

/**
 * The bakery that pays on account: a limit, a car that is gone, calls and messages that say when it answers, and a van in
 * the shop whose next job would put the account over its limit. Its first visit is among the finished orders.
 */
export function bakeryOnAccount(story: Story): void {
  let customerId = '';
  let soldId = '';
  const find = async () => {
    const { rows } = await story.did('Piet', 'customer.list', { text: NAME });
    customerId = rows[0]?.id ?? '';
    return story.did('Piet', 'customer.get', { id: customerId });
  };
  story.scene(story.day(8, '16:00'), async () => {
    const { revision } = await find();
    await story.did('Runa', 'customer.change', {
      ...{ id: customerId, revision },
      change: { creditLimit: 120_000, tellBy: 'messages first, before ten' },
    });
    const old = { plate: 'BRK 118', words: 'Brackwater Hauler', year: 2012, unit: 'mi' as const };
    soldId = (await story.did('Piet', 'car.add', { customerId, ...old })).id;
  });
  story.scene(story.day(1, '16:30'), async () => {
    const { id: next } = await story.did('Piet', 'customer.add', { name: 'Wil Osterby', phone: '555-0122' });
    await story.did('Piet', 'car.owner', { id: soldId, revision: 1, customerId: next, from: story.yesterday });
  });
  callsAndMessages(story, () => customerId);
  const van = new Visit(story);
  story.scene(story.day(1, '10:05'), () =>
    van.book({
      customer: { id: customerId },
      car: { add: { plate: 'RS 4190', words: 'Brackwater Hauler van', year: 2021, unit: 'mi' } },
      complaint: 'Pulls left.',
      mileage: 104_320,
      here: true,
    }),
  );
  story.scene(story.day(1, '10:20'), () => van.job('Wheels measured and set', [labour('Measure and set', 1000)]));
  story.scene(story.day(1, '10:40'), async () => {
    await story.did('Piet', 'decision.record', {
      ...{ orderId: van.id, jobs: [{ jobId: van.jobId('A'), answer: 'yes' }], upTo: { total: 18_000 } },
      ...{ spoken: { name: 'Marit Engel', role: 'named' }, way: 'message', reached: '555-0160' },
    });
  });
  story.scene(story.day(1, '11:30'), async () => {
    const words = 'Marit Engel asks what is kept about the bakery.';
    await story.did('Piet', 'privacy.ask', { customerId, askedOn: story.yesterday, way: 'message', words });
  });
  story.scene(story.ago(115), async () => {
    await van.job('Front struts', [labour('Remove and fit', 1600), part('Struts, pair', 1, 38_000, 24_000)]);
    await van.quote();
  });
}

/** Tries of the weeks before, on working days before the last: when they were rung, and when they answered. */
const TRIES: readonly (readonly [number, string, 'phone' | 'message', boolean])[] = [
  [7, '07:50', 'message', true],
  [7, '14:48', 'phone', false],
  [7, '15:18', 'phone', false],
  [6, '08:12', 'message', true],
  [6, '11:10', 'phone', false],
  [5, '08:40', 'phone', true],
  [5, '13:35', 'phone', false],
  [4, '09:05', 'message', true],
  [4, '12:25', 'phone', true],
  [3, '09:20', 'message', true],
  [3, '16:05', 'phone', false],
  [2, '08:25', 'message', true],
];

function callsAndMessages(story: Story, customerId: () => string): void {
  for (const [day, wall, way, answered] of TRIES)
    story.scene(story.day(day, wall), async () => {
      await story.did('Piet', 'message.record', {
        ...{ customerId: customerId(), about: 'other', way, reached: answered },
        direction: way === 'message' ? 'in' : 'out',
        words: answered ? 'The van may come on Monday.' : 'About the van.',
      });
    });
}
