import { answeredWords, type BestHours, bestHours, type Try } from '../core/customer/answers.ts';
import { instantToWall } from '../core/time/instant.ts';
import type { Context } from './context.ts';
import { settingsOf } from './people.ts';

const YEAR_MS = 365 * 86_400_000;

interface DatedTry extends Try {
  readonly at: number;
}

/** When one customer was tried and when they answered, oldest first, with the best hours where they can be told. */
export interface Answers {
  readonly tries: readonly DatedTry[];
  readonly best: BestHours | null;
  readonly bestPhone: BestHours | null;
}

interface Heard {
  readonly who: string;
  readonly at: number;
  readonly way: 'message' | 'phone';
  /** them: an answer; us: something that asked for one; nobody: a call that reached nobody. */
  readonly from: 'them' | 'us' | 'nobody';
}

const minuteOf = (at: number, zone: string): number => {
  const [hours = '0', minutes = '0'] = instantToWall(at, zone).time.split(':');
  return Number(hours) * 60 + Number(minutes);
};

/**
 * Of each of these customers (entries joined into them with their own) when they were tried and when they answered, the
 * last twelve months: calls, messages that asked something, what was said yes or no to, reminders. What was taken out on
 * their wish is not counted.
 */
export async function answersOf(context: Context, customerIds: readonly string[]): Promise<Map<string, Answers>> {
  const { tx, now } = context;
  const { zone } = settingsOf(context);
  if (customerIds.length === 0) return new Map();
  const people = await tx
    .selectFrom('customer')
    .select(['id', 'joined_into', 'answers_from'])
    .where((on) => on.or([on('id', 'in', customerIds), on('joined_into', 'in', customerIds)]))
    .execute();
  const standing = new Map(people.map((row) => [row.id, row.joined_into ?? row.id]));
  const from = new Map(people.map((row) => [row.id, row.answers_from ?? 0]));
  const all = await heardOf(context, [...standing.keys()], now - YEAR_MS);
  const heard = all.filter((one) => one.at > (from.get(one.who) ?? 0));
  const byCustomer = Map.groupBy(heard, (one) => standing.get(one.who) ?? one.who);
  return new Map(
    customerIds.map((id) => {
      const mine = byCustomer.get(id) ?? [];
      const calls = mine
        .filter((one) => one.way === 'phone')
        .map((one) => ({ at: one.at, way: 'phone' as const, answered: one.from === 'them' }));
      const words = mine
        .filter((one) => one.way === 'message')
        .map((one) => ({ at: one.at, from: one.from === 'them' ? ('them' as const) : ('us' as const) }));
      const tries = [...calls, ...answeredWords(words, now).map((one) => ({ ...one, way: 'message' as const }))]
        .map((one) => ({ ...one, minute: minuteOf(one.at, zone) }))
        .sort((a, b) => a.at - b.at);
      const phone = tries.filter((one) => one.way === 'phone');
      return [id, { tries, best: bestHours(tries), bestPhone: bestHours(phone) }];
    }),
  );
}

async function heardOf({ tx }: Context, ids: readonly string[], since: number): Promise<Heard[]> {
  const messages = await tx
    .selectFrom('message')
    .select(['customer_id as who', 'at', 'way', 'direction', 'reached', 'about'])
    .where('customer_id', 'in', ids)
    .where('at', '>=', since)
    .where('way', 'in', ['phone', 'message', 'mail'])
    .execute();
  const tries = await tx
    .selectFrom('work_order')
    .innerJoin('contact_try', 'contact_try.work_order_id', 'work_order.id')
    .select(['work_order.customer_id as who', 'contact_try.at', 'contact_try.way'])
    .where('work_order.customer_id', 'in', ids)
    .where('contact_try.at', '>=', since)
    .where('contact_try.way', 'in', ['phone', 'message'])
    .execute();
  const said = await tx
    .selectFrom('work_order')
    .innerJoin('decision', 'decision.work_order_id', 'work_order.id')
    .select(['work_order.customer_id as who', 'decision.at', 'decision.way'])
    .where('work_order.customer_id', 'in', ids)
    .where('decision.at', '>=', since)
    .where('decision.way', 'in', ['phone', 'message'])
    .where('decision.spoken_role', 'in', ['customer', 'named'])
    .execute();
  const reminded = await tx
    .selectFrom('car_owner')
    .innerJoin('reminder', 'reminder.car_id', 'car_owner.car_id')
    .innerJoin('reminder_try', 'reminder_try.reminder_id', 'reminder.id')
    .select(['car_owner.customer_id as who', 'reminder_try.at', 'reminder_try.outcome'])
    .where('car_owner.customer_id', 'in', ids)
    .where('car_owner.to_day', 'is', null)
    .where('reminder_try.at', '>=', since)
    .where('reminder_try.outcome', '<>', 'letter')
    .execute();
  return [
    ...messages.flatMap(({ who, at, way, direction, reached, about }): Heard[] => {
      const answered = direction === 'in' || (way === 'phone' && reached === 1);
      if (way === 'phone') return [{ who, at, way, from: answered ? 'them' : 'nobody' }];
      if (answered) return [{ who, at, way: 'message', from: 'them' }];
      // Only what asks for a word waits for one.
      return about === 'found' ? [{ who, at, way: 'message', from: 'us' }] : [];
    }),
    ...tries.map(
      ({ who, at, way }): Heard => ({
        ...{ who, at },
        ...(way === 'phone' ? { way, from: 'nobody' } : { way: 'message', from: 'us' }),
      }),
    ),
    ...said.map(({ who, at, way }): Heard => ({ who, at, way: way === 'phone' ? 'phone' : 'message', from: 'them' })),
    ...reminded.map(
      ({ who, at, outcome }): Heard => ({
        ...{ who, at, way: 'phone' },
        from: outcome === 'nobody' ? 'nobody' : 'them',
      }),
    ),
  ];
}
