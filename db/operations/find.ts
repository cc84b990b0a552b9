import type { Handlers } from '../context.ts';
import { foldPhone, foldPlate, foldText } from '../fold.ts';

/** One find line: an order or paper number, then plates, VINs, names, phones; best first, each saying what answered. */
export const findHandlers: Handlers = {
  'find.line': async ({ text, most }, context) => {
    const hits: {
      kind: 'car' | 'customer' | 'order' | 'paper' | 'part';
      id: string;
      headline: string;
      detail: string;
      by: string;
    }[] = [];
    const { tx } = context;
    const words = foldText(text);
    const plate = foldPlate(text);
    const digits = foldPhone(text);
    if (words === '') return { hits };
    if (/^\d{1,9}$/.test(text.trim())) {
      const orders = await tx
        .selectFrom('work_order')
        .innerJoin('car', 'car.id', 'work_order.car_id')
        .select(['work_order.id', 'number', 'car.plate', 'car.words'])
        .where('number', '=', Number(text.trim()))
        .execute();
      for (const order of orders)
        hits.push({
          kind: 'order',
          id: order.id,
          headline: `${order.number}`,
          detail: `${order.plate} ${order.words}`.trim(),
          by: 'order',
        });
    }
    if (plate.length > 0) {
      const cars = await tx
        .selectFrom('car_plate')
        .innerJoin('car', 'car.id', 'car_plate.car_id')
        .select(['car.id', 'car.plate', 'car.words', 'car_plate.plate as found'])
        .where('car_plate.find_plate', 'like', `%${plate}%`)
        .limit(most)
        .execute();
      for (const car of cars)
        hits.push({ kind: 'car', id: car.id, headline: car.found, detail: car.words, by: 'plate' });
    }
    const vin = text
      .trim()
      .toUpperCase()
      .replace(/[^A-Z0-9]/g, '');
    if (vin.length >= 3) {
      const cars = await tx
        .selectFrom('car')
        .select(['id', 'plate', 'vin', 'words'])
        .where('vin', 'like', `%${vin}%`)
        .limit(most)
        .execute();
      for (const car of cars)
        hits.push({
          kind: 'car',
          id: car.id,
          headline: car.vin,
          detail: `${car.plate} ${car.words}`.trim(),
          by: 'VIN',
        });
    }
    const named = await tx
      .selectFrom('customer')
      .select(['id', 'name', 'phone'])
      .where('find_name', 'like', `%${words.replace(/[%_]/g, '')}%`)
      .limit(most)
      .execute();
    for (const row of named)
      hits.push({ kind: 'customer', id: row.id, headline: row.name, detail: row.phone, by: 'name' });
    if (digits.length >= 3) {
      const rung = await tx
        .selectFrom('customer')
        .select(['id', 'name', 'phone'])
        .where((on) => on.or([on('find_phone', 'like', `%${digits}%`), on('find_phone2', 'like', `%${digits}%`)]))
        .limit(most)
        .execute();
      for (const row of rung)
        hits.push({ kind: 'customer', id: row.id, headline: row.name, detail: row.phone, by: 'phone' });
    }
    const seen = new Set<string>();
    return { hits: hits.filter((hit) => !seen.has(hit.id) && seen.add(hit.id)).slice(0, most) };
  },
};
