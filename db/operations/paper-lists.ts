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

/** Issued, and nobody has said that it was sent; of quotes the one that still stands. */
const unsent = (context: Context) =>
  papers(context)
    .where('paper.issued_at', '>', context.now - UNSENT_DAYS * DAY)
    .where((on) =>
      on.not(
        on.exists(on.selectFrom('paper_sent').select('paper_sent.id').whereRef('paper_sent.paper_id', '=', 'paper.id')),
      ),
    )
    .where((on) =>
      on.or([
        on('paper.kind', '<>', 'quote'),
        on.not(
          on.exists(
            on
              .selectFrom('paper as later')
              .select('later.id')
              .whereRef('later.work_order_id', '=', 'paper.work_order_id')
              .where((also) =>
                also.or([
                  also('later.kind', '=', 'invoice'),
                  also.and([also('later.kind', '=', 'quote'), also('later.version', '>', also.ref('paper.version'))]),
                ]),
              ),
          ),
        ),
      ]),
    );

/** How many papers wait to be sent. */
export async function countUnsent(context: Context): Promise<number> {
  const row = await unsent(context)
    .clearSelect()
    .select(({ fn }) => fn.countAll<number>().as('n'))
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
    const rows = await unsent(context).orderBy('paper.issued_at').orderBy('paper.id').limit(most).execute();
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
