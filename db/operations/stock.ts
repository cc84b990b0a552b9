import { money, scale } from '../../core/money/money.ts';
import { MOST, withinMost } from '../../core/money/most.ts';
import { issue, issueCost, takeIn } from '../../core/stock/average.ts';
import type { Context, Handlers } from '../context.ts';
import { foldPlate, foldText } from '../fold.ts';
import { newId } from '../id.ts';
import { signedIn } from '../people.ts';
import { badInput, held, notFound } from '../refusal.ts';
import type { PartRow } from '../tables.ts';
import { given, heldUnlessCovered } from './on-the-sheet.ts';
import { heldPart } from './quarantine.ts';

async function partRow(context: Context, id: string) {
  const part = await context.tx.selectFrom('part').selectAll().where('id', '=', id).executeTakeFirst();
  if (!part) throw notFound('part', id);
  return part;
}

const partFieldsOf = (row: PartRow) => ({
  number: row.number,
  words: row.words,
  unit: row.unit,
  price: row.price,
  bin: row.bin,
  oneTime: row.one_time === 1,
  keepAtLeast: row.keep_at_least,
  keepAtMost: row.keep_at_most,
  pack: row.pack,
});

/** Cost of one unit as last received, for issues below zero. */
async function lastCost(context: Context, partId: string): Promise<number> {
  const last = await context.tx
    .selectFrom('part_move')
    .select(['quantity', 'value'])
    .where('part_id', '=', partId)
    .where('what', '=', 'received')
    .orderBy('at', 'desc')
    .limit(1)
    .executeTakeFirst();
  return last && last.quantity > 0 ? scale(last.value, 1000, last.quantity) : 0;
}

export const stockHandlers: Handlers = {
  'part.add': async (input, context) => {
    const same = await context.tx.selectFrom('part').select('id').where('number', '=', input.number).executeTakeFirst();
    if (same) throw badInput('number', 'number-taken');
    if (!withinMost(input.onHand, input.cost)) throw badInput('onHand', 'too-much', { most: MOST });
    const id = newId();
    const value = scale(input.onHand, input.cost, 1000);
    await context.write.insert('part', {
      id,
      revision: 1,
      number: input.number,
      words: input.words,
      unit: input.unit,
      price: input.price,
      bin: input.bin,
      one_time: input.oneTime ? 1 : 0,
      keep_at_least: input.keepAtLeast,
      on_hand: input.onHand,
      value,
      find_number: foldPlate(input.number),
      keep_at_most: input.keepAtMost,
      pack: input.pack,
    });
    if (input.onHand > 0) {
      await context.write.insert('part_move', {
        id: newId(),
        part_id: id,
        what: 'received',
        quantity: input.onHand,
        value,
        job_id: null,
        line_id: null,
        undoes: null,
        note: '',
        person_id: signedIn(context).id,
        at: context.now,
      });
    }
    return { id, revision: 1 };
  },
  'part.change': async ({ id, revision, change }, context) => {
    const fields = Object.assign(partFieldsOf(await partRow(context, id)), given(change));
    const same = await context.tx
      .selectFrom('part')
      .select('id')
      .where('number', '=', fields.number)
      .where('id', '<>', id)
      .executeTakeFirst();
    if (same) throw badInput('change.number', 'number-taken');
    const columns = {
      number: fields.number,
      words: fields.words,
      unit: fields.unit,
      price: fields.price,
      bin: fields.bin,
      one_time: fields.oneTime ? (1 as const) : (0 as const),
      keep_at_least: fields.keepAtLeast,
      find_number: foldPlate(fields.number),
      keep_at_most: fields.keepAtMost,
      pack: fields.pack,
    };
    return { id, revision: await context.write.edit('part', id, revision, columns, change, partFieldsOf) };
  },
  'part.list': async ({ text, most }, context) => {
    const rows = await context.tx.selectFrom('part').selectAll().orderBy('number').execute();
    const wanted = foldText(text);
    const found = rows.filter(
      (row) => wanted === '' || foldText(row.words).includes(wanted) || row.find_number.includes(foldPlate(text)),
    );
    return {
      rows: found.slice(0, most).map((row) => ({
        id: row.id,
        revision: row.revision,
        number: row.number,
        words: row.words,
        unit: row.unit,
        price: context.seesPrices ? row.price : null,
        bin: row.bin,
        onHand: row.on_hand,
        value: context.seesCost ? row.value : null,
        keepAtLeast: row.keep_at_least,
        oneTime: row.one_time === 1,
      })),
    };
  },
  'part.receive': async ({ partId, quantity, cost, note }, context) => {
    if (quantity === 0) throw badInput('quantity', 'more-than-nothing');
    const part = await partRow(context, partId);
    const after = takeIn({ quantity: part.on_hand, value: money(part.value) }, quantity, money(cost));
    const id = newId();
    await context.write.insert('part_move', {
      id,
      part_id: partId,
      what: 'received',
      quantity,
      value: after.value - part.value,
      job_id: null,
      line_id: null,
      undoes: null,
      note,
      person_id: signedIn(context).id,
      at: context.now,
    });
    await context.write.update('part', partId, { on_hand: after.quantity, value: after.value });
    return { id, onHand: after.quantity };
  },
  'part.issue': async ({ jobId, lineId, partId, quantity, waste }, context) => {
    if (quantity === 0) throw badInput('quantity', 'more-than-nothing');
    await heldUnlessCovered(context, jobId);
    if (lineId !== null) {
      const line = await context.tx.selectFrom('line').select('job_id').where('id', '=', lineId).executeTakeFirst();
      if (!line || line.job_id !== jobId) throw notFound('line', lineId);
    }
    const part = await partRow(context, partId);
    if (!waste) await heldPart(context, partId);
    const stock = { quantity: part.on_hand, value: money(part.value) };
    const last = money(await lastCost(context, partId));
    const after = issue(stock, quantity, last);
    const id = newId();
    await context.write.insert('part_move', {
      id,
      part_id: partId,
      what: waste ? 'waste' : 'issued',
      quantity: -quantity,
      value: -issueCost(stock, quantity, last),
      job_id: jobId,
      line_id: lineId,
      undoes: null,
      note: '',
      person_id: signedIn(context).id,
      at: context.now,
    });
    await context.write.update('part', partId, { on_hand: after.quantity, value: after.value });
    return { id, onHand: after.quantity, warning: after.quantity < 0 ? 'below-zero' : '' };
  },
  'part.putBack': async ({ moveId, quantity }, context) => {
    const move = await context.tx.selectFrom('part_move').selectAll().where('id', '=', moveId).executeTakeFirst();
    if (!move || (move.what !== 'issued' && move.what !== 'waste')) throw notFound('part_move', moveId);
    const back = await context.tx.selectFrom('part_move').select('quantity').where('undoes', '=', moveId).execute();
    const left = -move.quantity - back.reduce((sum, row) => sum + row.quantity, 0);
    if (quantity === 0 || quantity > left) throw held([{ what: 'more-than-issued', with: { left } }]);
    const part = await partRow(context, move.part_id);
    // Comes back at the cost it went out at.
    const value = scale(-move.value, quantity, -move.quantity);
    const id = newId();
    await context.write.insert('part_move', {
      id,
      part_id: part.id,
      what: 'put-back',
      quantity,
      value,
      job_id: move.job_id,
      line_id: move.line_id,
      undoes: moveId,
      note: '',
      person_id: signedIn(context).id,
      at: context.now,
    });
    await context.write.update('part', part.id, { on_hand: part.on_hand + quantity, value: part.value + value });
    return { id, onHand: part.on_hand + quantity };
  },
  'awaited.order': async ({ lineId, kind, supplier, reference, dueOn }, context) => {
    const line = await context.tx.selectFrom('line').select('id').where('id', '=', lineId).executeTakeFirst();
    if (!line) throw notFound('line', lineId);
    const id = newId();
    await context.write.insert('awaited', {
      id,
      line_id: lineId,
      kind,
      supplier,
      reference,
      ordered_at: context.now,
      due_on: dueOn,
      arrived_at: null,
      cost: null,
      person_id: signedIn(context).id,
    });
    return { id };
  },
  'awaited.arrive': async ({ id, cost }, context) => {
    const row = await context.tx.selectFrom('awaited').selectAll().where('id', '=', id).executeTakeFirst();
    if (!row) throw notFound('awaited', id);
    if (row.arrived_at !== null) throw badInput('id', 'arrived-already');
    await context.write.update('awaited', id, { arrived_at: context.now, cost });
    return { id };
  },
};
