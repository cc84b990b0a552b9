import { statSync } from 'node:fs';
import { isAbsolute } from 'node:path';
import type { Handlers } from '../context.ts';
import { copyShop } from '../file/backup.ts';
import { shopPaths } from '../file/folder.ts';
import { thinCopies } from '../file/thin-copies.ts';
import { badInput } from '../refusal.ts';
import { verify } from '../verify.ts';
import { verifyPapers } from '../verify-papers.ts';
import { verifyPhotos } from '../verify-photos.ts';
import { verifySchema } from '../verify-schema.ts';

export const careHandlers: Handlers = {
  'care.copy': async ({ to }, context) => {
    const own = shopPaths(context.folder).backups;
    if (to !== '' && !(isAbsolute(to) && statSync(to, { throwIfNoEntry: false })?.isDirectory()))
      throw badInput('to', 'not-a-folder');
    const { name, path, trail, bytes } = await copyShop({
      from: context.folder,
      to: to === '' ? own : to,
      at: context.now,
      zone: context.settings?.zone ?? 'UTC',
      withFiles: to !== '',
    });
    if (to === '') thinCopies(own);
    return { name, path, trail, bytes };
  },
  'care.verify': async (_input, context) => {
    const { checked, faults } = await verify(context.tx);
    const { tx, folder } = context;
    const all = [...(await verifySchema(tx)), ...faults, ...(await verifyPhotos(tx, folder))];
    return { sound: all.length === 0, checked, faults: all };
  },
  'care.papers': async ({ after, most }, context) => {
    const { faults, ...looked } = await verifyPapers(context.tx, context.folder, after ?? '', most);
    return { ...looked, faults: [...faults] };
  },
  'trail.list': async ({ before, most }, context) => {
    const rows = await context.tx
      .selectFrom('trail')
      .leftJoin('person', 'person.id', 'trail.person_id')
      .select(['trail.n', 'trail.at', 'person.name', 'trail.operation', 'trail.changes'])
      .where('trail.n', '<', before ?? Number.MAX_SAFE_INTEGER)
      .orderBy('trail.n', 'desc')
      .limit(most)
      .execute();
    return {
      rows: rows.map((row) => ({
        n: row.n,
        at: row.at,
        person: row.name ?? '',
        operation: row.operation,
        changes: row.changes,
      })),
    };
  },
};
