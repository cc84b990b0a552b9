import type { OutputOf } from '../core/contract/index.ts';
import type { Shop } from '../electron/dispatch.ts';
import { atTheLift } from './at-the-lift.ts';
import { bakeryOnAccount } from './bakery.ts';
import { baysOfTheDay } from './bays.ts';
import { carrierSwap } from './carrier-swap.ts';
import { earlierWeeks } from './earlier-weeks.ts';
import { finishedOrders } from './finished.ts';
import { BENCH_HOURS, SALTMARSH, STOCK, type StockIds } from './garage.ts';
import { jobBookOfTen } from './job-book.ts';
import { bringOldBooksIn } from './old-books.ts';
import { Story, type Watch } from './story.ts';
import { ordersUnderWay } from './under-way.ts';
import { ordersWaiting } from './waiting.ts';

export interface Played {
  readonly orders: OutputOf<'order.page'>['rows'];
  /** Names of the papers whose PDF was made. */
  readonly papers: readonly string[];
  readonly verified: OutputOf<'care.verify'>;
}

/**
 * Plays six weeks of Saltmarsh Motor Works into an empty practice shop, through its operations alone, so that they end
 * at `end` (epoch milliseconds). Throws with the shop's refusal when an operation is not taken.
 */
export async function playDemo(
  shop: Shop,
  end: number,
  say: (sentence: string) => void,
  watch: Watch = () => {},
): Promise<Played> {
  const story = new Story(shop, end);
  const stock: StockIds = { bolt: '', washer: '', ring: '', gearOil: '', engineOil: '' };
  story.scene(story.day(30, '07:00'), async () => {
    const { people } = await story.did(null, 'shop.setUp', SALTMARSH);
    story.know(people);
    // The owner stands at the bench as well, and the desk now and then: the days have their hours.
    for (const [name, hours] of BENCH_HOURS) {
      const week = [0, 1, 2, 3, 4, 5, 6].map((day) => (day < 5 ? hours : 0));
      await story.did('Runa', 'person.change', { id: story.personId(name), revision: 1, week });
    }
    say(`${SALTMARSH.settings.name} is set up, ${people.length} people.`);
  });
  story.scene(story.day(30, '07:30'), async () => {
    for (const key of Object.keys(stock) as (keyof StockIds)[])
      stock[key] = (await story.did('Piet', 'part.add', STOCK[key])).id;
    say(`${Object.keys(stock).length} parts and oils stand in stock.`);
  });
  bringOldBooksIn(story, say);
  jobBookOfTen(story);
  earlierWeeks(story);
  atTheLift(story);
  carrierSwap(story, stock);
  finishedOrders(story);
  bakeryOnAccount(story);
  ordersUnderWay(story);
  ordersWaiting(story);
  baysOfTheDay(story);
  for (let n = 30; n > 0; n -= n > 10 ? 5 : 1)
    story.scene(story.day(n, '17:45'), async () => {
      const { rows } = await story.did('Piet', 'order.page', { filter: { which: 'open' } });
      say(`${new Date(story.day(n, '17:45')).toISOString().slice(0, 10)}: open orders in the evening: ${rows.length}.`);
    });
  await story.play(watch);

  const { rows: orders } = await story.did('Piet', 'order.page', { filter: { which: 'all' } });
  const papers: string[] = [];
  for (const [done, order] of orders.entries()) {
    await watch('orders', done, orders.length);
    const whole = await story.did('Piet', 'order.get', { id: order.id });
    for (const { id } of whole.papers) papers.push((await story.did('Piet', 'paper.read', { id })).name);
  }
  say(`${orders.length} orders played; ${papers.length} papers made as PDF.`);
  const verified = await story.did('Runa', 'care.verify', {});
  return { orders, papers, verified };
}
