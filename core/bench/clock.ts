import { percentX10 } from '../money/margin.ts';
import { type Money, roundDivide } from '../money/money.ts';
import { minutesBetween } from '../time/instant.ts';

/** A stretch of a person's time, instants in epoch milliseconds; `off` is null while it is open or was forgotten. */
export interface ClockEntry {
  readonly personId: string;
  readonly jobId: string | null;
  readonly kind: 'work' | 'break' | 'present';
  readonly on: number;
  readonly off: number | null;
}

/** Minutes of one entry; one without an end counts nothing until it is corrected. */
export function entryMinutes(entry: Pick<ClockEntry, 'on' | 'off'>): number {
  return entry.off === null ? 0 : Math.max(0, minutesBetween(entry.on, entry.off));
}

/** Minutes worked by job: two people at once count twice. Open entries count 0. */
export function manMinutes(entries: readonly ClockEntry[]): ReadonlyMap<string, number> {
  const minutes = new Map<string, number>();
  for (const entry of entries) {
    if (entry.kind !== 'work' || entry.jobId === null) continue;
    minutes.set(entry.jobId, (minutes.get(entry.jobId) ?? 0) + entryMinutes(entry));
  }
  return minutes;
}

/** Minutes in which a job held its bay because somebody worked on it: two people at once count once. */
export function bayMinutes(entries: readonly ClockEntry[]): ReadonlyMap<string, number> {
  const spans = new Map<string, Span[]>();
  for (const { kind, jobId, on, off } of entries) {
    if (kind !== 'work' || jobId === null || off === null || off <= on) continue;
    spans.set(jobId, [...(spans.get(jobId) ?? []), { on, off }]);
  }
  return new Map([...spans].map(([jobId, all]) => [jobId, unionMinutes(all)]));
}

interface Span {
  readonly on: number;
  readonly off: number;
}

function unionMinutes(spans: readonly Span[]): number {
  let minutes = 0;
  let open: Span | null = null;
  for (const span of spans.toSorted((a, b) => a.on - b.on)) {
    if (open !== null && span.on <= open.off) {
      open = { on: open.on, off: Math.max(open.off, span.off) };
      continue;
    }
    if (open !== null) minutes += minutesBetween(open.on, open.off);
    open = span;
  }
  return open === null ? minutes : minutes + minutesBetween(open.on, open.off);
}

/** Minutes as thousandths of an hour, for paper and screen only: pay is worked from minutes. */
export function hoursX1000(minutes: number): number {
  return roundDivide(BigInt(minutes) * 1000n, 60n);
}

/** Minutes and what an hour of them costs in pay, minor units. */
export interface PaidMinutes {
  readonly minutes: number;
  readonly payRate: Money;
}

/** Cost in pay of clocked minutes, rounded once over all of them. */
export function payCost(paid: readonly PaidMinutes[]): Money {
  return roundDivide(
    paid.reduce((all, { minutes, payRate }) => all + BigInt(minutes) * BigInt(payRate), 0n),
    60n,
  );
}

/** What clocked minutes sell for at an hourly rate (minor units): time and materials. */
export function clockedPrice(minutes: number, rate: Money): Money {
  return roundDivide(BigInt(minutes) * BigInt(rate), 60n);
}

/** Book (or billed) hours in thousandths over clocked minutes, percent times ten; null when nothing was clocked. */
export function efficiencyX10(hours: number, clockedMinutes: number): number | null {
  return percentX10(hours * 60, clockedMinutes * 1000);
}
