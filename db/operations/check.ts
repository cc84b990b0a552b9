import type { z } from 'zod';
import type { checkAnswer, checkItem } from '../../core/contract/check.ts';
import type { Context, Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { checksOf, type KeptCheck } from '../order/checks.ts';
import { heldForDoers } from '../order/doers.ts';
import { addFinding } from '../order/findings.ts';
import { loadOrder } from '../order/load.ts';
import { signedIn } from '../people.ts';
import { badInput, notFound } from '../refusal.ts';
import type { CheckListRow } from '../tables.ts';
import { given, openSheet } from './on-the-sheet.ts';

type Item = z.output<typeof checkItem>;
type Answer = z.output<typeof checkAnswer>;

const fieldsOf = (row: CheckListRow) => ({
  title: row.title,
  kind: row.kind,
  items: JSON.parse(row.items) as Item[],
  takenOut: row.taken_out === 1,
});

const columns = ({ title, kind, items, takenOut }: ReturnType<typeof fieldsOf>) => ({
  title,
  kind,
  items: JSON.stringify(items),
  taken_out: takenOut ? (1 as const) : (0 as const),
});

/** Writes a list down; its id. */
export async function addCheckList(context: Context, fields: ReturnType<typeof fieldsOf>): Promise<string> {
  const id = newId();
  await context.write.insert('check_list', { id, revision: 1, ...columns(fields) });
  return id;
}

/** Each answer with its item, in the order of the list. Throws bad-input unless every item is answered once. */
function answered(items: readonly Item[], answers: readonly Answer[]) {
  for (const [at, { item, value }] of answers.entries()) {
    const asked = items[item];
    if (asked === undefined) throw badInput(`answers.${at}.item`, 'out-of-range');
    if (answers.findIndex((one) => one.item === item) < at) throw badInput(`answers.${at}.item`, 'same-row-twice');
    if (value !== null && asked.measure === null) throw badInput(`answers.${at}.value`, 'not-measured-here');
  }
  if (answers.length < items.length) throw badInput('answers', 'row-missing');
  return items.flatMap((item, at) => {
    const answer = answers.find((one) => one.item === at);
    return answer ? [{ item, answer }] : [];
  });
}

/** What an answer finds, or null where all is well or nobody looked. */
function finding({ item, answer }: { item: Item; answer: Answer }) {
  const { seen, value, words } = answer;
  if (seen === 'fine' || seen === 'not-seen') return null;
  return {
    text: words === '' ? item.words : `${item.words}: ${words}`,
    urgency: seen,
    place: item.place,
    part: '',
    measured: item.measure === null || value === null ? null : { ...item.measure, value },
    mend: null,
  };
}

export const checkHandlers: Handlers = {
  'checkList.add': async (fields, context) => ({ id: await addCheckList(context, fields), revision: 1 }),
  'checkList.change': async ({ id, revision, change }, context) => {
    const row = await context.tx.selectFrom('check_list').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('check_list', id);
    const fields = Object.assign(fieldsOf(row), given(change));
    return { id, revision: await context.write.edit('check_list', id, revision, columns(fields), change, fieldsOf) };
  },
  'checkList.list': async (_input, context) => {
    const rows = await context.tx.selectFrom('check_list').selectAll().orderBy('title').orderBy('id').execute();
    return { rows: rows.map((row) => ({ id: row.id, revision: row.revision, ...fieldsOf(row) })) };
  },
  'check.record': async ({ orderId, checkListId, answers }, context) => {
    await openSheet(context, orderId);
    const row = await context.tx.selectFrom('check_list').selectAll().where('id', '=', checkListId).executeTakeFirst();
    if (!row) throw notFound('check_list', checkListId);
    const list = fieldsOf(row);
    if (list.kind === 'final') heldForDoers(await loadOrder(context, orderId), null, signedIn(context).id);
    const findings: { item: number; findingId: string }[] = [];
    const kept: KeptCheck['answers'][number][] = [];
    for (const each of answered(list.items, answers)) {
      const { item, seen, words, value, findingId: ownId } = each.answer;
      const found = finding(each);
      const findingId = found === null ? null : await addFinding(context, orderId, ownId, found);
      if (findingId !== null) findings.push({ item, findingId });
      kept.push({ ...each.item, seen, said: words, value, findingId });
    }
    const id = newId();
    const whole: KeptCheck = { title: list.title, kind: list.kind, answers: kept };
    await context.write.insert('check_done', {
      id,
      check_list_id: checkListId,
      work_order_id: orderId,
      answers: JSON.stringify(whole),
      person_id: signedIn(context).id,
      at: context.now,
    });
    return { id, findings };
  },
  'check.list': async ({ orderId }, context) => ({ rows: await checksOf(context, orderId) }),
};
