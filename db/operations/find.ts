import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { FEWEST_SIGNS, holds } from '../find-index.ts';
import { foldPhone, foldPlate, foldText } from '../fold.ts';

type Hit = OutputOf<'find.line'>['hits'][number];

/** How well it fits: the whole of it, its beginning, somewhere in it. */
const WHOLE = 0;
const BEGINS = 1;
const HOLDS = 2;
interface Ranked extends Hit {
  readonly rank: number;
}

/** Above every character that a text can hold. */
const ABOVE = '\u{10FFFF}';

const rankOf = (text: string, asked: string) => (text === asked ? WHOLE : text.startsWith(asked) ? BEGINS : HOLDS);

/** Orders and papers of a number; papers only for whoever may read them. */
async function numbered(context: Context, text: string): Promise<Ranked[]> {
  if (!/^\d{1,9}$/.test(text)) return [];
  const number = Number(text);
  const orders = await context.tx
    .selectFrom('work_order')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['work_order.id', 'number', 'car.plate', 'car.words', 'customer.name'])
    .where('number', '=', number)
    .execute();
  const papers =
    context.who?.role === 'mechanic'
      ? []
      : await context.tx
          .selectFrom('paper')
          .innerJoin('customer', 'customer.id', 'paper.customer_id')
          .select(['paper.id', 'paper.kind', 'paper.number', 'customer.name'])
          // By kind as well, since the index begins with it.
          .where('paper.kind', 'in', ['quote', 'invoice', 'credit-note', 'receipt'])
          .where('paper.number', '=', number)
          .orderBy('paper.issued_at', 'desc')
          .limit(8)
          .execute();
  return [
    ...orders.map((row) => ({
      ...{ kind: 'order' as const, id: row.id, by: 'order', rank: WHOLE },
      headline: `${row.number}`,
      detail: [`${row.plate} ${row.words}`.trim(), row.name].join(', '),
    })),
    ...papers.map((row) => ({
      ...{ kind: 'paper' as const, id: row.id, by: row.kind, rank: WHOLE },
      headline: `${row.number}`,
      detail: row.name,
    })),
  ];
}

/** A range of a B-tree: all that begins so. */
const begins = (text: string) => [text, `${text}${ABOVE}`] as const;

/** Cars by any plate they ever wore, and by VIN, of which people remember the end. */
async function cars(context: Context, text: string, most: number): Promise<Ranked[]> {
  const plate = foldPlate(text);
  const vin = text.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const owned = () =>
    context.tx
      .selectFrom('car')
      .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
      .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
      .limit(most);
  const plated = () =>
    owned()
      .innerJoin('car_plate', 'car_plate.car_id', 'car.id')
      .select(['car.id', 'car.words', 'car_plate.plate', 'car_plate.find_plate', 'customer.name']);
  const [from, to] = begins(plate);
  const byPlate = [
    ...(await plated().where('car_plate.find_plate', '>=', from).where('car_plate.find_plate', '<', to).execute()),
    ...(plate.length < FEWEST_SIGNS
      ? []
      : await plated()
          .where(holds('car_plate', ['plate'], plate, most))
          .execute()),
  ];
  const wearing = () => owned().select(['car.id', 'car.words', 'car.plate', 'car.vin', 'customer.name']);
  const byVin =
    vin.length < FEWEST_SIGNS
      ? []
      : [
          ...(await wearing()
            .where(holds('car', ['vin'], `${vin}.`, most))
            .execute()),
          ...(await wearing()
            .where(holds('car', ['vin'], vin, most))
            .execute()),
        ];
  const detail = (...words: (string | null)[]) => words.filter((one) => one !== null && one !== '').join(', ');
  return [
    ...byPlate.map((row) => ({
      ...{ kind: 'car' as const, id: row.id, by: 'plate', rank: rankOf(row.find_plate, plate) },
      headline: row.plate,
      detail: detail(row.words, row.name),
    })),
    ...byVin.map((row) => ({
      ...{ kind: 'car' as const, id: row.id, by: 'VIN' },
      rank: row.vin.endsWith(vin) ? Math.min(BEGINS, rankOf(row.vin, vin)) : rankOf(row.vin, vin),
      headline: row.vin,
      detail: detail(`${row.plate} ${row.words}`.trim(), row.name),
    })),
  ];
}

/** So many of a number's last digits are looked for where its country is written another way. */
const TAIL = 7;

/** The pieces of a phone number to look for: as typed, and without its country and the nought before the town. */
function phonePieces(digits: string): string[] {
  const plain = digits.replace(/^0+/, '');
  if (plain.length < FEWEST_SIGNS) return [];
  return plain.length > TAIL ? [plain, `${plain.slice(-TAIL)}.`] : [plain];
}

/** Customers by name, whole words before pieces of them, and by either phone; one that was joined leads to the other. */
async function customers(context: Context, text: string, most: number): Promise<Ranked[]> {
  const words = foldText(text);
  const digits = foldPhone(text);
  const all = () =>
    context.tx
      .selectFrom('customer')
      .leftJoin('customer as into', 'into.id', 'customer.joined_into')
      .select(['customer.id', 'customer.name', 'customer.phone', 'customer.phone2'])
      .select(['customer.find_name', 'customer.find_phone', 'customer.find_phone2'])
      .select(['into.id as intoId', 'into.name as intoName'])
      .limit(most);
  const [from, to] = begins(words);
  const named = [
    ...(await all().where('customer.find_name', '>=', from).where('customer.find_name', '<', to).execute()),
    // A surname that begins so is as good as a first name, and is asked for by itself: there may be many that hold it.
    ...(words.length < FEWEST_SIGNS - 1
      ? []
      : await all()
          .where(holds('customer', ['name'], ` ${words}`, most))
          .execute()),
    ...(words.length < FEWEST_SIGNS
      ? []
      : await all()
          .where(holds('customer', ['name'], words, most))
          .execute()),
  ];
  const rung = [];
  for (const piece of phonePieces(digits))
    rung.push(
      ...(await all()
        .where(holds('customer', ['phone', 'phone2'], piece, most))
        .execute()),
    );
  const hit = (row: (typeof named)[number], by: string, rank: number): Ranked => ({
    ...{ kind: 'customer', id: row.intoId ?? row.id, headline: row.intoName ?? row.name, by, rank },
    detail:
      row.intoId !== null ? row.name : by === 'phone' && !row.find_phone.includes(digits) ? row.phone2 : row.phone,
  });
  return [
    ...named.map((row) => {
      const rank = rankOf(row.find_name, words);
      return hit(row, 'name', rank === HOLDS && row.find_name.includes(` ${words}`) ? BEGINS : rank);
    }),
    ...rung.map((row) => hit(row, 'phone', Math.min(rankOf(row.find_phone, digits), rankOf(row.find_phone2, digits)))),
  ];
}

/** Parts by number and by words. */
async function parts(context: Context, text: string, most: number): Promise<Ranked[]> {
  const number = foldPlate(text);
  const words = foldText(text);
  const all = () => context.tx.selectFrom('part').select(['id', 'number', 'words', 'find_number', 'bin']).limit(most);
  const rows = [
    ...(number.length < FEWEST_SIGNS
      ? []
      : await all()
          .where(holds('part', ['number'], number, most))
          .execute()),
    ...(words.length < FEWEST_SIGNS
      ? []
      : await all()
          .where(holds('part', ['words'], words, most))
          .execute()),
  ];
  return rows.map((row) => ({
    ...{ kind: 'part', id: row.id, headline: row.number, by: 'number' },
    detail: [row.words, row.bin].filter((one) => one !== '').join(', '),
    rank: number === '' ? HOLDS : rankOf(row.find_number, number),
  }));
}

/**
 * One find line over all kinds: what is the whole of something first, then what begins with it, then what holds it; of
 * equal ones numbers before cars before people before parts. Each says what of it answered.
 */
export const findHandlers: Handlers = {
  'find.line': async ({ text, most }, context) => {
    // Only letters and digits can find anything.
    if (foldPlate(text) === '') return { hits: [] };
    const all = [
      ...(await numbered(context, text.trim())),
      ...(await cars(context, text.trim(), most)),
      ...(await customers(context, text, most)),
      ...(await parts(context, text, most)),
    ].toSorted((a, b) => a.rank - b.rank);
    const seen = new Set<string>();
    return {
      hits: all
        .filter((hit) => !seen.has(hit.id) && seen.add(hit.id))
        .slice(0, most)
        .map(({ rank: _, ...hit }) => hit),
    };
  },
};
