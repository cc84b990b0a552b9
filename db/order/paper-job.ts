import { money, roundDivide } from '../../core/money/money.ts';
import type { PaperJob, PaperLine } from '../../core/paper/document.ts';
import type { JobRow, LineRow } from '../tables.ts';
import { billOf } from './facts.ts';
import type { Loaded } from './load.ts';
import { letterOf, type Reckoned } from './reckon.ts';

/** A job as a paper prints it, on the sheet or offered under its sum. */
export function paperJob(job: JobRow, loaded: Loaded, reckoned: Reckoned): PaperJob {
  return {
    letter: letterOf(job.place),
    title: job.title,
    amount: reckoned.totals.jobs.get(job.id) ?? reckoned.aside.get(job.id) ?? 0,
    fixedPrice: job.fixed_price !== null,
    given: isFree(job),
    note: [job.note, job.give_why].filter((text) => text !== '').join(' '),
    lines: loaded.lines.filter((line) => line.job_id === job.id).map((line) => paperLine(line, job, loaded, reckoned)),
  };
}

const isFree = (job: JobRow): boolean => job.given === 1 || job.kind !== 'charged';

function paperLine(line: LineRow, job: JobRow, loaded: Loaded, reckoned: Reckoned): PaperLine {
  const given = isFree(job) || line.given === 1;
  const quantity = reckoned.charged(line);
  const amount = reckoned.lineTotals.get(line.id)?.amount ?? 0;
  const full = roundDivide(BigInt(quantity) * BigInt(line.unit_price), 1000n);
  return {
    kind: line.kind,
    words: line.words,
    partNumber: line.part_number,
    condition: line.condition ?? '',
    quantity,
    unit: line.unit,
    unitPrice: line.unit_price,
    amount,
    // What was given, or stands in one price, has no amount that a discount could explain.
    discount: line.discount === null || given || job.fixed_price !== null ? 0 : money(full - amount),
    given,
    estimated: line.kind === 'outside' && line.unit_cost === null && billOf(loaded, line.id) === null,
    note: line.give_why,
  };
}
