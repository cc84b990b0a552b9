import type { Story } from './story.ts';
import { labour, part, Visit } from './visit.ts';

/** Orders with a yes whose work is ahead, going on, done, waiting for a part, or in need of a call. */
export function ordersUnderWay(story: Story): void {
  agreed(
    story,
    'Joren Ake',
    '555-0171',
    'PTH 90',
    'Corvane Pickup',
    'Front tires worn on the edge.',
    'Track rod end',
    1,
  );
  doneToCloseOut(story);
  carryOn(story);
  goingOn(story);
  waitingForPart(story);
  extraFound(story);
  dearerThanAgreed(story);
  clockForgotten(story);
  cancelledHalfway(story);
}

const RODS = [labour('Fit and set the track', 1600), part('Track rod end', 1, 4800, 2300)];

/** A car here since the n-th working day, its one job quoted and agreed to. */
function agreed(
  story: Story,
  name: string,
  phone: string,
  plate: string,
  words: string,
  complaint: string,
  title: string,
  n: number,
  lines: Parameters<Visit['job']>[1] = RODS,
): Visit {
  const visit = new Visit(story);
  story.scene(story.day(n, '09:30'), () =>
    visit.book({
      customer: { add: { name, phone } },
      car: { add: { plate, words, unit: 'mi' } },
      complaint,
      mileage: 50_000 + n * 1370,
      here: true,
      promiseAt: story.end + n * 75 * 60_000,
    }),
  );
  story.scene(story.day(n, '09:45'), async () => {
    await visit.job(title, lines);
    await visit.quote();
  });
  story.scene(story.day(n, '10:30'), () => visit.yes(['A']));
  return visit;
}

function doneToCloseOut(story: Story): void {
  const visit = agreed(
    story,
    'Lena Quist',
    '555-0126',
    'GRB 733',
    'Oriel Estate',
    'Smells of coolant.',
    'Water hose',
    4,
    [labour('Fit, fill, bleed', 1100), part('Upper hose', 1, 3600, 1700)],
  );
  story.scene(story.day(4, '13:10'), () => visit.on('Nessa', 'A'));
  story.scene(story.day(4, '14:20'), () => visit.off('Nessa'));
}

function carryOn(story: Story): void {
  const visit = agreed(
    story,
    'Otto Brandt',
    '555-0188',
    'CWE 415',
    'Corvane S4',
    'Knocks over bumps.',
    'Drop links',
    5,
    [labour('Both sides', 900), part('Drop link', 2, 3100, 1450)],
  );
  story.scene(story.day(5, '10:45'), async () => {
    await visit.job('Lower arm bush', [labour('Press in', 1400), part('Bush', 2, 2700, 1100)]);
    await visit.quote();
    await visit.yes(['A', 'B']);
  });
  story.scene(story.day(5, '13:00'), () => visit.on('Nessa', 'A'));
  story.scene(story.day(5, '13:55'), () => visit.off('Nessa'));
}

function goingOn(story: Story): void {
  const visit = agreed(story, 'Signe Holm', '555-0109', 'ALV 26', 'Brackwater Hauler', 'Clutch slips.', 'Clutch', 1, [
    labour('Remove and fit', 5400),
    part('Clutch kit', 1, 38_500, 25_200),
  ]);
  story.scene(story.ago(95), () => visit.on('Nessa', 'A'));
}

function waitingForPart(story: Story): void {
  const visit = agreed(
    story,
    'Wim Castel',
    '555-0137',
    'TSK 1180',
    'Oriel 2',
    'Steering is heavy.',
    'Steering pump',
    3,
    [labour('Remove and fit', 2100), { ...part('Steering pump', 1, 29_900, 19_800), supplier: 'Pellin Parts' }],
  );
  story.scene(story.day(3, '10:50'), async () => {
    await story.did('Piet', 'awaited.order', {
      lineId: visit.lineId('A', 1),
      kind: 'part',
      supplier: 'Pellin Parts',
      reference: 'PP-7731',
      dueOn: story.yesterday,
    });
  });
}

function extraFound(story: Story): void {
  const visit = agreed(story, 'Nora Fell', '555-0145', 'HHD 552', 'Brackwater Six', 'Pulls left.', 'Brake caliper', 2, [
    labour('Fit and bleed', 1500),
    part('Caliper, left', 1, 16_400, 10_900),
  ]);
  story.scene(story.day(2, '10:50'), () => visit.on('Runa', 'A'));
  story.scene(story.day(2, '12:00'), async () => {
    await visit.off('Runa');
    const finding = await visit.found('Brake hose cracked, left front.', 'unsafe');
    await visit.job('Brake hoses, front pair', [labour('Fit', 700), part('Brake hose', 2, 2900, 1300)], finding);
  });
}

function dearerThanAgreed(story: Story): void {
  const visit = agreed(
    story,
    'Aksel Dorn',
    '555-0113',
    'BRN 807',
    'Corvane R',
    'Grinds in third.',
    'Gearbox out, look',
    5,
    [labour('Remove, open, look', 4200)],
  );
  story.scene(story.day(5, '15:00'), () => visit.on('Runa', 'A'));
  story.scene(story.day(5, '17:00'), async () => {
    await visit.off('Runa');
    await story.did('Piet', 'line.add', { jobId: visit.jobId('A'), line: part('Output seal', 1, 3750, 1700) });
  });
}

function clockForgotten(story: Story): void {
  const visit = agreed(story, 'Petra Vane', '555-0102', 'LLO 344', 'Oriel Estate', 'Idles rough.', 'Coil and plugs', 6);
  story.scene(story.day(6, '15:30'), () => visit.on('Nessa', 'A'));
  story.scene(story.day(5, '08:00'), async () => {
    await story.did('Piet', 'clock.forgotten', { personId: story.personId('Nessa') });
  });
}

function cancelledHalfway(story: Story): void {
  const visit = agreed(
    story,
    'Ragnar Ebb',
    '555-0156',
    'FJE 19',
    'Corvane Pickup',
    'Turbo howls.',
    'Turbo out, look',
    4,
    [labour('Remove and look', 1800)],
  );
  story.scene(story.day(4, '11:00'), () => visit.on('Runa', 'A'));
  story.scene(story.day(4, '12:30'), () => visit.off('Runa'));
  story.scene(story.day(3, '09:00'), () => visit.cancel('Sells the car as it is.'));
}
