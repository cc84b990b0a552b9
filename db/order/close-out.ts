import { hoursX1000 } from '../../core/bench/clock.ts';
import { type CostedLine, orderCost } from '../../core/books/order-cost.ts';
import type { OutputOf } from '../../core/contract/index.ts';
import { coreCharge } from '../../core/money/core-tax.ts';
import { profitOf } from '../../core/money/margin.ts';
import { money, scale, sum } from '../../core/money/money.ts';
import { type WayOut, waysOut } from '../../core/order/ways-out.ts';
import type { Context } from '../context.ts';
import { settingsOf } from '../people.ts';
import type { JobRow, LineRow } from '../tables.ts';
import { billOf, onNoLine, stopsOfOrder } from './facts.ts';
import { type Loaded, loadOrder } from './load.ts';
import { type Quoted, quotedOf } from './quoted.ts';
import { balanceOf, countedMinutes, letterOf, type Reckoned, reckonOrder } from './reckon.ts';

type CloseOut = OutputOf<'closeOut.get'>;
type Hours = CloseOut['hours'];

const MINUTE_MS = 60_000;

/** The sheet against the work done. Sums are null for whoever may not see prices, the margin for whoever may not see cost. */
export async function closeOutOf(context: Context, orderId: string): Promise<CloseOut> {
  const loaded = await loadOrder(context, orderId);
  const reckoned = reckonOrder(loaded, settingsOf(context));
  const quoted = await quotedOf(context, loaded);
  const { yes, totals } = reckoned;
  const invoiced = loaded.papers.some((paper) => paper.kind === 'invoice');
  const jobs = reckoned.inSum.map((job) => jobOf(context, loaded, reckoned, quoted, job));
  const taken = sum(loaded.payments.map((payment) => payment.amount));
  return {
    orderId,
    number: loaded.order.number,
    revision: loaded.order.revision,
    invoiced,
    quote: quoted.paper
      ? { paperId: quoted.paper.id, number: quoted.paper.number, version: quoted.paper.version ?? 1 }
      : null,
    jobs,
    hours: together(jobs.map((job) => job.hours)),
    onNoLine: await strayParts(context, loaded),
    totals: context.seesPrices
      ? {
          quoted: quoted.paper?.gross ?? null,
          net: totals.net,
          tax: totals.tax,
          charge: totals.gross,
          ceiling: yes.ceiling,
          allowed: yes.allowed,
          excess: yes.coveredExcess,
          held: yes.heldSum,
          ownMaximum: loaded.order.own_maximum,
          overMaximum: reckoned.overMaximum,
          taken,
          toPay: invoiced ? balanceOf(loaded) : totals.gross - taken,
        }
      : null,
    margin: context.seesCost ? marginOf(loaded, reckoned) : null,
    stops: stopsOfOrder(loaded, reckoned, context.seesPrices),
    waysOut: waysOut(reckoned.sheet, reckoned.rules, reckoned.decisions, reckoned.rule).map((way) =>
      shown(context, loaded, way),
    ),
  };
}

function jobOf(
  context: Context,
  loaded: Loaded,
  reckoned: Reckoned,
  quoted: Quoted,
  job: JobRow,
): CloseOut['jobs'][number] {
  const seen = (amount: number | undefined) => (context.seesPrices ? (amount ?? null) : null);
  const lines = loaded.lines.filter((line) => line.job_id === job.id);
  const labour = lines.filter((line) => line.kind === 'labour');
  const amounts = new Map(reckoned.totals.lines.map((line) => [line.lineId, line.amount]));
  const before = quoted.ofJob(job.id);
  const quotedHours = before === null ? null : sumOf(labour.map((line) => before.lines.get(line.id)?.quantity ?? 0));
  return {
    id: job.id,
    letter: letterOf(job.place),
    title: job.title,
    kind: job.kind,
    covered: reckoned.yes.covered.has(job.id),
    given: job.given === 1,
    fixedPrice: job.fixed_price !== null,
    quoted: seen(before?.amount),
    charge: seen(reckoned.totals.jobs.get(job.id)),
    hours: {
      quoted: quotedHours,
      charged: sumOf(labour.map(reckoned.charged)),
      clocked: hoursX1000(countedMinutes(loaded.entries, job.id)),
      people: peopleOn(loaded, job.id, labour, quotedHours),
    },
    lines: lines.map((line) => {
      const was = before?.lines.get(line.id);
      const used = usedOn(loaded, line, labour.length);
      return {
        lineId: line.id,
        kind: line.kind,
        words: line.words,
        partNumber: line.part_number,
        unit: line.unit,
        quoted: was ? { quantity: was.quantity, total: seen(was.amount) } : null,
        used: used === null ? null : { quantity: used },
        charge: {
          quantity: reckoned.charged(line),
          total: seen(amounts.get(line.id)),
          given: line.given === 1 || job.given === 1 || job.kind !== 'charged',
        },
      };
    }),
  };
}

const sumOf = (figures: readonly number[]) => figures.reduce((all, one) => all + one, 0);

/** Clocked, where the job has one labour line to bear it; issued; or arrived. null: nothing measures it. */
function usedOn(loaded: Loaded, line: LineRow, labourLines: number): number | null {
  if (line.kind === 'labour') return labourLines === 1 ? hoursX1000(countedMinutes(loaded.entries, line.job_id)) : null;
  const moves = loaded.moves.filter((move) => move.line_id === line.id && move.what !== 'waste');
  if (moves.length > 0) return Math.max(0, -sumOf(moves.map((move) => move.quantity)));
  const awaited = loaded.awaited.filter((row) => row.line_id === line.id);
  if (awaited.length > 0) return awaited.some((row) => row.arrived_at !== null) ? line.quantity : 0;
  return line.part_id === null ? null : 0;
}

function peopleOn(loaded: Loaded, jobId: string, labour: readonly LineRow[], quoted: number | null): Hours['people'] {
  const named = new Map<string, number>();
  for (const line of labour)
    for (const { personId, hours } of JSON.parse(line.people) as { personId: string; hours: number }[])
      named.set(personId, (named.get(personId) ?? 0) + hours);
  const clocked = loaded.entries.filter((entry) => entry.job_id === jobId && entry.kind === 'work');
  const ids = [...new Set([...named.keys(), ...clocked.map((entry) => entry.person_id)])];
  return ids
    .map((personId) => ({
      personId,
      name: loaded.people.get(personId)?.name ?? '',
      // Hours that name nobody are meant for whoever does the job, if that is one person.
      quoted: named.get(personId) ?? (named.size === 0 && ids.length === 1 ? quoted : null),
      clocked: countedMinutes(loaded.entries, jobId, personId) * MINUTE_MS,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

function together(all: readonly Hours[]): Hours {
  const people = new Map<string, Hours['people'][number]>();
  const add = (a: number | null, b: number | null) => (a === null ? b : a + (b ?? 0));
  for (const one of all.flatMap((hours) => hours.people)) {
    const before = people.get(one.personId);
    people.set(one.personId, {
      ...one,
      quoted: add(before?.quoted ?? null, one.quoted),
      clocked: (before?.clocked ?? 0) + one.clocked,
    });
  }
  return {
    quoted: all.reduce<number | null>((sum, hours) => add(sum, hours.quoted), null),
    charged: sumOf(all.map((hours) => hours.charged)),
    clocked: sumOf(all.map((hours) => hours.clocked)),
    people: [...people.values()],
  };
}

async function strayParts(context: Context, loaded: Loaded): Promise<CloseOut['onNoLine']> {
  const stray = onNoLine(loaded);
  if (stray.length === 0) return [];
  const ids = stray.map(({ move }) => move.part_id);
  const rows = await context.tx.selectFrom('part').select(['id', 'unit', 'price']).where('id', 'in', ids).execute();
  const parts = new Map(rows.map((row) => [row.id, row]));
  return stray.map(({ move, quantity }) => ({
    moveId: move.id,
    jobId: move.job_id ?? '',
    letter: letterOf(loaded.allJobs.find((job) => job.id === move.job_id)?.place ?? 0),
    partId: move.part_id,
    words: move.words,
    unit: parts.get(move.part_id)?.unit ?? '',
    quantity,
    worth: context.seesPrices ? scale(quantity, parts.get(move.part_id)?.price ?? 0, 1000) : null,
  }));
}

function marginOf(loaded: Loaded, reckoned: Reckoned): CloseOut['margin'] {
  const { totals } = reckoned;
  const lines = loaded.lines.filter((line) => reckoned.onSheet.has(line.job_id));
  const onLine = new Set(lines.map((line) => line.id));
  const cost = (moves: Loaded['moves']) => -sumOf(moves.map((move) => move.value));
  const undone = new Map(loaded.moves.map((move) => [move.id, move]));
  /** Waste counts as spilt, whatever line it was drawn for; so does putting it back. */
  const spilt = (move: Loaded['moves'][number]) =>
    (move.undoes === null ? move : undone.get(move.undoes))?.what === 'waste';
  const drawn = (lineId: string) => loaded.moves.filter((move) => move.line_id === lineId && !spilt(move));
  const costed = lines.map((line): CostedLine => {
    const moves = drawn(line.id);
    return {
      kind: line.kind,
      quantity: line.quantity,
      unitCost: line.unit_cost,
      issued: moves.length === 0 ? null : cost(moves),
      billed: billOf(loaded, line.id),
    };
  });
  const stray = money(cost(loaded.moves.filter((move) => spilt(move) || !onLine.has(move.line_id ?? ''))));
  const paid = loaded.allJobs.flatMap((job) =>
    [...loaded.people.values()].map((person) => ({
      minutes: countedMinutes(loaded.entries, job.id, person.id),
      payRate: money(person.pay_rate),
    })),
  );
  const of = orderCost(costed, stray, paid);
  const sold = money(totals.net - coreCharge(totals, reckoned.sheet, reckoned.rules));
  const { profit, marginX10 } = profitOf(sold, of.total);
  const { total, unknown, ...parts } = of;
  return { sold, ...parts, cost: total, profit, marginX10, unknownCosts: unknown };
}

function shown(context: Context, loaded: Loaded, way: WayOut): CloseOut['waysOut'][number] {
  const job = loaded.jobs.find((one) => one.id === way.jobId);
  const line = loaded.lines.find((one) => one.id === way.lineId);
  const worked =
    loaded.entries.some((entry) => entry.job_id === way.jobId) ||
    loaded.running.some((clock) => clock.job_id === way.jobId) ||
    loaded.moves.some((move) => move.job_id === way.jobId);
  return {
    ...way,
    letter: job ? letterOf(job.place) : '',
    words: line?.words ?? job?.title ?? '',
    amount: context.seesPrices ? way.amount : null,
    after: context.seesPrices ? way.after : null,
    held: way.kind === 'move' && worked ? 'job-worked-on' : '',
  };
}
