import { type CreditedLine, reckonCredit } from '../../core/money/credit.ts';
import { creditRows } from '../../core/money/credit-rows.ts';
import type { MoneyRules, SheetTotals } from '../../core/money/line.ts';
import type { PaperJob } from '../../core/paper/document.ts';
import type { Context } from '../context.ts';
import { notFound } from '../refusal.ts';
import type { PaperRow } from '../tables.ts';
import type { KeptSheet } from './issue.ts';
import type { Loaded } from './load.ts';
import { letterOf } from './reckon.ts';

/** What a credit note was reckoned from, kept with it. */
export interface KeptCredit {
  readonly credited: readonly { readonly lineId: string; readonly quantity: number }[];
  readonly lines: readonly CreditedLine[];
  readonly rules: MoneyRules;
  readonly exempt: boolean;
  /** `lines` are all that the invoice bills; notes from before that have what was credited alone. */
  readonly all?: boolean;
}

export interface Billed {
  readonly invoice: PaperRow;
  readonly kept: KeptSheet;
  /** Everything that the invoice bills, with what earlier notes took back of it. */
  readonly rows: readonly Omit<CreditedLine, 'creditNow'>[];
}

/** An invoice and what is left of it to credit. Throws when there is no such invoice. */
export async function billedOf(context: Context, invoicePaperId: string): Promise<Billed> {
  const invoice = await context.tx
    .selectFrom('paper')
    .selectAll()
    .where('id', '=', invoicePaperId)
    .where('kind', '=', 'invoice')
    .executeTakeFirst();
  if (!invoice) throw notFound('invoice', invoicePaperId);
  const kept = JSON.parse(invoice.sheet) as KeptSheet;
  const notes = await context.tx.selectFrom('paper').select('sheet').where('corrects', '=', invoicePaperId).execute();
  const before = new Map<string, number>();
  for (const { sheet } of notes)
    for (const { lineId, quantity } of (JSON.parse(sheet) as KeptCredit).credited)
      before.set(lineId, (before.get(lineId) ?? 0) + quantity);
  const rows = creditRows(kept.sheet, kept.rules).map((row) => ({ ...row, creditedBefore: before.get(row.id) ?? 0 }));
  return { invoice, kept, rows };
}

/** What a note over these quantities, by row, comes to; and what it was reckoned from. */
export function creditNow({ kept, rows }: Billed, now: ReadonlyMap<string, number>) {
  const lines = rows.map((row) => ({ ...row, creditNow: now.get(row.id) ?? 0 }));
  const credited = lines.filter((line) => line.creditNow > 0);
  const { rules } = kept;
  const { exempt } = kept.sheet;
  const from: KeptCredit = {
    credited: credited.map(({ id, creditNow: quantity }) => ({ lineId: id, quantity })),
    ...{ lines, rules, exempt, all: true },
  };
  return { credited, totals: reckonCredit(lines, rules, exempt, true), from };
}

/** The jobs of a credit note: those of the invoice of which something is credited, in their order. */
export function creditedJobs(loaded: Loaded, credited: readonly CreditedLine[], totals: SheetTotals): PaperJob[] {
  const amounts = new Map(totals.lines.map((line) => [line.lineId, line.amount]));
  const jobIds = [...new Set(credited.flatMap(({ job }) => job ?? []))];
  return jobIds.map((jobId) => {
    const job = loaded.jobs.find((one) => one.id === jobId);
    const ofJob = credited.filter((one) => one.job === jobId);
    const lines = ofJob.flatMap((one) => {
      const line = loaded.lines.find(({ id }) => id === one.id);
      return line === undefined ? [] : [{ line, one }];
    });
    return {
      letter: letterOf(job?.place ?? 0),
      title: job?.title ?? '',
      amount: ofJob.reduce((sum, { id }) => sum + (amounts.get(id) ?? 0), 0),
      fixedPrice: false,
      given: false,
      note: '',
      lines: lines.map(({ line, one }) => ({
        kind: line.kind,
        words: line.words,
        partNumber: line.part_number,
        condition: line.condition ?? ('' as const),
        quantity: one.creditNow,
        unit: line.unit,
        unitPrice: line.unit_price,
        amount: amounts.get(one.id) ?? 0,
        discount: 0,
        given: false,
        estimated: false,
        note: '',
      })),
    };
  });
}
