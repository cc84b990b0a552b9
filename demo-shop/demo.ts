import '../electron/node-version.ts';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { dataFolder } from '../electron/folder.ts';
import { openWithDoor } from '../electron/open.ts';
import { PEOPLE } from './garage.ts';
import { playDemo } from './play.ts';

const say = (sentence: string) => process.stdout.write(`${sentence}\n`);

/** Plays the demo garage into the folder named by --shop, else `demo-garage` beside the usual shop. Returns the exit code. */
async function demo(args: readonly string[]): Promise<0 | 1> {
  const { values } = parseArgs({ args: [...args], options: { shop: { type: 'string' } } });
  const folder = resolve(values.shop ?? join(dataFolder(), 'demo-garage'));
  if (existsSync(join(folder, 'shop.sqlite'))) {
    process.stderr.write(
      `There is a shop in ${folder} already, and the demo garage is never played over one. ` +
        'Name another folder with --shop FOLDER, or move that one away.\n',
    );
    return 1;
  }
  const open = await openWithDoor({ folder, practice: true, port: 0 });
  try {
    const { verified } = await playDemo(open.shop, Date.now(), say);
    if (!verified.sound) {
      process.stderr.write(`The shop does not agree with itself: ${JSON.stringify(verified.faults)}\n`);
      return 1;
    }
    say('The trail, the papers, the stock and the books agree.');
  } catch (fault) {
    process.stderr.write(`The story stopped half way. Remove ${folder} before playing it again.\n`);
    throw fault;
  } finally {
    await open.close();
  }
  say('\nPeople and their codes:');
  for (const { name, role, code } of PEOPLE) say(`  ${name}, ${role}: ${code}`);
  say(`The papers are in ${join(folder, 'papers')}.`);
  say(`Open it with: npm start -- --shop ${JSON.stringify(folder)}`);
  return 0;
}

process.exitCode = await demo(process.argv.slice(2)).catch((fault: unknown) => {
  process.stderr.write(`${fault instanceof Error ? fault.message : String(fault)}\n`);
  return 1;
});
