import { sql } from 'kysely';
import type { ParsedInputOf } from '../../core/contract/index.ts';
import { wallToInstant } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import { above, beginning, FEWEST_SIGNS, holdingAll, inPieces, matching } from '../find-index.ts';
import { foldPlate, foldText } from '../fold.ts';
import { settingsOf } from '../people.ts';
import { oldUnitsOut } from './old-units.ts';

export type OrderFilter = ParsedInputOf<'order.weeks'>['filter'];

// Values that an index holds only rows of are written out: bound, they would not be seen to fit it.

/** Orders that were invoiced and whose papers and payments do not come to nought. */
const unpaid = ({ tx }: Context) =>
  tx
    .selectFrom('order_balance')
    .select('work_order_id')
    .where((on) => on('owed', '<>', on.lit(0)))
    .where('invoiced', '=', 1);

/** Orders with a job that somebody said no to. */
const refused = ({ tx }: Context) =>
  tx
    .selectFrom('decision_job')
    .innerJoin('decision', 'decision.id', 'decision_job.decision_id')
    .select('decision.work_order_id')
    .where(sql<boolean>`decision_job.answer = 'no'`);

/** Orders with a job that came back from an earlier one. */
const cameBack = ({ tx }: Context) =>
  tx
    .selectFrom('job')
    .select('work_order_id')
    .where('first_job_id', 'is not', null)
    .where('taken_out', '=', 0)
    .where('moved_to', 'is', null);

/** Orders with a sample that has no result yet, sent or still to be sent. */
const atTheLab = ({ tx }: Context) =>
  tx.selectFrom('fluid_sample').select('work_order_id').where('result_on', 'is', null);

/** Rows of the index that hold a text; of fewer characters than make a piece, rows that begin with it. */
const namesWith = (text: string) =>
  text.length < FEWEST_SIGNS
    ? beginning('customer', 'find_name', text, above(text), null)
    : holdingAll('customer', matching('customer', ['name'], text));
const platesWith = (text: string) =>
  text.length < FEWEST_SIGNS
    ? beginning('car_plate', 'find_plate', text, above(text), null)
    : holdingAll('car_plate', matching('car_plate', ['plate'], text));

/** Orders of customers of such a name, also of an entry that was joined to one. */
const ofCustomers = (text: string) => sql`
  with named as (select id, joined_into from customer where rowid in (${namesWith(text)}))
  select rowid from work_order where customer_id in (
    select id from named
    union all select joined_into from named
    union all select id from customer where joined_into in (select id from named))`;

/** Orders of cars that wear such a plate or wore it. */
const ofCars = (plate: string) => sql`
  select rowid from work_order where car_id in (select car_id from car_plate where rowid in (${platesWith(plate)}))`;

/** Orders with a job of such a title. */
const ofJobs = (text: string) => sql`
  select rowid from work_order where id in (
    select work_order_id from job where taken_out = 0 and rowid in (${holdingAll('job', matching('job', ['words'], text))}))`;

/** The rows of orders that hold a text: name, plate, what the customer says, title of a job, number. By indexes alone. */
function holdingText(text: string) {
  const words = foldText(text);
  const plate = foldPlate(text);
  return inPieces('work_order', [
    ...(words === '' ? [] : [ofCustomers(words)]),
    ...(plate === '' ? [] : [ofCars(plate)]),
    ...(words.length < FEWEST_SIGNS
      ? []
      : [holdingAll('work_order', matching('work_order', ['words'], words)), ofJobs(words)]),
    ...(/^\d{1,9}$/.test(text) ? [sql`select rowid from work_order where number = ${Number(text)}`] : []),
  ]);
}

/** The orders of a filter: none of its questions looks at every row. A text without letter or digit asks for nothing. */
export async function filteredOrders(context: Context, { which, year, text }: OrderFilter) {
  const { zone } = settingsOf(context);
  let query = context.tx.selectFrom('work_order');
  if (which === 'open') query = query.where('work_order.handed_over_at', 'is', null);
  if (which === 'past') query = query.where('work_order.handed_over_at', 'is not', null);
  if (which === 'unpaid') query = query.where('work_order.id', 'in', unpaid(context));
  if (which === 'refused') query = query.where('work_order.id', 'in', refused(context));
  if (which === 'cameBack') query = query.where('work_order.id', 'in', cameBack(context));
  if (which === 'lab') query = query.where('work_order.id', 'in', atTheLab(context));
  if (which === 'oldUnit') {
    const out = (await oldUnitsOut(context)).map(({ orderId }) => orderId);
    query = query.where('work_order.id', 'in', out.length === 0 ? [''] : [...new Set(out)]);
  }
  if (year !== null)
    query = query
      .where('work_order.opened_at', '>=', wallToInstant(`${year}-01-01T00:00`, zone))
      .where('work_order.opened_at', '<', wallToInstant(`${year + 1}-01-01T00:00`, zone));
  return foldPlate(text) === '' ? query : query.where(holdingText(text));
}
