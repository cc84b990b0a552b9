import { expect, test } from 'vitest';
import { readPages, textOf } from '../paper/read-back.ts';
import { BenchJob } from './bench-job.ts';
import { at } from './practice-shop.ts';

const STEPS = [
  { do: 'Lift on the maker’s points', hold: 'the car rocks: down again' },
  { do: 'Cover on', torque: { what: 'Cover', pattern: 'ring' as const, count: 6, stages: [{ Nm: 12 }, { Nm: 24 }] } },
];
const pdf = async (base64: string) =>
  (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join('\n');

test('the bench copy of a job: the version it began with, its car and yes, what is done; also straight from the book', async () => {
  const bench = await BenchJob.begun(STEPS, { cautions: ['Fill plug before drain plug.'] });
  const { garage, jobId } = bench;
  await bench.tick(1);
  const sheet = await garage.did('Runa', 'workSheet.pdf', { jobId });
  expect(sheet.name).toBe('Bench copy, Order 1187, A.pdf');
  const text = await pdf(sheet.base64);
  for (const part of [
    'KVR 221',
    'yes on 10 Mar',
    'job book version 1',
    '42,180 at the door',
    'Runa',
    '24 N·m 18 lbf·ft',
  ])
    expect(text).toContain(part);
  // What is changed in the book meanwhile leaves the sheet of the visit as it is.
  const { rows } = await garage.did('Desk', 'jobBook.list', {});
  const row = rows.find((one) => one.title === 'Invented job');
  const { content, version } = await garage.did('Desk', 'jobBook.get', { id: row?.id ?? '' });
  const later = content.steps.map((step) => ({ ...step, do: `${step.do}, anew` }));
  const { versionId } = await garage.did('Desk', 'jobBook.save', {
    ...{ id: row?.id ?? '', basedOn: version },
    content: { ...content, steps: later },
  });
  expect(await pdf((await garage.did('Runa', 'workSheet.pdf', { jobId })).base64)).not.toContain('anew');
  const fromBook = await garage.did('Runa', 'workSheet.pdf', { versionId });
  expect(await pdf(fromBook.base64)).toContain('Cover on, anew');
  // Nobody sees a sum on it, and what is keyed in later says so.
  expect(text).not.toMatch(/\d+\.\d\d/);
  garage.now = at('2026-03-10T15:00');
  await garage.did('Runa', 'torque.make', { jobId, step: 2, touch: 0, count: 12, at: at('2026-03-10T10:00') });
  await bench.tick(2, { at: at('2026-03-10T10:05') });
  const steps = (await bench.order()).jobs[0]?.steps;
  expect(steps?.[1]).toMatchObject({ state: 'done', lateBy: 'Runa', at: at('2026-03-10T10:05') });
  await garage.end();
});

test('a job that was typed has no procedure, and so no bench copy', async () => {
  const bench = await BenchJob.begun(STEPS);
  const typed = await bench.garage.did('Desk', 'job.add', {
    orderId: bench.orderId,
    job: { title: 'Look' },
    lines: [],
  });
  expect(await bench.garage.refused('Runa', 'workSheet.pdf', { jobId: typed.id })).toMatchObject({ code: 'not-found' });
  await bench.garage.end();
});
