import { z } from 'zod';
import type { Case } from './case.ts';
import { bookIn, ITEMISED, inShop, invoice, oneTax, yes } from './played-shop.ts';

const whole = z.int();
const WAYS: Readonly<Record<string, 'cash' | 'card' | 'transfer'>> = {
  deposit: 'card',
  cash: 'cash',
  card: 'card',
  transfer: 'transfer',
};

/** A deposit before the invoice, what is paid after it, and a core that comes back as a credit note. */
const T15: Case = (given) => {
  const { gross, applied } = z
    .strictObject({ gross: whole, applied: z.array(z.strictObject({ kind: z.string(), amount: whole })) })
    .parse(given);
  return inShop({ supplies: ITEMISED, taxes: oneTax(0), cashStep: 1 }, async (garage) => {
    const { id } = await bookIn(garage);
    const credits = applied.filter(({ kind }) => kind === 'core_credit_note');
    const rest = gross - credits.reduce((all, { amount }) => all + amount, 0);
    const priced = (kind: 'core' | 'part', unitPrice: number) => ({ kind, words: kind, quantity: 1000, unitPrice });
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Swap' },
      lines: [...credits.map(({ amount }) => priced('core', amount)), priced('part', rest)],
    });
    await yes(garage, id, [job.id], gross);
    const coreLines = job.lineIds.slice(0, credits.length);
    const balances: (number | null)[] = [];
    let paperId: string | null = null;
    for (const [place, { kind, amount }] of applied.entries()) {
      const deposit = place === 0 && kind === 'deposit';
      if (!deposit && paperId === null) paperId = (await invoice(garage, id)).paperId;
      if (kind === 'core_credit_note') {
        await garage.did('Desk', 'creditNote.issue', {
          invoicePaperId: paperId ?? '',
          reason: 'Core came back',
          lines: [{ lineId: coreLines.shift() ?? '', quantity: 1000 }],
        });
      } else {
        const way = WAYS[kind];
        if (way === undefined) throw new Error(`Unknown way to pay: ${kind}`);
        await garage.did('Desk', 'payment.take', { orderId: id, kind: deposit ? 'deposit' : 'payment', way, amount });
      }
      if (deposit) paperId = (await invoice(garage, id)).paperId;
      balances.push((await garage.did('Desk', 'order.get', { id })).balance);
    }
    return { balances };
  });
};

export const playedPayments: Readonly<Record<string, Case>> = { T15 };
