import { ShopHeld } from '../db/file/errors.ts';
import { runCommand, type Surroundings } from './command.ts';
import { backUp, copiesOf, restore } from './copies.ts';
import { counterOf, counterThrough } from './counter.ts';
import { openLocked } from './open.ts';
import { passOn } from './passing-on.ts';

/** How long a shop may be held by a process without a door (another command), in milliseconds. */
const PATIENCE = 30_000;

// A script may open the shop a thousand times: it is copied at close, but not more often than this, in milliseconds.
const HOUR = 3_600_000;

/** The shop opened here, or the door of the window that holds it. */
const openCounter: Surroundings['openCounter'] = async (folder, practice) => {
  for (const until = Date.now() + PATIENCE; ; ) {
    try {
      const open = await openLocked({ folder, practice });
      return { counter: counterOf(open.shop), warnings: open.shop.warnings, close: () => open.close(HOUR) };
    } catch (fault) {
      if (!(fault instanceof ShopHeld)) throw fault;
      const { holder } = fault;
      if (holder !== null && holder.address !== null) {
        return { counter: counterThrough((device) => passOn(holder, device)), warnings: [], close: async () => {} };
      }
      if (!fault.certain || Date.now() > until) throw fault;
      await new Promise((later) => setTimeout(later, 50));
    }
  }
};

// Whoever reads the answers may stop reading: `| head` is no fault.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => process.exit(fault.code === 'EPIPE' ? 0 : 2));

process.exitCode = await runCommand(process.argv.slice(2), {
  env: process.env,
  input: process.stdin,
  out: (line) => process.stdout.write(`${line}\n`),
  err: (sentence) => process.stderr.write(`${sentence}\n`),
  openCounter,
  backUp,
  restore,
  copiesOf,
});
