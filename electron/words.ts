import type { ShopError } from '../core/contract/errors.ts';
import type { ShopCopy } from '../db/file/backup.ts';
import { readCopyName } from '../db/file/copy-name.ts';
import { type Damage, type Holder, ShopDamaged, ShopFileError, ShopHeld } from '../db/file/errors.ts';
import type { ShopWarning } from '../db/warnings.ts';
import type { BroughtBack } from './copies.ts';
import { sayHeld } from './held-words.ts';
import { sayNotAllowed } from './not-allowed-words.ts';
import { sayProblem } from './problem-words.ts';

/** An error of the shop as sentences for whoever sits at the command line. */
export function sayError(error: ShopError): string {
  switch (error.code) {
    case 'bad-input':
      return `That input does not fit: ${error.fields.map((f) => `${f.path || 'it'} ${sayProblem(f.problem, f.with)}`).join('; ')}.`;
    case 'not-found':
      return `There is no ${error.what} with the id ${error.id}.`;
    case 'changed-meanwhile':
      return `Somebody changed this ${error.what} meanwhile (it is at revision ${error.revision} now). Nothing was written; both values are in the answer.`;
    case 'held':
      return `Held: ${error.reasons.map(sayHeld).join('; ')}.`;
    case 'not-allowed':
      return sayNotAllowed(error.why, error.with);
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

/** Who has the shop. */
export function sayHolder(holder: Holder | null, folder: string): string {
  if (holder === null)
    return `The shop in ${folder} is held by a process that is just starting: try again in a moment.`;
  const since = new Date(holder.since).toISOString().slice(0, 16).replace('T', ' ');
  return `The shop in ${folder} is held by process ${holder.pid} on ${holder.host}, since ${since} UTC.`;
}

const DAMAGE: Readonly<Record<Damage, string>> = {
  empty: 'there is nothing in it',
  'not-a-database': 'it does not begin as a database does',
  truncated: 'its end is missing',
  'damaged-page': 'part of it cannot be read',
  'not-a-shop': 'it is the database of something else',
  'broken-references': 'rows in it point at rows that are not there',
  changed: 'it is not what it was when it was made',
};

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
      return fault instanceof ShopDamaged
        ? `The shop's file in ${folder} is damaged: ${DAMAGE[fault.found]} (${fault.detail}). It was left as it is.`
        : `The shop's file in ${folder} is damaged. It was left as it is.`;
    case 'newer':
      return `The shop in ${folder} was made by a later version of Crownwheel. It was left as it is; install that version.`;
    case 'held':
      return `The shop in ${folder} is in use (${fault.message}).`;
    case 'missing':
      return `The shop's file or a copy is not where it should be: ${fault.message}.`;
    case 'still-open':
      return `Something still has the shop's file open: ${fault.message}.`;
  }
}

/** Something to know about where the shop is kept. */
export function sayWarning({ what, with: figures }: ShopWarning): string {
  switch (what) {
    case 'synced-folder':
      return `The shop stands in a folder that is synchronised (${figures.sign}). Two machines writing there would damage it: keep it in a folder of this machine and take copies away instead.`;
    case 'network-folder':
      return `The shop stands on a network drive (${figures.sign}). A database is not safe there: keep it on a disk of this machine.`;
    case 'commits-lost':
      return `Something is lost: ${figures.lost} changes were answered as saved and are not in the file, which ends at number ${figures.last} of ${figures.noted} in the trail. Its log may have been removed or damaged. Compare with the papers and with the newest copy in backups.`;
    case 'other-file':
      return `The shop's file is not the one that was here last, or was altered behind the program's back (number ${figures.noted} of the trail differs). "verify" names what.`;
    case 'no-ballast':
      return 'The disk is all but full: make room soon.';
  }
}

/** The copies that can be brought back. */
export function sayCopies(copies: readonly ShopCopy[]): string {
  if (copies.length === 0) return 'There is no copy in its backups folder: look for one on a stick or another disk.';
  const shown = copies.slice(0, 10).map((copy) => `  ${sayCopy(copy)}\n    ${copy.path}`);
  return [
    'Copies that can be brought back with "restore FILE --last-invoice NUMBER", newest first:',
    ...shown,
    ...(copies.length > shown.length ? [`  and ${copies.length - shown.length} older ones`] : []),
  ].join('\n');
}

/** What to say where nobody gave the last number on paper. */
export const ASK_FOR_LAST_INVOICE =
  'If a later invoice number stands on paper, bring the copy back again with --last-invoice and that number.';

/** When a copy was made and how far it goes. */
export function sayCopy({ name, trail, bytes }: ShopCopy): string {
  const named = readCopyName(name);
  const when = named === null ? name : `${named.day} ${named.minute.replace('.', ':')}`;
  const size = bytes < 1_000_000 ? `${Math.ceil(bytes / 1_000)} kB` : `${Math.ceil(bytes / 1_000_000)} MB`;
  return `${when}${trail === null ? '' : `, up to number ${trail} in the trail`}, ${size}`;
}

/** What bringing back a copy did, and which invoice numbers come next. */
export function sayBroughtBack({ kept, numbers, unnoted }: BroughtBack, folder: string): string {
  const said = [`The copy is in place in ${folder}.`];
  if (kept !== null) said.push(`The shop as it was is kept in ${kept}.`);
  if (unnoted !== undefined)
    said.push(
      'But its trail does not say that it was brought back, and the invoice numbers go on where the copy ends, so that a number that stands on paper may come again: issue nothing, and bring the copy back once more when this is mended.',
      sayFault(unnoted, folder),
    );
  if (numbers !== null) {
    const { copied, next } = numbers;
    said.push(
      `${copied === null ? 'The copy holds no invoice' : `The copy's last invoice is ${copied}`}; the next is ${next}.`,
    );
    if (copied !== null && next > copied + 1)
      said.push(
        `${copied + 1 === next - 1 ? `${next - 1} was` : `${copied + 1} to ${next - 1} were`} printed after the copy: key the work in again from paper.`,
      );
  }
  return said.join(' ');
}
