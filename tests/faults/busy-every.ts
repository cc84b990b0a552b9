/**
 * A child that lets every table be filled once, by a `do` of nearly every kind, until it is killed. Each answer that came
 * back is written to standard output, before the next call is made.
 */
import { writeSync } from 'node:fs';
import { type OperationName, operations } from '../../core/contract/index.ts';
import { newId } from '../../db/id.ts';
import { openShop } from '../../db/shop.ts';
import { fillEveryTable } from '../db/every-table.ts';
import { PracticeShop } from '../db/practice-shop.ts';

const [, , folder = '', people = '[]'] = process.argv;
const named = new Map(JSON.parse(people) as [string, string][]);

class Telling extends PracticeShop {
  override async did<N extends OperationName>(
    ...[as, operation, input, request = newId()]: Parameters<typeof PracticeShop.prototype.did<N>>
  ) {
    const output = await super.did(as, operation, input, request);
    if (operations[operation].kind === 'do') writeSync(1, `${JSON.stringify({ request, operation, output })}\n`);
    return output;
  }
}

await fillEveryTable(new Telling(folder, await openShop({ folder }), named));
// All is done: whoever listens kills it here at the latest.
setInterval(() => {}, 60_000);
writeSync(1, '\n');
