import type { z } from 'zod';
import type { atTheDoor, declinedWork } from '../../core/contract/desk.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import type { lineFields } from '../../core/contract/whole-order.ts';
import { creditOf } from '../account.ts';
import type { Context } from '../context.ts';
import { settingsOf } from '../people.ts';
import { declinedOfCar } from './declined.ts';
import { nextOf, poHoldsWork, stopsOfOrder } from './facts.ts';
import { findingFieldsOf } from './findings.ts';
import { type Loaded, loadOrder } from './load.ts';
import { missedOf } from './place.ts';
import { balanceOf, countedMinutes, letterOf, type Reckoned, reckonOrder } from './reckon.ts';
import { stepsOf } from './steps.ts';
import { unwrittenOf } from './unwritten.ts';

type Whole = OutputOf<'order.get'>;
type LineInput = z.output<typeof lineFields>;

/** The whole order as the window and the command line see it. Prices and cost are null for whoever may not see them. */
export async function wholeOrder(context: Context, id: string): Promise<Whole> {
  const settings = settingsOf(context);
  const loaded = await loadOrder(context, id);
  const reckoned = reckonOrder(loaded, settings);
  const { order, customer, payer, car } = loaded;
  const seen = <T>(amount: T): T | null => (context.seesPrices ? amount : null);
  const { yes, totals } = reckoned;
  const door = JSON.parse(order.door) as z.output<typeof atTheDoor>;
  const brief = (row: { id: string; name: string; phone: string }) => ({
    id: row.id,
    name: row.name,
    phone: row.phone,
  });
  const corrected = new Set(loaded.entries.flatMap((entry) => (entry.corrects === null ? [] : [entry.corrects])));
  const name = (personId: string) => loaded.people.get(personId)?.name ?? '';
  return {
    id: order.id,
    number: order.number,
    revision: order.revision,
    openedAt: order.opened_at,
    openedBy: name(order.opened_by),
    customer: {
      ...brief(customer),
      tellBy: customer.tell_by,
      email: customer.email,
      address: JSON.parse(customer.address) as string[],
      mayYes: JSON.parse(customer.may_yes) as { name: string; upTo: number | null }[],
    },
    payer: payer ? brief(payer) : null,
    car: { id: car.id, plate: car.plate, vin: car.vin, words: car.words, year: car.year, unit: car.unit },
    lastMileage: loaded.last?.reading ?? null,
    counterSale: order.counter_sale === 1,
    complaint: order.complaint,
    when: JSON.parse(order.when_it_happens) as string[],
    door: { ...door, storage: seen(door.storage ?? null) },
    mileageIn: order.mileage_in,
    mileageOut: order.mileage_out,
    arrivedAt: order.arrived_at,
    handedOverAt: order.handed_over_at,
    handedOverTo: order.handed_over_to,
    cancelledAt: order.cancelled_at,
    cancelWhy: order.cancel_why,
    promiseAt: order.promise_at,
    promiseWords: order.promise_words,
    ownMaximum: seen(order.own_maximum),
    poNumber: order.po_number,
    poRequired: (payer ?? customer).po_required === 1,
    poHoldsWork: poHoldsWork(loaded),
    credit: await creditOf(context, loaded),
    taxExempt: (payer ?? customer).tax_exempt !== '',
    oldPartsAnswer: order.old_parts_answer,
    booking: loaded.booking
      ? {
          bay: loaded.booking.bay,
          day: loaded.booking.day,
          from: loaded.booking.from_time,
          hours: loaded.booking.hours,
          personId: loaded.booking.person_id,
        }
      : null,
    missed: missedOf(loaded),
    findings: loaded.findings.map((row) => ({
      id: row.id,
      revision: row.revision,
      ...findingFieldsOf(row),
      jobId: row.job_id,
      by: name(row.person_id),
      at: row.at,
    })),
    jobs: jobsOf(context, loaded, reckoned),
    discounts: loaded.discounts.map((row) => ({
      id: row.id,
      on: row.on_what,
      reduction: JSON.parse(row.reduction) as Whole['discounts'][number]['reduction'],
      words: row.words,
    })),
    sums: seen({
      labour: totals.byKind.labour,
      labourHours: totals.labourHours,
      parts: totals.byKind.part + totals.byKind.fluid,
      outside: totals.byKind.outside,
      supplies: totals.supplies + totals.byKind.supplies,
      fees: totals.byKind.fee,
      wasteFee: { words: reckoned.rules.wasteFee?.words ?? '', amount: totals.wasteFee },
      core: totals.byKind.core,
      discount: totals.discount,
      taxes: totals.taxes.map((row) => ({
        name: row.tax.name,
        ratePpm: row.tax.ratePpm,
        base: row.base,
        amount: row.amount,
        oldUnits: row.oldUnits === true,
      })),
      net: totals.net,
      tax: totals.tax,
      gross: totals.gross,
      reckoning: totals.reckoning.map((step) => ({ ...step, on: { ...step.on } })),
    }),
    yes: {
      inside: yes.inside,
      unwritten: await unwrittenOf(context, loaded, reckoned),
      held: yes.heldJobs.map((jobId) => {
        const job = loaded.jobs.find((one) => one.id === jobId);
        return { jobId, letter: letterOf(job?.place ?? 0), title: job?.title ?? '' };
      }),
      ...(context.seesPrices
        ? {
            ceiling: yes.ceiling,
            allowed: yes.allowed,
            onSheet: yes.onSheet,
            coveredTotal: yes.coveredTotal,
            coveredExcess: yes.coveredExcess,
            heldSum: yes.heldSum,
            ownMaximum: order.own_maximum,
            overMaximum: reckoned.overMaximum,
          }
        : {}),
    },
    decisions: loaded.decisions.map((row) => {
      const quote = loaded.papers.find((paper) => paper.id === row.quote_paper_id);
      return {
        id: row.id,
        number: row.number,
        at: row.at,
        recordedAt: row.recorded_at,
        lateBy: row.recorded_at - row.at > 60_000 ? name(row.person_id) : '',
        jobs: loaded.decided
          .filter((one) => one.decision_id === row.id)
          .map((one) => ({
            jobId: one.job_id,
            answer: one.answer,
            amount: seen(one.amount),
            risk: one.risk,
            unsafe: one.unsafe === 1,
          })),
        ceiling: seen(row.ceiling),
        spoken: { name: row.spoken_name, role: row.spoken_role },
        way: row.way,
        reached: row.reached,
        words: row.words,
        quoteNumber: quote?.number ?? null,
        quoteVersion: quote?.version ?? null,
        strokes: row.strokes === null ? null : (JSON.parse(row.strokes) as [number, number][][]),
        takenBy: name(row.person_id),
      };
    }),
    tries: loaded.tries.map((row) => ({
      id: row.id,
      at: row.at,
      way: row.way,
      reached: row.reached,
      words: row.words,
      by: name(row.person_id),
    })),
    clocks: loaded.entries.map((row) => ({
      id: row.id,
      personId: row.person_id,
      person: name(row.person_id),
      jobId: row.job_id,
      kind: row.kind,
      on: row.on_at,
      off: row.off_at,
      forgotten: row.off_at === null,
      corrects: row.corrects,
      why: row.why,
      counts: row.off_at !== null && !corrected.has(row.id),
    })),
    openClocks: loaded.running.map((row) => ({
      personId: row.person_id,
      person: name(row.person_id),
      orderId: order.id,
      orderNumber: order.number,
      jobId: row.job_id,
      kind: row.kind,
      on: row.on_at,
    })),
    moves: loaded.moves.map((row) => ({
      id: row.id,
      lineId: row.line_id,
      jobId: row.job_id ?? '',
      partId: row.part_id,
      words: row.words,
      quantity: row.quantity,
      at: row.at,
      by: name(row.person_id),
      cost: context.seesCost ? row.value : null,
    })),
    awaited: loaded.awaited.map((row) => ({
      id: row.id,
      lineId: row.line_id,
      kind: row.kind,
      supplier: row.supplier,
      reference: row.reference,
      words: row.words,
      orderedAt: row.ordered_at,
      dueOn: row.due_on,
      arrivedAt: row.arrived_at,
      cost: context.seesCost ? row.cost : null,
    })),
    papers: loaded.papers.map((row) => ({
      id: row.id,
      kind: row.kind,
      number: row.number,
      version: row.version,
      issuedAt: row.issued_at,
      gross: seen(row.gross),
      validUntil: row.valid_until,
      sent: loaded.sent.filter((one) => one.paper_id === row.id).map((one) => ({ at: one.at, how: one.how })),
    })),
    payments: context.seesPrices
      ? loaded.payments.map((row) => ({
          id: row.id,
          at: row.at,
          kind: row.kind,
          way: row.way,
          amount: row.amount,
          receiptPaperId: row.receipt_paper_id,
        }))
      : [],
    balance: seen(balanceOf(loaded)),
    declinedBefore: await declinedOfCar(context, car.id, order.id),
    next: nextOf(loaded, reckoned, context),
    stops: stopsOfOrder(loaded, reckoned, context.seesPrices),
  };
}

function jobsOf(context: Context, loaded: Loaded, reckoned: Reckoned): Whole['jobs'] {
  const name = (personId: string | null | undefined) => (personId ? (loaded.people.get(personId)?.name ?? null) : null);
  const wrenchName = (id: string | null | undefined) => (id ? (loaded.wrenches.get(id) ?? '') : '');
  const seen = <T>(amount: T): T | null => (context.seesPrices ? amount : null);
  return loaded.jobs.map((job) => ({
    id: job.id,
    revision: job.revision,
    letter: letterOf(job.place),
    place: job.place,
    title: job.title,
    kind: job.kind,
    note: job.note,
    bearer: job.bearer,
    offered: job.offered === 1,
    given: job.given === 1,
    giveWhy: job.give_why,
    bookVersionId: job.book_job_version_id,
    fixedPrice: seen(job.fixed_price),
    amount: seen(reckoned.totals.jobs.get(job.id) ?? reckoned.aside.get(job.id) ?? 0),
    covered: reckoned.yes.covered.has(job.id),
    answer: reckoned.answers.get(job.id) ?? 'none',
    clockedMinutes: countedMinutes(loaded.entries, job.id),
    steps: stepsOf(loaded, job.id).map(({ step, last, made, touched }) => ({
      n: step.n,
      state: last?.state ?? 'open',
      by: name(last?.person_id),
      secondBy: name(last?.second_id),
      at: last?.at ?? null,
      why: last?.why ?? '',
      entered: made,
      lateBy: last?.late === 1 ? (name(last.person_id) ?? '') : '',
      reading: last?.reading ? (JSON.parse(last.reading) as number[]) : [],
      wrench: wrenchName(last?.wrench_id ?? touched.at(-1)?.wrench_id),
    })),
    lines: loaded.lines
      .filter((line) => line.job_id === job.id)
      .map((line) => ({
        id: line.id,
        revision: line.revision,
        jobId: line.job_id,
        place: line.place,
        kind: line.kind,
        words: line.words,
        partNumber: line.part_number,
        partId: line.part_id,
        condition: line.condition,
        quantity: line.quantity,
        unit: line.unit,
        charged: reckoned.charged(line),
        unitPrice: seen(line.unit_price),
        discount: line.discount === null ? null : (JSON.parse(line.discount) as LineInput['discount']),
        billing: line.billing,
        book: line.book,
        overlap: line.overlap,
        overlapJobId: line.overlap_job_id,
        people: JSON.parse(line.people) as LineInput['people'],
        supplier: line.supplier,
        unitCost: context.seesCost ? line.unit_cost : null,
        given: line.given === 1,
        giveWhy: line.give_why,
        amount: seen(reckoned.lineTotals.get(line.id)?.amount ?? 0),
      })),
  }));
}

export type Declined = z.output<typeof declinedWork>;
