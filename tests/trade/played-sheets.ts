import { z } from 'zod';
import type { PracticeShop } from '../db/practice-shop.ts';
import { at } from '../db/practice-shop.ts';
import type { Case } from './case.ts';
import { bookIn, ITEMISED, inShop, invoice, oneTax, yes } from './played-shop.ts';

const whole = z.int();
const spoken = { name: 'Ilse Vandermeer', role: 'customer' as const };

async function sumsOf(garage: PracticeShop, id: string) {
  const { sums, balance } = await garage.did('Desk', 'order.get', { id });
  if (sums === null) throw new Error('The desk sees no sums');
  return { ...sums, balance };
}

const extraWork = z.strictObject({
  authorised: whole,
  extra: z.strictObject({
    h_x100: whole,
    overlap_x100: whole,
    rate: whole,
    part: whole,
    supplies_bp: whole,
    tax_bp: whole,
  }),
  try_invoice: z.array(whole),
});

/** A yes, a finding, a second yes by phone; then the sheet is brought to a sum and an invoice is asked for. */
async function askForInvoice(given: z.output<typeof extraWork>, target: number) {
  const { authorised, extra } = given;
  const net = (gross: number) => Math.round((gross * 10_000) / (10_000 + extra.tax_bp));
  const supplies = { mode: 'percent' as const, bp: extra.supplies_bp, cap: null, floor: null, sentence: '' };
  return inShop({ supplies, taxes: oneTax(extra.tax_bp) }, async (garage) => {
    const { id } = await bookIn(garage);
    const main = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Quoted', fixedPrice: net(authorised) },
      lines: [{ kind: 'labour', words: 'Work', quantity: 1000, unitPrice: extra.rate }],
    });
    await yes(garage, id, [main.id], authorised);
    const before = await sumsOf(garage, id);
    const labour = { quantity: 0, unitPrice: extra.rate, billing: 'book' as const, book: extra.h_x100 * 10 };
    const more = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Found' },
      lines: [
        { kind: 'labour', words: 'Fit', unit: 'h', ...labour, overlap: extra.overlap_x100 * 10, overlapJobId: main.id },
        { kind: 'part', words: 'Part', condition: 'new', quantity: 1000, unitPrice: extra.part },
      ],
    });
    const after = await sumsOf(garage, id);
    const said = await garage.did('Desk', 'decision.record', {
      orderId: id,
      jobs: [{ jobId: more.id, answer: 'yes' }],
      upTo: { plus: after.gross - before.gross },
      spoken,
      way: 'phone',
      reached: '555-0142',
    });
    const whole = await garage.did('Desk', 'order.get', { id });
    const job = whole.jobs.find((one) => one.id === main.id);
    await garage.did('Desk', 'job.change', {
      id: main.id,
      revision: job?.revision ?? 0,
      change: { fixedPrice: net(target) - (after.net - before.net) },
    });
    if ((await sumsOf(garage, id)).gross !== target) throw new Error(`No sheet comes to ${target}`);
    const { stops } = await garage.did('Desk', 'order.get', { id });
    const held = stops.some(({ what }) => what === 'over-the-yes');
    if (held) await garage.refused('Desk', 'invoice.issue', { orderId: id });
    else await invoice(garage, id);
    const [net2, tax, gross] = [after.net - before.net, after.tax - before.tax, after.gross - before.gross];
    return { net: net2, tax, gross, ceiling: said.ceiling, allowed: !held };
  });
}

const T11: Case = async (given) => {
  const inputs = extraWork.parse(given);
  const tries = [];
  for (const target of inputs.try_invoice) tries.push(await askForInvoice(inputs, target));
  const [first] = tries;
  return {
    extra_net: first?.net,
    extra_tax: first?.tax,
    extra_gross: first?.gross,
    authorised_total: first?.ceiling,
    allowed: tries.map(({ allowed }) => allowed),
  };
};

const T12: Case = (given) => {
  const inputs = z
    .strictObject({ declined_on: z.iso.date(), odo: whole, days: whole, distance: whole, amount: whole })
    .parse(given);
  const settings = { followUpDays: inputs.days, followUpDistance: inputs.distance, taxes: oneTax(0) };
  return inShop({ ...settings, supplies: ITEMISED }, async (garage) => {
    garage.now = at(`${inputs.declined_on}T08:00`);
    const { id, carId, customerId } = await bookIn(garage, inputs.odo);
    const other = 10_000;
    const price = (words: string, unitPrice: number) => ({ kind: 'part' as const, words, quantity: 1000, unitPrice });
    const pads = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Brake pads' },
      lines: [price('Pads', inputs.amount)],
    });
    const rest = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Rest' },
      lines: [price('Rest', other)],
    });
    await garage.did('Desk', 'decision.record', {
      orderId: id,
      jobs: [
        { jobId: rest.id, answer: 'yes' },
        { jobId: pads.id, answer: 'no' },
      ],
      upTo: { total: other },
      spoken,
      way: 'person',
    });
    const billed = await invoice(garage, id);
    const next = await garage.did('Desk', 'order.book', {
      customer: { id: customerId },
      car: { id: carId },
      complaint: 'Next visit.',
      mileage: inputs.odo + 1,
      here: true,
    });
    const { declinedBefore } = await garage.did('Desk', 'order.get', { id: next.id });
    const shown = declinedBefore.find((work) => work.jobId === pads.id);
    return {
      invoiced: billed.gross - other,
      follow_up_on: shown?.followUpOn,
      follow_up_odo: shown?.followUpMileage,
    };
  });
};

const T13: Case = (given) => {
  const inputs = z
    .strictObject({
      teardown_h_x100: whole,
      reassembly_h_x100: whole,
      rate: whole,
      destroyed_parts: whole,
      tax_bp: whole,
      deposit: whole,
    })
    .parse(given);
  return inShop({ supplies: ITEMISED, taxes: oneTax(inputs.tax_bp) }, async (garage) => {
    const { id } = await bookIn(garage);
    const hours = (words: string, x100: number) => ({
      kind: 'labour' as const,
      words,
      quantity: x100 * 10,
      unitPrice: inputs.rate,
    });
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Teardown' },
      lines: [
        hours('Teardown', inputs.teardown_h_x100),
        hours('Reassembly', inputs.reassembly_h_x100),
        { kind: 'part', words: 'Destroyed seals', condition: 'new', quantity: 1000, unitPrice: inputs.destroyed_parts },
      ],
    });
    await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: inputs.deposit });
    const sums = await sumsOf(garage, id);
    await yes(garage, id, [job.id], sums.gross);
    await invoice(garage, id);
    const refund = Math.max(0, -((await sumsOf(garage, id)).balance ?? 0));
    if (refund > 0) {
      const back = { orderId: id, kind: 'refund' as const, way: 'card' as const, amount: refund };
      const { balance } = await garage.did('Desk', 'payment.take', back);
      if (balance !== 0) throw new Error(`${balance} left after the refund`);
    }
    return { net: sums.net, tax: sums.tax, gross: sums.gross, refund };
  });
};

const T16: Case = (given) => {
  const inputs = z.strictObject({ billed_ml: whole, used_ml: whole, price_per_l: whole, tax_bp: whole }).parse(given);
  return inShop({ supplies: ITEMISED, taxes: oneTax(inputs.tax_bp) }, async (garage) => {
    const { id } = await bookIn(garage);
    const job = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Oil' },
      lines: [{ kind: 'fluid', words: 'Oil', unit: 'L', quantity: inputs.billed_ml, unitPrice: inputs.price_per_l }],
    });
    await yes(garage, id, [job.id], (await sumsOf(garage, id)).gross);
    const billed = await invoice(garage, id);
    const credit = await garage.did('Desk', 'creditNote.issue', {
      invoicePaperId: billed.paperId,
      reason: 'Less was used',
      lines: [{ lineId: job.lineIds[0] ?? '', quantity: inputs.billed_ml - inputs.used_ml }],
    });
    const { papers, balance } = await garage.did('Desk', 'order.get', { id });
    return {
      credit_net: credit.net,
      credit_tax: credit.tax,
      credit_gross: credit.gross,
      original_gross: papers.find((paper) => paper.id === billed.paperId)?.gross,
      after: balance,
    };
  });
};

const T41: Case = (given) => {
  const inputs = z
    .strictObject({ base: whole, saves: z.array(z.tuple([z.enum(['bench', 'desk']), whole])) })
    .parse(given);
  return inShop({}, async (garage) => {
    const { id } = await bookIn(garage);
    const { id: jobId } = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Look' }, lines: [] });
    const change = (revision: number) => ({ id: jobId, revision, change: { note: `from ${revision}` } });
    for (let revision = 1; revision < inputs.base; revision += 1)
      await garage.did('Desk', 'job.change', change(revision));
    const accepted: boolean[] = [];
    for (const [who, from] of inputs.saves) {
      const order = await garage.did('Desk', 'order.get', { id });
      const fresh = order.jobs[0]?.revision === from;
      const person = who === 'bench' ? 'Odile' : 'Desk';
      if (fresh) await garage.did(person, 'job.change', change(from));
      else {
        const error = await garage.refused(person, 'job.change', change(from));
        if (error.code !== 'changed-meanwhile') throw new Error(`Refused as ${error.code}`);
      }
      accepted.push(fresh);
    }
    return { accepted, final: (await garage.did('Desk', 'order.get', { id })).jobs[0]?.revision };
  });
};

export const playedSheets: Readonly<Record<string, Case>> = { T11, T12, T13, T16, T41 };
