import { isOverdue } from '../../core/bench/wrench.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { badInput, notFound } from '../refusal.ts';
import type { WrenchRow } from '../tables.ts';
import { given } from './on-the-sheet.ts';

/** A wrench by its id; one that was taken out stays in the record of what it tightened. Throws not-found. */
export async function wrenchRow(context: Context, id: string): Promise<WrenchRow> {
  const row = await context.tx.selectFrom('wrench').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) throw notFound('wrench', id);
  return row;
}

const fieldsOf = (row: WrenchRow) => ({
  name: row.name,
  least: row.least,
  most: row.most,
  lever: row.lever,
  dueOn: row.due_on,
});

/** A wrench as the contract says it; overdue as of a civil date. */
export const wrenchBrief = (row: WrenchRow, today: string) => {
  const fields = fieldsOf(row);
  return { id: row.id, revision: row.revision, ...fields, overdue: isOverdue(fields, today) };
};

/** Throws bad-input where the span is none, or where another wrench in use goes by the name. */
async function fits(context: Context, id: string | null, fields: ReturnType<typeof fieldsOf>): Promise<void> {
  if (fields.most <= fields.least) throw badInput('most', 'too-little', { least: fields.least + 1 });
  const same = await context.tx
    .selectFrom('wrench')
    .select('id')
    .where('name', '=', fields.name)
    .where('taken_out', '=', 0)
    .execute();
  if (same.some((row) => row.id !== id)) throw badInput('name', 'same-name-twice');
}

const columns = ({ name, least, most, lever, dueOn }: ReturnType<typeof fieldsOf>) => ({
  ...{ name, least, most, lever },
  due_on: dueOn,
});

export const wrenchHandlers: Handlers = {
  'wrench.add': async (fields, context) => {
    await fits(context, null, fields);
    const id = newId();
    await context.write.insert('wrench', { id, revision: 1, ...columns(fields), taken_out: 0 });
    return { id, revision: 1 };
  },
  'wrench.change': async ({ id, revision, change }, context) => {
    const row = await wrenchRow(context, id);
    const { takenOut, ...rest } = change;
    const fields = { ...fieldsOf(row), ...given(rest) };
    await fits(context, id, fields);
    const patch: Partial<WrenchRow> = {
      ...columns(fields),
      ...(takenOut === undefined ? {} : { taken_out: takenOut ? 1 : 0 }),
    };
    return { id, revision: await context.write.edit('wrench', id, revision, patch, change, fieldsOf) };
  },
  'wrench.list': async (_input, context) => {
    const rows = await context.tx.selectFrom('wrench').selectAll().where('taken_out', '=', 0).orderBy('name').execute();
    return { rows: rows.map((row) => wrenchBrief(row, context.today)) };
  },
};
