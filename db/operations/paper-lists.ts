import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';

type PaperRow = OutputOf<'paper.list'>['rows'][number];

const like = (text: string) => `%${text.replace(/[%_]/g, '')}%`;

/** Papers with whom and what they are about. */
const papers = (context: Context) =>
  context.tx
    .selectFrom('paper')
    .innerJoin('work_order', 'work_order.id', 'paper.work_order_id')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'paper.customer_id')
    .leftJoin('paper as corrected', 'corrected.id', 'paper.corrects')
    .select(['paper.id', 'paper.kind', 'paper.number', 'paper.version', 'paper.issued_at', 'paper.issued_on'])
    .select(['paper.gross', 'paper.due_on', 'paper.valid_until', 'corrected.number as corrects'])
    .select(['work_order.id as orderId', 'work_order.number as orderNumber', 'car.plate'])
    .select(['customer.id as customerId', 'customer.name', 'customer.tell_by', 'customer.email', 'customer.phone'])
    .select((on) =>
      on
        .selectFrom('paper_sent')
        .select(({ fn }) => fn.max('paper_sent.at').as('at'))
        .whereRef('paper_sent.paper_id', '=', 'paper.id')
        .as('sentAt'),
    );

/** What lay longer than this is not sent any more. */
const UNSENT_DAYS = 400;
const DAY = 86_400_000;

/** How many papers wait to be sent: counted in an index that holds nothing else. */
export async function countUnsent({ tx, now }: Context): Promise<number> {
  const row = await tx
    .selectFrom('to_send')
    .select(({ fn }) => fn.countAll<number>().as('n'))
    .where('issued_at', '>', now - UNSENT_DAYS * DAY)
    .executeTakeFirstOrThrow();
  return Number(row.n);
}

type Found = Awaited<ReturnType<ReturnType<typeof papers>['execute']>>[number];

const shown = (context: Context, row: Found): PaperRow => ({
  id: row.id,
  kind: row.kind,
  number: row.number,
  version: row.version,
  orderId: row.orderId,
  orderNumber: row.orderNumber,
  customerId: row.customerId,
  customer: row.name,
  plate: row.plate,
  issuedAt: row.issued_at,
  issuedOn: row.issued_on,
  gross: context.seesPrices ? row.gross : null,
  dueOn: row.due_on,
  validUntil: row.valid_until,
  corrects: row.corrects,
  sentAt: row.sentAt,
});

export const paperListHandlers: Handlers = {
  'paper.list': async ({ kind, text, before, most }, context) => {
    let query = papers(context).orderBy('paper.issued_at', 'desc').orderBy('paper.id', 'desc').limit(most);
    if (kind !== null) query = query.where('paper.kind', '=', kind);
    const last =
      before === null
        ? undefined
        : await context.tx.selectFrom('paper').select(['id', 'issued_at']).where('id', '=', before).executeTakeFirst();
    if (last)
      query = query.where((on) =>
        on.or([
          on('paper.issued_at', '<', last.issued_at),
          on.and([on('paper.issued_at', '=', last.issued_at), on('paper.id', '<', last.id)]),
        ]),
      );
    if (text !== '')
      query = query.where((on) =>
        on.or([
          on('customer.find_name', 'like', like(foldText(text))),
          ...(foldPlate(text) === '' ? [] : [on('car.find_plate', 'like', like(foldPlate(text)))]),
          ...(/^\d{1,9}$/.test(text)
            ? [on('paper.number', '=', Number(text)), on('work_order.number', '=', Number(text))]
            : []),
        ]),
      );
    return { rows: (await query.execute()).map((row) => shown(context, row)) };
  },
  'paper.toSend': async ({ most }, context) => {
    const rows = await papers(context)
      .innerJoin('to_send', 'to_send.paper_id', 'paper.id')
      .where('to_send.issued_at', '>', context.now - UNSENT_DAYS * DAY)
      .orderBy('to_send.issued_at')
      .orderBy('paper.id')
      .limit(most)
      .execute();
    return {
      rows: rows.map((row) => ({
        ...shown(context, row),
        tellBy: row.tell_by,
        email: row.email,
        phone: row.phone,
      })),
    };
  },
};
