import type { ShopError } from '../core/contract/errors.ts';
import { type Holder, ShopFileError, ShopHeld } from '../db/file/errors.ts';

/** An error of the shop as sentences for whoever sits at the command line. */
export function sayError(error: ShopError): string {
  switch (error.code) {
    case 'bad-input':
      return `That input does not fit: ${error.fields.map((f) => `${f.path || 'the whole'}: ${f.problem}${figures(f.with)}`).join('; ')}.`;
    case 'not-found':
      return `There is no ${error.what} with the id ${error.id}.`;
    case 'changed-meanwhile':
      return `Somebody changed this ${error.what} meanwhile (it is at revision ${error.revision} now). Nothing was written; both values are in the answer.`;
    case 'held':
      return `Held: ${error.reasons.map((r) => `${r.what}${figures(r.with)}`).join('; ')}.`;
    case 'not-allowed':
      return `Not allowed: ${error.why}${figures(error.with)}.`;
    case 'period-locked':
      return `The books are closed up to ${error.lockedTo}. Nothing was written.`;
    case 'already-set-up':
      return 'This shop is set up already.';
    case 'not-set-up':
      return 'This shop is not set up yet: call shop.setUp first.';
    case 'disk-full':
      return 'The disk is full. Nothing was written: make room, then try again.';
    case 'read-only':
      return "The shop's folder cannot be written to. Nothing was written.";
    case 'damaged':
      return `The shop's file is damaged: ${error.detail}. Nothing was written; restore the last good copy.`;
    case 'unknown-operation':
      return `There is no operation ${error.operation}. "contract" lists them all.`;
    case 'unknown-fault':
      return `Something went wrong that nobody foresaw. Nothing was written. It is noted under ${error.id}.`;
  }
}

function figures(values: Readonly<Record<string, string | number>> | undefined): string {
  const all = Object.entries(values ?? {}).map(([name, value]) => `${name} ${value}`);
  return all.length === 0 ? '' : ` (${all.join(', ')})`;
}

/** Who has the shop. */
export function sayHolder(holder: Holder | null, folder: string): string {
  if (holder === null)
    return `The shop in ${folder} is held by a process that is just starting: try again in a moment.`;
  const since = new Date(holder.since).toISOString().slice(0, 16).replace('T', ' ');
  return `The shop in ${folder} is held by process ${holder.pid} on ${holder.host}, since ${since} UTC.`;
}

/** Why the shop could not be opened. */
export function sayFault(fault: unknown, folder: string): string {
  if (fault instanceof ShopHeld) return sayHolder(fault.holder, folder);
  if (!(fault instanceof ShopFileError)) return fault instanceof Error ? fault.message : String(fault);
  switch (fault.code) {
    case 'disk-full':
      return 'The disk is full: make room, then try again.';
    case 'read-only':
      return `The shop's folder ${folder} cannot be written to.`;
    case 'damaged':
      return `The shop's file in ${folder} is damaged (${fault.message}). It was left as it is; "restore" puts the last good copy in place.`;
    case 'newer':
      return `The shop in ${folder} was made by a later version of Crownwheel. It was left as it is; install that version.`;
    case 'held':
      return `The shop in ${folder} is in use (${fault.message}).`;
    case 'missing':
      return `There is nothing to read: ${fault.message}.`;
    case 'still-open':
      return `Something still has the shop's file open: ${fault.message}.`;
  }
}

export const HELP = `Crownwheel, the shop from the command line.

  npm run shop -- call OPERATION JSON      call one operation
      --as NAME        who calls, by name or id
      --at INSTANT     epoch milliseconds, in a practice shop only
      --request ID     UUIDv7: the same request twice is applied once
      OPERATION JSON may be "-" to read the JSON from standard input
  npm run shop -- call --batch FILE.jsonl  one call a line: {operation, input, as, at, request}
      --stop           stop at the first refusal
  npm run shop -- contract                 every operation as JSON Schema
  npm run shop -- verify [--as NAME]       walk the trail and add everything up again
  npm run shop -- backup [TO]              a checked copy into the shop's backups, or into the folder TO with its papers
  npm run shop -- restore FROM             put a copy in place; the shop as it was is kept beside it

Everywhere:
  --shop FOLDER    the shop's folder; else CROWNWHEEL_SHOP, else the usual place
  --practice       with shop.setUp: a practice shop, for learning and for scripts
  --help           this text

The code of the person comes from SHOP_CODE or from standard input, never from the command line: one code, or for
several people one line each, NAME=CODE. Where a window holds the shop, the call is passed on to it.
Answers are JSON, one line each, on standard output; sentences are on standard error.
Exit code 0: done. 1: the shop said no. 2: the command itself was wrong or the shop could not be opened.
`;
