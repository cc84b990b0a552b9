import { statSync } from 'node:fs';
import type { Context, Handlers } from '../context.ts';
import { listCopies } from '../file/backup.ts';
import { shopPaths } from '../file/folder.ts';
import { newId } from '../id.ts';
import { badInput, notFound } from '../refusal.ts';

type List = 'labour_rate' | 'bay';

/** Every row that is there must be in the list again: none ever goes. Throws bad-input or not-found. */
async function checkWhole(context: Context, table: List, ids: readonly (string | null)[], path: string) {
  const there = await context.tx.selectFrom(table).select('id').execute();
  const named = ids.filter((id) => id !== null);
  if (new Set(named).size !== named.length) throw badInput(path, 'same-row-twice');
  const unknown = named.find((id) => !there.some((row) => row.id === id));
  if (unknown !== undefined) throw notFound(table, unknown);
  if (there.some((row) => !named.includes(row.id))) throw badInput(path, 'row-missing');
}

/** Takes the shop's own revision on by one. Throws changed-meanwhile. */
const nextRevision = (context: Context, revision: number, yours: unknown, now: unknown) =>
  context.write.edit('shop', 'shop', revision, {}, yours, () => now);

function namesDiffer(rows: readonly { readonly name: string }[], path: string): void {
  const names = rows.map((row) => row.name.toLowerCase());
  const twice = names.findIndex((name, at) => names.indexOf(name) < at);
  if (twice >= 0) throw badInput(`${path}.${twice}.name`, 'same-name-twice');
}

export const shopListsHandlers: Handlers = {
  'shop.rates': async ({ revision, rates }, context) => {
    namesDiffer(rates, 'rates');
    const now = await context.tx.selectFrom('labour_rate').selectAll().orderBy('place').execute();
    const next = await nextRevision(context, revision, rates, now);
    const ids = rates.map((rate) => rate.id);
    await checkWhole(context, 'labour_rate', ids, 'rates');
    for (const [place, { id, name, price, usual }] of rates.entries()) {
      const row = { name, price, usual: usual ? (1 as const) : (0 as const), place };
      if (id === null) await context.write.insert('labour_rate', { id: newId(), ...row });
      else await context.write.update('labour_rate', id, row);
    }
    return { revision: next };
  },
  'shop.bays': async ({ revision, bays }, context) => {
    namesDiffer(bays, 'bays');
    const now = await context.tx.selectFrom('bay').selectAll().orderBy('place').execute();
    const next = await nextRevision(context, revision, bays, now);
    const ids = bays.map((bay) => bay.id);
    await checkWhole(context, 'bay', ids, 'bays');
    for (const [place, { id, name, words }] of bays.entries()) {
      if (id === null) await context.write.insert('bay', { id: newId(), name, words, place });
      else await context.write.update('bay', id, { name, words, place });
    }
    return { revision: next };
  },
  'care.copies': async (_input, context) => ({
    copies: listCopies(shopPaths(context.folder).backups)
      .map(({ name, path, bytes }) => ({ name, at: Math.trunc(statSync(path).mtimeMs), bytes }))
      .sort((a, b) => b.at - a.at),
  }),
};
