import type { Context } from '../context.ts';
import { beginning, holding, holdingNewest, inPieces, type Piece } from '../find-index.ts';
import { kept } from '../kept.ts';

/** What find asks of the shop's file, as somebody types. */

type Tx = Context['tx'];

export const ordersNumbered = kept((tx: Tx, { number }: { number: number }) =>
  tx
    .selectFrom('work_order')
    .innerJoin('car', 'car.id', 'work_order.car_id')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['work_order.id', 'number', 'car.plate', 'car.words', 'customer.name'])
    .where('number', '=', number),
);

export const papersNumbered = kept((tx: Tx, { number }: { number: number }) =>
  tx
    .selectFrom('paper')
    .innerJoin('customer', 'customer.id', 'paper.customer_id')
    .select(['paper.id', 'paper.kind', 'paper.number', 'customer.name'])
    // By kind as well, since the index begins with it.
    .where('paper.kind', 'in', ['quote', 'invoice', 'credit-note', 'receipt'])
    .where('paper.number', '=', number)
    .orderBy('paper.issued_at', 'desc')
    .limit(8),
);

const owned = (tx: Tx) =>
  tx
    .selectFrom('car')
    .leftJoin('car_owner', (on) => on.onRef('car_owner.car_id', '=', 'car.id').on('car_owner.to_day', 'is', null))
    .leftJoin('customer', 'customer.id', 'car_owner.customer_id')
    .select(['car.id', 'car.words', 'car.plate', 'car.vin', 'customer.name']);

/** From, and what is above it, in the B-tree; and what the index is asked for. */
interface Plate {
  readonly from: string;
  readonly to: string;
  readonly match: string;
  readonly most: number;
}

const plates = (pieces: (of: Plate) => Piece[]) =>
  kept((tx: Tx, of: { from: string; to: string; match: string; most: number }) =>
    owned(tx)
      .innerJoin('car_plate', 'car_plate.car_id', 'car.id')
      .select(['car_plate.plate as worn', 'car_plate.find_plate'])
      .where(inPieces('car_plate', pieces(of))),
  );
const plateBegins = ({ from, to, most }: Plate) => beginning('car_plate', 'find_plate', from, to, most);

export const platesBeginning = plates((of) => [plateBegins(of)]);
export const platesHolding = plates((of) => [plateBegins(of), holding('car_plate', of.match, of.most)]);

export const vinsHolding = kept((tx: Tx, { match, most }: { match: string; most: number }) =>
  owned(tx).where(inPieces('car', [holding('car', match, most)])),
);

/** Name from, and what is above it; and what the index is asked for, of names and of phones. */
interface Person {
  readonly from: string;
  readonly to: string;
  readonly match: string;
  readonly most: number;
}

const people = (pieces: (of: Person) => Piece[]) =>
  kept((tx: Tx, of: { from: string; to: string; match: string; most: number }) =>
    tx
      .selectFrom('customer')
      .leftJoin('customer as into', 'into.id', 'customer.joined_into')
      .select(['customer.id', 'customer.name', 'customer.phone', 'customer.phone2'])
      .select(['customer.find_name', 'customer.find_phone', 'customer.find_phone2'])
      .select(['into.id as intoId', 'into.name as intoName'])
      .where(inPieces('customer', pieces(of))),
  );
const nameBegins = ({ from, to, most }: Person) => beginning('customer', 'find_name', from, to, most);

export const peopleBeginning = people((of) => [nameBegins(of)]);
export const peopleHolding = people((of) => [nameBegins(of), holding('customer', of.match, of.most)]);
/** Without those whose name begins so. */
export const peopleFurther = people((of) => [holding('customer', of.match, of.most)]);

export const partsHolding = kept((tx: Tx, { match, most }: { match: string; most: number }) =>
  tx
    .selectFrom('part')
    .select(['id', 'number', 'words', 'find_number', 'bin'])
    .where(inPieces('part', [holding('part', match, most)])),
);

/** By what the customer said, the newest first. */
export const ordersSaying = kept((tx: Tx, { match, most }: { match: string; most: number }) =>
  tx
    .selectFrom('work_order')
    .innerJoin('customer', 'customer.id', 'work_order.customer_id')
    .select(['work_order.id', 'work_order.number', 'work_order.complaint', 'customer.name'])
    .where(inPieces('work_order', [holdingNewest('work_order', match, most)]))
    .orderBy('work_order.opened_at', 'desc')
    .orderBy('work_order.id', 'desc'),
);

/** What is open of these cars, and of these customers, the newest first; of what is open there is never much. */
export const openOrdersOf = kept(
  (tx: Tx, { cars, customers }: { cars: readonly string[]; customers: readonly string[] }) =>
    tx
      .selectFrom('work_order')
      .innerJoin('car', 'car.id', 'work_order.car_id')
      .select(['work_order.id', 'work_order.number', 'work_order.car_id', 'work_order.customer_id'])
      .select(['car.plate', 'car.words'])
      .where('handed_over_at', 'is', null)
      .where('cancelled_at', 'is', null)
      .where((on) => on.or([on('work_order.car_id', 'in', cars), on('work_order.customer_id', 'in', customers)]))
      .orderBy('opened_at', 'desc')
      .orderBy('number', 'desc'),
);
