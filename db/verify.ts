import { reckonCredit } from '../core/money/credit.ts';
import { reckonSheet } from '../core/money/totals.ts';
import type { Tx } from './context.ts';
import { digestOf } from './digest.ts';
import type { KeptCredit } from './order/credit.ts';
import type { KeptSheet } from './order/issue.ts';
import { RESTORED } from './restored.ts';
import { type Followed, keyOf, type PaperRow, type TrailRow } from './tables.ts';
import { TRAIL_START, trailHash } from './trail.ts';
import { orderBalances, papersToSend, type Say } from './verify-kept.ts';
import type { Change } from './writer.ts';

export interface Fault {
  readonly what: string;
  readonly table: string;
  readonly row: string;
  readonly detail: string;
}

const TABLES: readonly Followed[] = [
  'shop',
  'person',
  'bay',
  'labour_rate',
  'number_series',
  'customer',
  'car',
  'car_plate',
  'car_owner',
  'odometer_reading',
  'work_order',
  'booking',
  'book_job',
  'book_job_version',
  'job',
  'line',
  'sheet_discount',
  'finding',
  'paper',
  'paper_sent',
  'decision',
  'decision_job',
  'contact_try',
  'clock_open',
  'clock_entry',
  'presence',
  'step_done',
  'part',
  'part_move',
  'awaited',
  'payment',
  'posting',
  'wrench',
  'torque_entry',
  'photo',
  'photo_use',
  'pump',
  'pump_calibration',
  'fluid_entry',
  'fluid_sample',
  'test_drive',
  'check_list',
  'check_done',
  'quarantine',
  'absence',
  'car_mark',
  'car_mark_seen',
  'key_out',
  'message',
  'reminder',
  'reminder_try',
  'customer_join',
  'import_run',
  'import_made',
  'past_visit',
  'credit_pass',
  'statement',
  'statement_sent',
  'statement_noted',
  'privacy_request',
  'consent',
  'request',
];

/**
 * Walks the trail's chain, compares every row with the digest that the trail last noted for it, re-adds every issued
 * paper, every stock balance and every set of postings, and looks for gaps in the series of numbers.
 */
export async function verify(tx: Tx): Promise<{ sound: boolean; checked: Record<string, number>; faults: Fault[] }> {
  const faults: Fault[] = [];
  const checked: Record<string, number> = {};
  const fault = (what: string, table: string, row: string, detail: string) => faults.push({ what, table, row, detail });
  const kept = new Map<string, string>();
  const skipped: Skipped[] = [];
  const changed = new Map<string, TrailRow>();
  const takenOut = new Map<string, string>();
  let before = TRAIL_START;
  let n = 0;
  // Row by row, here and below: a trail of twenty years is never in memory whole.
  for await (const row of tx.selectFrom('trail').selectAll().orderBy('n').stream()) {
    n += 1;
    if (row.n !== n) fault('trail-gap', 'trail', String(row.n), `expected ${n}`);
    n = row.n;
    if (row.before !== before) fault('trail-broken', 'trail', String(row.n), row.operation);
    else if (trailHash(row) !== row.hash) changed.set(String(row.n), row);
    before = row.hash;
    for (const change of changesOf(row.changes)) {
      if (row.operation === RESTORED && change.t === 'number_series') skipped.push(skippedBy(change));
      if (change.t === 'trail') takenOut.set(change.id, change.d ?? '');
      else if (change.d === null) kept.delete(`${change.t}/${change.id}`);
      else kept.set(`${change.t}/${change.id}`, change.d);
    }
  }
  checked.trail = n;
  // A row that lost its values stands by the digest that the row noted that took them out.
  for (const [id, row] of changed)
    if (takenOut.get(id) !== digestOf({ ...row })) fault('trail-broken', 'trail', id, row.operation);
  checked.trail_taken_out = changed.size;
  for (const table of TABLES) {
    let count = 0;
    for await (const each of tx
      .selectFrom(table as 'person')
      .selectAll()
      .stream()) {
      count += 1;
      const row: Readonly<Record<string, unknown>> = { ...each };
      const id = String(row[keyOf(table)]);
      const digest = kept.get(`${table}/${id}`);
      kept.delete(`${table}/${id}`);
      if (digest === undefined) fault('row-unknown', table, id, 'not in the trail');
      else if (digest !== digestOf(row)) fault('row-changed', table, id, 'not as the trail noted it');
    }
    checked[table] = count;
  }
  for (const key of kept.keys()) {
    const [table = '', id = ''] = key.split('/');
    fault('row-missing', table, id, 'in the trail, and gone');
  }
  await papers(tx, fault, skipped);
  await balances(tx, fault);
  checked.order_balance = await orderBalances(tx, fault);
  checked.to_send = await papersToSend(tx, fault);
  return { sound: faults.length === 0, checked, faults };
}

/** The changes that a trail row notes; none where its text can no longer be read, which its hash tells already. */
function changesOf(text: string): Change[] {
  try {
    return [...(JSON.parse(text) as Change[])];
  } catch {
    return [];
  }
}

/** Numbers that were printed and lost with what a copy did not hold: lifted over when it was brought back. */
interface Skipped {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
}

const skippedBy = ({ id, was, now }: Change): Skipped => ({
  kind: id,
  from: Number(was?.next),
  to: Number(now?.next) - 1,
});

/** How far the numbers after `last` were lifted over; they stand in the order of the trail. */
const liftedFrom = (last: number, kind: string, skipped: readonly Skipped[]): number =>
  skipped.reduce((at, each) => (each.kind === kind && each.from === at + 1 ? each.to : at), last);

async function papers(tx: Tx, fault: Say, skipped: readonly Skipped[]): Promise<void> {
  const numbers = new Map<string, number>();
  for await (const paper of tx
    .selectFrom('paper')
    .selectAll()
    .orderBy('kind')
    .orderBy('number')
    .orderBy('version')
    .stream()) {
    const last = numbers.get(paper.kind);
    if (last !== undefined && paper.number > liftedFrom(last, paper.kind, skipped) + 1)
      fault('number-gap', 'paper', paper.id, `${paper.kind} ${last} is followed by ${paper.number}`);
    numbers.set(paper.kind, paper.number);
    if (paper.kind === 'receipt') continue;
    try {
      addAgain(paper, fault);
    } catch (error) {
      // A paper that can no longer be read must not hide what else is wrong.
      fault('paper-unreadable', 'paper', paper.id, error instanceof Error ? error.message : String(error));
    }
  }
}

/** Adds one paper again from what is stored with it. Throws where that cannot be read. */
function addAgain(paper: PaperRow, fault: Say): void {
  const sheet = JSON.parse(paper.sheet) as KeptSheet & KeptCredit;
  const totals =
    paper.kind === 'credit-note'
      ? reckonCredit(sheet.lines, sheet.rules, sheet.exempt, sheet.all)
      : reckonSheet(sheet.sheet, sheet.rules);
  const printed = (JSON.parse(paper.document) as { sums: { net: number; tax: number; total: number } }).sums;
  for (const [name, stored, shown, again] of [
    ['net', paper.net, printed.net, totals.net],
    ['tax', paper.tax, printed.tax, totals.tax],
    ['gross', paper.gross, printed.total, totals.gross],
  ] as const) {
    if (stored !== again || shown !== again)
      fault('paper-sum', 'paper', paper.id, `${name}: stored ${stored}, printed ${shown}, added again ${again}`);
  }
}

async function balances(tx: Tx, fault: Say): Promise<void> {
  const moves = await tx
    .selectFrom('part_move')
    .select([
      'part_id',
      (on) => on.fn.sum<number>('quantity').as('quantity'),
      (on) => on.fn.sum<number>('value').as('value'),
    ])
    .groupBy('part_id')
    .execute();
  const byPart = new Map(moves.map((row) => [row.part_id, row]));
  for (const part of await tx.selectFrom('part').selectAll().execute()) {
    const sum = byPart.get(part.id);
    if (part.on_hand !== (sum?.quantity ?? 0) || part.value !== (sum?.value ?? 0))
      fault(
        'stock-balance',
        'part',
        part.id,
        `${part.number}: on hand ${part.on_hand} worth ${part.value}, moves add to ${sum?.quantity ?? 0} worth ${sum?.value ?? 0}`,
      );
  }
  const posted = await tx
    .selectFrom('posting')
    .select(['source', (on) => on.fn.sum<number>('amount').as('sum')])
    .groupBy('source')
    .execute();
  for (const row of posted) if (row.sum !== 0) fault('postings-off', 'posting', row.source, `off by ${row.sum}`);
}
