import { z } from 'zod';
import type { InputOf } from '../../core/contract/index.ts';
import { at, type PracticeShop } from '../db/practice-shop.ts';
import type { Case } from './case.ts';
import { bookIn, ITEMISED, inShop, invoice, oneTax, yes } from './played-shop.ts';

const whole = z.int();
const date = z.iso.date();
const MINUTE = 60_000;

/** Somebody new at a rate of pay who works so many minutes on a job. */
async function works(garage: PracticeShop, name: string, payRate: number, minutes: number, jobId: string) {
  const { id } = await garage.did('Odile', 'person.add', { name, role: 'mechanic', code: `${name}-code`, payRate });
  const { closed: before } = await garage.did('Odile', 'clock.on', { jobId, personId: id });
  garage.now += minutes * MINUTE;
  const { closed } = await garage.did('Odile', 'clock.off', { personId: id });
  if (before !== null || closed === null) throw new Error('Another clock was running');
}

/** One piece in stock at a cost; its id. */
const stocked = async (garage: PracticeShop, number: string, cost: number) => {
  const part = { number, words: number, unit: '', price: cost, cost, onHand: 1000 };
  return (await garage.did('Desk', 'part.add', part)).id;
};

type JobInput = InputOf<'job.add'>;
const piece = (words: string): NonNullable<JobInput['lines']>[number] => ({
  ...{ kind: 'part', condition: 'new', words, quantity: 1000, unitPrice: 0 },
});

async function margin(garage: PracticeShop, orderId: string) {
  const closed = await garage.did('Odile', 'closeOut.get', { orderId });
  if (closed.margin === null) throw new Error('The owner sees no margin');
  return closed.margin;
}

/**
 * The whole visit: two jobs at their agreed net, a core charged and credited the same day, a deposit, parts from stock,
 * the lab's bill, clocks. The costs stand in the order in which the case tells them: the fifth is oil that was spilt,
 * the seventh the lab's bill, the last belongs to the extra job, all others are parts of the first.
 */
const T45: Case = (given) => {
  const inputs = z
    .strictObject({
      quote_net_without_core: whole,
      extra_net: whole,
      tax_bp: whole,
      deposit: whole,
      part_costs: z.array(whole).min(8),
      pay_cost: whole,
      extra_min: whole,
      extra_pay_rate: whole,
      note: z.string().optional(),
    })
    .parse(given);
  const { part_costs: costs } = inputs;
  const [SPILT, LAB, EXTRA] = [4, 6, costs.length - 1];
  return inShop({ supplies: ITEMISED, taxes: oneTax(inputs.tax_bp) }, async (garage) => {
    const { id } = await bookIn(garage);
    const parts = costs.map((_, place) => place).filter((place) => ![SPILT, LAB, EXTRA].includes(place));
    // A core of a round sum, so that its tax is whole and leaves nothing behind when it is credited.
    const core = { kind: 'core' as const, words: 'Core', quantity: 1000, unitPrice: 30_000 };
    const main = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Quoted', fixedPrice: inputs.quote_net_without_core },
      lines: [
        { kind: 'labour', words: 'Work', quantity: 1000, unitPrice: 9_600 },
        ...parts.map((place) => piece(`Part ${place}`)),
        { kind: 'outside', words: 'Lab', quantity: 1000, unitPrice: 0, unitCost: costs[LAB] ?? 0 },
      ],
    });
    const old = await garage.did('Desk', 'job.add', { orderId: id, job: { title: 'Old unit' }, lines: [core] });
    await garage.did('Desk', 'payment.take', { orderId: id, kind: 'deposit', way: 'card', amount: inputs.deposit });
    const quoted = await garage.did('Desk', 'quote.issue', { orderId: id });
    await yes(garage, id, [main.id, old.id], quoted.gross);

    const draw = async (jobId: string, lineId: string | null, place: number, waste = false) => {
      const partId = await stocked(garage, `CW-${place}`, costs[place] ?? 0);
      await garage.did('Runa', 'part.issue', { jobId, lineId, partId, quantity: 1000, waste });
    };
    for (const [line, place] of parts.entries()) await draw(main.id, main.lineIds[line + 1] ?? null, place);
    await draw(main.id, null, SPILT, true);
    await works(garage, 'Ada', inputs.pay_cost, 60, main.id);
    const extra = await garage.did('Desk', 'job.add', {
      orderId: id,
      job: { title: 'Found', fixedPrice: inputs.extra_net },
      lines: [piece('Bush'), { kind: 'labour', words: 'Fit', quantity: 500, unitPrice: 9_600 }],
    });
    await garage.refused('Runa', 'clock.on', { jobId: extra.id });
    const { sums } = await garage.did('Desk', 'order.get', { id });
    await yes(garage, id, [extra.id], sums?.gross ?? 0);
    await draw(extra.id, extra.lineIds[0] ?? null, EXTRA);
    await works(garage, 'Ben', inputs.extra_pay_rate, inputs.extra_min, extra.id);

    const billed = await invoice(garage, id);
    const credit = await garage.did('Desk', 'creditNote.issue', {
      invoicePaperId: billed.paperId,
      reason: 'The old unit came back',
      lines: [{ lineId: old.lineIds[0] ?? '', quantity: 1000 }],
    });
    const order = await garage.did('Desk', 'order.get', { id });
    const [net, tax] = [(order.sums?.net ?? 0) - credit.net, (order.sums?.tax ?? 0) - credit.tax];
    const made = await margin(garage, id);
    if (made.unknownCosts !== 0) throw new Error('A cost is not known');
    const { faults } = await garage.did('Odile', 'care.verify', {});
    if (faults.length > 0) throw new Error(`Not sound: ${JSON.stringify(faults)}`);
    return {
      net,
      tax,
      gross: billed.gross - credit.gross,
      balance: order.balance,
      parts_cost: made.parts + made.outside + made.stray,
      labour_cost: made.pay,
      cost: made.cost,
      profit: made.profit,
      profit_pct_x10: made.marginX10,
    };
  });
};

/** The car comes back: each visit at the desk as it is typed there, then the work again under warranty. */
const T35: Case = (given) => {
  const visit = z.tuple([date, whole]);
  const inputs = z
    .strictObject({
      on: date,
      odo: whole,
      months: whole,
      distance: whole,
      edges_included: z.boolean(),
      returns: z.array(visit),
      min: whole,
      pay_rate: whole,
      part_cost: whole,
    })
    .parse(given);
  const terms = { months: inputs.months, distance: inputs.distance, edgesIncluded: inputs.edges_included };
  const settings = {
    supplies: ITEMISED,
    taxes: oneTax(2000),
    warrantyTerms: { ...terms, source: '', checkedOn: null },
  };
  return inShop(settings, async (garage) => {
    garage.now = at(`${inputs.on}T08:00`);
    const first = await bookIn(garage, inputs.odo);
    const labour = { kind: 'labour' as const, words: 'Work', quantity: 1000, unitPrice: 9_600 };
    const repair = await garage.did('Desk', 'job.add', { orderId: first.id, job: { title: 'Swap' }, lines: [labour] });
    await yes(garage, first.id, [repair.id], 11_520);
    await invoice(garage, first.id);
    const back: string[] = [];
    const cover: (boolean | null)[] = [];
    for (const [on, mileage] of inputs.returns) {
      garage.now = at(`${on}T08:00`);
      const booked = await garage.did('Desk', 'order.book', {
        customer: { id: first.customerId },
        car: { id: first.carId },
        complaint: 'It is back.',
        ...{ mileage, mileageDoubt: 'as-typed', here: true },
      });
      back.push(booked.id);
      const { rows } = await garage.did('Desk', 'comeback.firstJobs', { orderId: booked.id });
      const row = rows.find((one) => one.jobId === repair.id);
      cover.push(row?.cover.covered ?? null);
    }
    const [orderId = ''] = back;
    const job = await garage.did('Desk', 'comeback.add', {
      ...{ orderId, firstJobId: repair.id, title: 'Again', bearer: 'us', cause: 'work' },
    });
    const lines: string[] = [];
    for (const line of [labour, { ...piece('Part'), unitPrice: 4_000 }])
      lines.push((await garage.did('Desk', 'line.add', { jobId: job.id, line })).id);
    const { comebacks } = await garage.did('Odile', 'release.get', { orderId });
    if (comebacks[0]?.firstOrderNumber !== first.number) throw new Error('The comeback does not know its first visit');
    const named = {
      orderId,
      jobs: [{ jobId: job.id, answer: 'yes' as const }],
      upTo: { total: 0 },
      way: 'person' as const,
    };
    // Free work is the owner's to say yes to, not the customer's.
    await garage.refused('Desk', 'decision.record', {
      ...named,
      spoken: { name: 'Ilse Vandermeer', role: 'customer' },
    });
    await garage.did('Odile', 'decision.record', { ...named, spoken: { name: 'Odile', role: 'owner' } });
    const partId = await stocked(garage, 'CW-1', inputs.part_cost);
    await garage.did('Runa', 'part.issue', { jobId: job.id, lineId: lines[1] ?? null, partId, quantity: 1000 });
    await works(garage, 'Ada', inputs.pay_rate, inputs.min, job.id);
    const billed = await invoice(garage, orderId);
    return {
      covered: cover,
      internal_cost: (await margin(garage, orderId)).cost,
      customer_pays: billed.gross,
    };
  });
};

export const playedClose: Readonly<Record<string, Case>> = { T35, T45 };
