import type { Story } from './story.ts';

/** Where the open cars stand on the story's last day: plate, bay by its place, from, thousandths of an hour. */
const PLACES = [
  ['GRB 733', 1, '08:00', 2000],
  ['ALV 26', 0, '08:30', 5400],
  ['OOT 66', 2, '08:30', 3500],
  ['CWE 415', 1, '10:30', 3000],
  ['PTH 90', 2, '13:00', 2500],
  ['HHD 552', 1, '14:15', 2500],
] as const;

/** In the morning of the last day the open cars get their bays. */
export function baysOfTheDay(story: Story): void {
  story.scene(story.day(0, '07:45'), async () => {
    const { bays } = await story.did('Piet', 'shop.get', {});
    const { rows } = await story.did('Piet', 'order.page', { filter: { which: 'open' } });
    const day = new Date(story.day(0, '00:00')).toISOString().slice(0, 10);
    for (const [plate, bay, from, hours] of PLACES) {
      const order = rows.find((row) => row.plate === plate);
      const bayId = bays[bay]?.id;
      if (order === undefined || bayId === undefined) continue;
      const { id: orderId, revision } = await story.did('Piet', 'order.get', { id: order.id });
      await story.did('Piet', 'booking.change', { orderId, revision, booking: { bayId, day, from, hours } });
    }
  });
}
