import type Database from 'better-sqlite3';
import { above } from '../../db/find-index.ts';
import { foldPhone, foldPlate, foldText } from '../../db/fold.ts';

const CAR = `SELECT car.id, car.words, car.plate, car.vin, customer.name FROM car
  LEFT JOIN car_owner ON car_owner.car_id = car.id AND car_owner.to_day IS NULL
  LEFT JOIN customer ON customer.id = car_owner.customer_id`;

/**
 * What the find line asks for one text, as prepared statements on the same indexes: the same twenty rows of each kind,
 * those that begin or end so before those that hold it.
 */
export function rawFind(raw: Database.Database): (text: string) => void {
  const orders = raw.prepare(
    `SELECT work_order.id, number, car.plate, car.words, customer.name FROM work_order
     JOIN car ON car.id = car_id JOIN customer ON customer.id = work_order.customer_id WHERE number = ?`,
  );
  const papers = raw.prepare(
    `SELECT paper.id, kind, number, name FROM paper JOIN customer ON customer.id = customer_id
     WHERE kind IN ('quote', 'invoice', 'credit-note', 'receipt') AND number = ? ORDER BY issued_at DESC LIMIT 8`,
  );
  const plates = raw.prepare(
    `${CAR} JOIN car_plate ON car_plate.car_id = car.id WHERE car_plate.rowid IN (
       SELECT * FROM (SELECT rowid FROM car_plate WHERE find_plate >= ? AND find_plate < ? LIMIT 20)
       UNION ALL SELECT * FROM (SELECT rowid FROM find_car_plate WHERE find_car_plate MATCH ? LIMIT 20))`,
  );
  const vins = raw.prepare(
    `${CAR} WHERE car.rowid IN (
       SELECT * FROM (SELECT rowid FROM find_car WHERE find_car MATCH ? LIMIT 20)
       UNION ALL SELECT * FROM (SELECT rowid FROM find_car WHERE find_car MATCH ? LIMIT 20))`,
  );
  const people = raw.prepare(
    `SELECT customer.*, into_.name AS into_name FROM customer LEFT JOIN customer AS into_ ON into_.id = customer.joined_into
     WHERE customer.rowid IN (
       SELECT * FROM (SELECT rowid FROM customer WHERE find_name >= ? AND find_name < ? LIMIT 20)
       UNION ALL SELECT * FROM (SELECT rowid FROM find_customer WHERE find_customer MATCH ? LIMIT 20)
       UNION ALL SELECT * FROM (SELECT rowid FROM find_customer WHERE find_customer MATCH ? LIMIT 20))`,
  );
  const parts = raw.prepare(
    'SELECT * FROM part WHERE rowid IN (SELECT rowid FROM find_part WHERE find_part MATCH ? LIMIT 20)',
  );
  const said = raw.prepare(
    `SELECT work_order.id, number, complaint, name FROM work_order JOIN customer ON customer.id = customer_id
     WHERE work_order.rowid IN (SELECT rowid FROM find_work_order WHERE find_work_order MATCH ? ORDER BY rowid DESC LIMIT 6)
     ORDER BY opened_at DESC`,
  );
  const open = raw.prepare(
    `SELECT work_order.id, number, car.plate FROM work_order JOIN car ON car.id = car_id
     WHERE handed_over_at IS NULL AND cancelled_at IS NULL AND (car_id IN (?, ?) OR work_order.customer_id IN (?, ?))`,
  );
  return (text) => {
    const [plate, words, digits] = [foldPlate(text), foldText(text), foldPhone(text).replace(/^0+/, '')];
    if (/^\d+$/.test(text)) {
      orders.all(Number(text));
      papers.all(Number(text));
    }
    const cars = plates.all(plate, above(plate), `plate : "${plate}"`) as { id: string }[];
    vins.all(`vin : "${plate}."`, `vin : "${plate}"`);
    const phone = /\p{L}/u.test(text) || digits.length < 3 ? '' : ` OR {phone phone2} : "${digits}"`;
    const found = people.all(words, above(words), `name : " ${words}"`, `{name} : "${words}"${phone}`) as {
      id: string;
    }[];
    parts.all(`number : "${plate}" OR words : "${words}"`);
    said.all(`words : "${words}"`);
    const [a, b] = [cars, found].map((rows) => [rows[0]?.id ?? '', rows[1]?.id ?? '']);
    open.all(...(a ?? []), ...(b ?? []));
  };
}
