import type { z } from 'zod';
import type { findingFields } from '../../core/contract/finding.ts';
import type { Context } from '../context.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import type { FindingRow } from '../tables.ts';

export type FindingFields = z.output<typeof findingFields>;

const orNull = (text: string) => (text === '' ? null : text);

export const findingColumns = ({ text, urgency, place, part, measured, mend }: FindingFields) => ({
  text,
  urgency,
  place: orNull(place),
  part: orNull(part),
  measured: measured === null ? null : JSON.stringify(measured),
  mend: mend === null ? null : JSON.stringify(mend),
});

/** A finding as the contract names it. */
export const findingFieldsOf = (row: FindingRow): FindingFields => ({
  text: row.text,
  urgency: row.urgency,
  place: row.place ?? '',
  part: row.part ?? '',
  measured: row.measured === null ? null : (JSON.parse(row.measured) as FindingFields['measured']),
  mend: row.mend === null ? null : (JSON.parse(row.mend) as FindingFields['mend']),
});

/** Throws not-found. */
export async function findingRow(context: Context, id: string): Promise<FindingRow> {
  const finding = await context.tx.selectFrom('finding').selectAll().where('id', '=', id).executeTakeFirst();
  if (!finding) throw notFound('finding', id);
  return finding;
}

/** Writes a finding down under its own id or a new one. Throws bad-input where the id is there already, not-found. */
export async function addFinding(
  context: Context,
  orderId: string,
  ownId: string | null,
  fields: FindingFields,
): Promise<string> {
  if (ownId !== null) {
    const there = await context.tx.selectFrom('finding').select('id').where('id', '=', ownId).executeTakeFirst();
    if (there) throw badInput('id', 'already-here');
  }
  const { mend } = fields;
  if (mend !== null && mend.bookJobId !== null) {
    const job = await context.tx
      .selectFrom('book_job')
      .select('id')
      .where('id', '=', mend.bookJobId)
      .executeTakeFirst();
    if (!job) throw notFound('book_job', mend.bookJobId);
  }
  const id = ownId ?? newId();
  await context.write.insert('finding', {
    id,
    revision: 1,
    work_order_id: orderId,
    ...findingColumns(fields),
    job_id: null,
    person_id: signedIn(context).id,
    at: context.now,
  });
  return id;
}

/** Ties a finding of the same order to the job that mends it. Throws not-found. */
export async function mendedBy(context: Context, orderId: string, findingId: string, jobId: string): Promise<void> {
  const finding = await findingRow(context, findingId);
  if (finding.work_order_id !== orderId) throw notFound('finding', findingId);
  await context.write.update('finding', findingId, { job_id: jobId, revision: finding.revision + 1 });
}
