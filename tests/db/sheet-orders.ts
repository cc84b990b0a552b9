import type { InputOf } from '../../core/contract/index.ts';
import { readPages, textOf } from '../paper/read-back.ts';
import type { PracticeShop } from './practice-shop.ts';

type Lines = InputOf<'job.add'>['lines'];

/** An order of an invented car with one job a list of lines; ids of the order, its jobs and their lines. */
export async function orderOf(garage: PracticeShop, ...jobs: readonly Lines[]) {
  const { id } = await garage.did('Desk', 'order.book', {
    customer: { add: { name: 'Ilse Vandermeer' } },
    car: { add: { plate: 'KTB 4471', words: 'Corvane R', unit: 'km' } },
    complaint: 'It whines.',
    here: true,
  });
  const added = [];
  for (const lines of jobs)
    added.push(await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'A job' }, lines }));
  return { id, jobs: added };
}

/** The owner changes settings. */
export async function setShop(garage: PracticeShop, settings: InputOf<'shop.change'>['settings']): Promise<void> {
  const { revision } = await garage.did('Odile', 'shop.get', {});
  await garage.did('Odile', 'shop.change', { revision, settings });
}

export const sumsOf = async (garage: PracticeShop, id: string) => {
  const { sums } = await garage.did('Desk', 'order.get', { id });
  if (sums === null) throw new Error('no sums');
  return sums;
};

/** The customer says yes to jobs, up to a sum with tax. */
export const saidYes = (garage: PracticeShop, orderId: string, jobIds: readonly string[], total: number) =>
  garage.did('Desk', 'decision.record', {
    orderId,
    jobs: jobIds.map((jobId) => ({ jobId, answer: 'yes' as const })),
    upTo: { total },
    spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    way: 'person',
  });

/** What stands on a paper, read back from its PDF. */
export async function printed(garage: PracticeShop, id: string): Promise<string> {
  const { base64 } = await garage.did('Desk', 'paper.read', { id });
  return (await readPages(new Uint8Array(Buffer.from(base64, 'base64')))).map(textOf).join('\n');
}
