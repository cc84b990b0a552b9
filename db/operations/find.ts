import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { beginning, FEWEST_SIGNS, holding, holdingNewest, inPieces } from '../find-index.ts';
import { foldPhone, foldPlate, foldText, pieceAround } from '../fold.ts';

type Hit = OutputOf<'find.line'>['hits'][number];

/** How well it fits: the whole of it, its beginning, somewhere in it. */
const WHOLE = 0;
const BEGINS = 1;
const HOLDS = 2;
/** What was said once comes after whatever has the words in its name. */
const SAID_RANK = 3;
interface Ranked extends Hit {
  readonly rank: number;
}

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

/** Cars by any plate they ever wore, and by VIN, of which people remember the end. */
async function cars(context: Context, text: string, most: number): Promise<Ranked[]> {
  const plate = foldPlate(text);
  const vin = text.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const owned = () =>
    context.tx
      .selectFrom('car')
      .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
      .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
      .select(['car.id', 'car.words', 'car.plate', 'car.vin', 'customer.name']);
  const byPlate = await owned()
    .innerJoin('car_plate', 'car_plate.car_id', 'car.id')
    .select(['car_plate.plate as worn', 'car_plate.find_plate'])
    .where(
      inPieces('car_plate', [
        beginning('car_plate', 'find_plate', plate, most),
        ...(plate.length < FEWEST_SIGNS ? [] : [holding('car_plate', ['plate'], plate, most)]),
      ]),
    )
    .execute();
  const vins = (piece: string) =>
    owned()
      .where(inPieces('car', [holding('car', ['vin'], piece, most)]))
      .execute();
  const byVin = vin.length < FEWEST_SIGNS ? [] : await vins(vin);
  // Of very many that hold it, those that end with it are asked for by themselves.
  if (byVin.length === most) byVin.unshift(...(await vins(`${vin}.`)));
  const detail = (...words: (string | null)[]) => words.filter((one) => one !== null && one !== '').join(', ');
  return [
    ...byPlate.map((row) => ({
      ...{ kind: 'car' as const, id: row.id, by: 'plate', rank: rankOf(row.find_plate, plate) },
      headline: row.worn,
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

/** Customers by name, whole words before pieces of them, and by either phone; one that was joined leads to the other. */
async function customers(context: Context, text: string, most: number): Promise<Ranked[]> {
  const words = foldText(text);
  // A number is asked for without the nought before the town; what holds a letter is no number.
  const digits = /\p{L}/u.test(text) ? '' : foldPhone(text).replace(/^0+/, '');
  const among = (pieces: Parameters<typeof inPieces>[1]) =>
    context.tx
      .selectFrom('customer')
      .leftJoin('customer as into', 'into.id', 'customer.joined_into')
      .select(['customer.id', 'customer.name', 'customer.phone', 'customer.phone2'])
      .select(['customer.find_name', 'customer.find_phone', 'customer.find_phone2'])
      .select(['into.id as intoId', 'into.name as intoName'])
      .where(inPieces('customer', pieces))
      .execute();
  const rows = await among([
    beginning('customer', 'find_name', words, most),
    ...(words.length < FEWEST_SIGNS ? [] : [holding('customer', ['name'], words, most)]),
    ...(digits.length < FEWEST_SIGNS ? [] : [holding('customer', ['phone', 'phone2'], digits, most)]),
  ]);
  // Of very many that hold it, a surname that begins so is asked for by itself: it is as good as a first name.
  if (words.length === FEWEST_SIGNS - 1 || rows.length >= most)
    rows.push(...(await among([holding('customer', ['name'], ` ${words}`, most)])));
  // A country that is written, or not: then the end of the number alone.
  if (rows.length === 0 && digits.length > TAIL)
    rows.push(...(await among([holding('customer', ['phone', 'phone2'], `${digits.slice(-TAIL)}.`, most)])));
  return rows.map((row): Ranked => {
    const named = row.find_name.includes(words);
    const surname = row.find_name.includes(` ${words}`);
    const nameRank = surname ? Math.min(BEGINS, rankOf(row.find_name, words)) : rankOf(row.find_name, words);
    const phoneRank = Math.min(rankOf(row.find_phone, digits), rankOf(row.find_phone2, digits));
    const second = !named && !row.find_phone.includes(digits) && row.phone2 !== '';
    return {
      ...{ kind: 'customer', id: row.intoId ?? row.id, headline: row.intoName ?? row.name },
      ...{ by: named ? 'name' : 'phone', rank: named ? nameRank : phoneRank },
      detail: row.intoId !== null ? row.name : second ? row.phone2 : row.phone,
    };
  });
}

/** Parts by number and by words. */
async function parts(context: Context, text: string, most: number): Promise<Ranked[]> {
  const number = foldPlate(text);
  const words = foldText(text);
  const pieces = [
    ...(number.length < FEWEST_SIGNS ? [] : [holding('part', ['number'], number, most)]),
    ...(words.length < FEWEST_SIGNS ? [] : [holding('part', ['words'], words, most)]),
  ];
  if (pieces.length === 0) return [];
  const rows = await context.tx
    .selectFrom('part')
    .select(['id', 'number', 'words', 'find_number', 'bin'])
    .where(inPieces('part', pieces))
    .execute();
  return rows.map((row) => ({
    ...{ kind: 'part', id: row.id, headline: row.number, by: 'number' },
    detail: [row.words, row.bin].filter((one) => one !== '').join(', '),
    rank: number === '' ? HOLDS : rankOf(row.find_number, number),
  }));
}

/** So many orders at most are found by what the customer said. */
const SAID = 6;

/** Orders by the customer's words, the newest first. */
async function said(context: Context, text: string): Promise<Ranked[]> {
  const words = foldText(text);
  if (words.length < FEWEST_SIGNS) return [];
  const rows = await context.tx
    .selectFrom('work_order')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['work_order.id', 'work_order.number', 'work_order.complaint', 'customer.name'])
    .where(inPieces('work_order', [holdingNewest('work_order', ['words'], words, SAID)]))
    .orderBy('work_order.opened_at', 'desc')
    .orderBy('work_order.id', 'desc')
    .execute();
  return rows.map((row) => ({
    ...{ kind: 'order', id: row.id, headline: `${row.number}`, by: 'complaint', rank: SAID_RANK },
    detail: `${row.name}: “${pieceAround(row.complaint, words)}”`,
  }));
}

/**
 * One find line over all kinds: what is the whole of something first, then what begins with it, then what holds it; of
 * equal ones numbers before cars before people before parts, and last what customers said. Each says what of it answered.
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
      ...(await said(context, text)),
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
