import type { Story } from './story.ts';
import { labour, part, Visit } from './visit.ts';

/** Orders before a yes: cars to come, to be looked at, to be quoted, waiting for an answer, or given up. */
export function ordersWaiting(story: Story): void {
  const car = (plate: string, words: string) => ({ add: { plate, words, unit: 'mi' as const } });
  const person = (name: string, phone: string) => ({ add: { name, phone } });
  const here = (at: number, name: string, phone: string, plate: string, words: string, complaint: string) => {
    const visit = new Visit(story);
    story.scene(at, () =>
      visit.book({ customer: person(name, phone), car: car(plate, words), complaint, mileage: 71_300, here: true }),
    );
    return visit;
  };
  const toCome = (at: number, day: string, from: string, ...[name, phone, plate, words, complaint]: string[]) => {
    const visit = new Visit(story);
    story.scene(at, async () => {
      const { bays } = await story.did('Piet', 'shop.get', {});
      await visit.book({
        customer: person(name ?? '', phone ?? ''),
        car: car(plate ?? '', words ?? ''),
        complaint: complaint ?? '',
        here: false,
        booking: { bayId: bays[1]?.id ?? '', day, from, hours: 2000 },
      });
    });
  };

  toCome(story.ago(60), story.tomorrow, '09:00', 'Edda Marsh', '555-0190', 'VDN 63', 'Oriel 2', 'Yearly service.');
  toCome(
    story.day(3, '16:00'),
    story.yesterday,
    '08:30',
    'Kees Rowan',
    '555-0165',
    'SNB 118',
    'Brackwater Six',
    'Horn dead.',
  );

  here(story.ago(50), 'Ulla Brink', '555-0129', 'WKP 27', 'Corvane S4', 'Will not start when it is damp.');

  const looked = here(story.ago(240), 'Henk Solberg', '555-0174', 'RRA 904', 'Oriel Estate', 'Oil spots on the drive.');
  story.scene(story.ago(190), async () => {
    await looked.found('Sump gasket weeps at the back.');
  });

  const unsent = here(story.ago(210), 'Mina Torv', '555-0118', 'EED 281', 'Corvane R', 'Air blows warm.');
  story.scene(story.ago(150), async () => {
    await unsent.job('Condenser', [labour('Fit, draw down, fill', 2300), part('Condenser', 1, 21_000, 13_400)]);
    await unsent.quote(false);
  });

  const asked = here(story.day(1, '14:00'), 'Paul Ansgar', '555-0180', 'OOT 66', 'Brackwater Hauler', 'Rear hums.');
  story.scene(story.day(1, '16:20'), async () => {
    await asked.found('Wheel bearing, right rear.');
    await asked.job('Wheel bearing', [labour('Press out and in', 1900), part('Bearing', 1, 8800, 4700)]);
    await asked.quote();
  });
  story.scene(story.ago(120), async () => {
    await story.did('Piet', 'decision.tried', {
      orderId: asked.id,
      way: 'phone',
      reached: '555-0180',
      words: 'no answer',
    });
  });

  const givenUp = new Visit(story);
  story.scene(story.day(6, '11:00'), () =>
    givenUp.book({
      customer: person('Silke Aram', '555-0107'),
      car: car('ZMR 75', 'Oriel 2'),
      complaint: 'Tow bar wanted.',
      here: false,
    }),
  );
  story.scene(story.day(4, '10:00'), () => givenUp.cancel('Sold the trailer.'));

  const took = here(
    story.day(7, '15:10'),
    'Dirk Halvard',
    '555-0196',
    'NKT 501',
    'Brackwater Six',
    'Rattle, now gone.',
  );
  story.scene(story.day(7, '16:00'), () => took.handOver());
}
