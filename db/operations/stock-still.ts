import { addMonths } from '../../core/time/civil.ts';
import { civilDateOf, wallToInstant } from '../../core/time/instant.ts';
import type { Handlers } from '../context.ts';
import { settingsOf } from '../people.ts';
import { stillParts } from './stock-questions.ts';

/** Parts that lie there and have not moved for so long as the shop says: dead stock. */
export const stockStillHandlers: Handlers = {
  'stock.still': async (_input, context) => {
    const { deadStockMonths, zone } = settingsOf(context);
    const since = addMonths(context.today, -deadStockMonths);
    const rows = await stillParts(context.tx, { before: wallToInstant(`${since}T00:00`, zone) });
    const worth = rows.reduce((sum, row) => sum + row.value, 0);
    return {
      since,
      worth: context.seesCost ? worth : null,
      rows: rows.map(({ value, on_hand, moved, ...row }) => ({
        ...row,
        onHand: on_hand,
        value: context.seesCost ? value : null,
        movedOn: moved === null ? null : civilDateOf(Number(moved), zone),
      })),
    };
  },
};
