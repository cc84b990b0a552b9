import type { OutputOf } from '../../core/contract/index.ts';
import type { Context, Handlers } from '../context.ts';
import { above, either, FEWEST_SIGNS, matching } from '../find-index.ts';
import { foldPhone, foldPlate, foldText, pieceAround } from '../fold.ts';
import * as questions from './find-questions.ts';

type Hit = OutputOf<'find.line'>['hits'][number];

/** How well it fits: the whole of it, its beginning, somewhere in it. */
const WHOLE = 0;
const BEGINS = 1;
const HOLDS = 2;
/** What was said once comes after whatever has the words in its name. */
const SAID_RANK = 3;
interface Ranked extends Omit<Hit, 'open'> {
  readonly rank: number;
}

const rankOf = (text: string, asked: string) => (text === asked ? WHOLE : text.startsWith(asked) ? BEGINS : HOLDS);

/** Orders and papers of a number; papers only for whoever may read them. */
async function numbered(context: Context, text: string): Promise<Ranked[]> {
  if (!/^\d{1,9}$/.test(text)) return [];
  const number = Number(text);
  const orders = await questions.ordersNumbered(context.tx, { number });
  const papers = context.who?.role === 'mechanic' ? [] : await questions.papersNumbered(context.tx, { number });
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
  const asked = { from: plate, to: above(plate), match: matching('car_plate', ['plate'], plate), most };
  const ofPlate = plate.length < FEWEST_SIGNS ? questions.platesBeginning : questions.platesHolding;
  const byPlate = await ofPlate(context.tx, asked);
  const vins = (piece: string) => questions.vinsHolding(context.tx, { match: matching('car', ['vin'], piece), most });
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
  const named = (piece: string) => matching('customer', ['name'], piece);
  const phoned = (piece: string) => matching('customer', ['phone', 'phone2'], piece);
  const asked = { from: words, to: above(words), most };
  const further = async (match: string) => {
    rows.push(...(await questions.peopleFurther(context.tx, { ...asked, match })));
  };
  const rows =
    digits.length >= FEWEST_SIGNS
      ? await questions.peopleHolding(context.tx, {
          ...asked,
          match: words.length < FEWEST_SIGNS ? phoned(digits) : either(named(words), phoned(digits)),
          most: 2 * most,
        })
      : words.length < FEWEST_SIGNS - 1
        ? await questions.peopleBeginning(context.tx, { ...asked, match: '' })
        : // A surname that begins so is as good as a first name; of common ones there are enough by these alone.
          await questions.peopleHolding(context.tx, { ...asked, match: named(` ${words}`) });
  const enough = () => new Set(rows.map((row) => row.intoId ?? row.id)).size >= most;
  if (digits.length < FEWEST_SIGNS && words.length >= FEWEST_SIGNS && !enough()) await further(named(words));
  // A country that is written, or not: then the end of the number alone.
  if (rows.length === 0 && digits.length > TAIL) await further(phoned(`${digits.slice(-TAIL)}.`));
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
  const matches = [
    ...(number.length < FEWEST_SIGNS ? [] : [matching('part', ['number'], number)]),
    ...(words.length < FEWEST_SIGNS ? [] : [matching('part', ['words'], words)]),
  ];
  if (matches.length === 0) return [];
  const rows = await questions.partsHolding(context.tx, { match: either(...matches), most: matches.length * most });
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
  const asked = { match: matching('work_order', ['words'], words), most: SAID };
  const rows = await questions.ordersSaying(context.tx, asked);
  return rows.map((row) => ({
    ...{ kind: 'order', id: row.id, headline: `${row.number}`, by: 'complaint', rank: SAID_RANK },
    detail: `${row.name}: “${pieceAround(row.complaint, words)}”`,
  }));
}

/** Of so many of the best hits it is said what is open, and so many orders of each. */
const TOLD_OF = 5;
const OPEN_EACH = 3;

/** What is open of the cars and customers that were found: who rings asks for that, and knows no order number. */
async function withOpen(context: Context, hits: readonly Omit<Hit, 'open'>[]): Promise<Hit[]> {
  const told = hits.filter(({ kind }) => kind === 'car' || kind === 'customer').slice(0, TOLD_OF);
  const ids = (kind: Hit['kind']) => ['', ...told.filter((hit) => hit.kind === kind).map(({ id }) => id)];
  const asked = { cars: ids('car'), customers: ids('customer') };
  const rows = told.length === 0 ? [] : await questions.openOrdersOf(context.tx, asked);
  // Each order once, under what fits best.
  const named = new Set(hits.filter(({ kind }) => kind === 'order').map(({ id }) => id));
  return hits.map((hit) => {
    if (!told.includes(hit)) return { ...hit, open: [] };
    const open = rows
      .filter((row) => !named.has(row.id) && hit.id === (hit.kind === 'car' ? row.car_id : row.customer_id))
      .slice(0, OPEN_EACH);
    for (const { id } of open) named.add(id);
    return {
      ...hit,
      open: open.map(({ id, number, plate, words }) => ({ id, number, car: `${plate} ${words}`.trim() })),
    };
  });
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
    const hits = all
      .filter((hit) => !seen.has(hit.id) && seen.add(hit.id))
      .slice(0, most)
      .map(({ rank: _, ...hit }) => hit);
    return { hits: await withOpen(context, hits) };
  },
};
