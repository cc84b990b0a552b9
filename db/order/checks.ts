import type { z } from 'zod';
import type { checkDone, checkItem } from '../../core/contract/check.ts';
import type { Context } from '../context.ts';

type CheckItem = z.output<typeof checkItem>;
export type CheckDone = z.output<typeof checkDone>;

/** What check_done keeps: the list as it then was, with what was seen at each item. */
export interface KeptCheck {
  readonly title: string;
  readonly kind: 'walk-round' | 'final';
  readonly answers: readonly (CheckItem &
    Pick<CheckDone['answers'][number], 'seen' | 'said' | 'value' | 'findingId'>)[];
}

/** Lists gone through on an order, oldest first, with who did. */
export async function checksOf(context: Context, orderId: string): Promise<CheckDone[]> {
  const rows = await context.tx
    .selectFrom('check_done')
    .innerJoin('person', 'person.id', 'check_done.person_id')
    .select(['check_done.id', 'check_done.answers', 'check_done.at', 'person.name'])
    .where('work_order_id', '=', orderId)
    .orderBy('check_done.at')
    .orderBy('check_done.id')
    .execute();
  return rows.map(({ id, answers, at, name }) => {
    const kept = JSON.parse(answers) as KeptCheck;
    return { id, title: kept.title, kind: kept.kind, at, by: name, answers: [...kept.answers] };
  });
}
