import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { openWithDoor } from '../../electron/open.ts';
import { hrefOf } from '../../renderer/frame/router.ts';
import { t } from '../../renderer/words/t.ts';
import { Garage, PEOPLE } from './garage.ts';
import { expect, test } from './shop-fixture.ts';
import { choose, expectOnSheet, field, sheetOf } from './window.ts';

/** The program runs as a process of its own here, by the machine's clock. */
test.use({ begins: 'real' });

const START = resolve(import.meta.dirname, '../../electron/start.ts');

/** Starts the program as a process of its own; resolves with it and the link that it says. */
async function start(folder: string): Promise<{ host: ChildProcess; link: string }> {
  const host = spawn(process.execPath, [START, '--shop', folder, '--no-window'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  for await (const line of createInterface({ input: host.stdout }))
    if (line.includes('?key=')) return { host, link: line.slice(line.indexOf('http')) };
  throw new Error('The program ended without a link.');
}

async function end(host: ChildProcess, signal: 'SIGKILL' | 'SIGTERM'): Promise<void> {
  const ended = new Promise((closed) => host.once('exit', closed));
  host.kill(signal);
  await ended;
}

test('killed while two people write: nothing answered is lost, nothing typed either, and the window comes back', async ({
  context,
  page,
}) => {
  const folder = mkdtempSync(join(tmpdir(), 'crownwheel-killed-'));
  const before = await openWithDoor({ folder, practice: true, port: 0 });
  const garage = await Garage.setUp(before);
  const id = await garage.booked();
  await garage.job(id);
  await before.close();

  const enter = async (on: typeof page, link: string) => {
    await on.goto(link);
    await choose(on, t('frame.enterWho'), 'Odile');
    await on.getByLabel(t('frame.enterCode')).fill(PEOPLE[0].code);
    await on.getByLabel(t('frame.enterCode')).press('Enter');
    await expect(on.getByRole('heading', { level: 1, name: t('today.title') })).toBeVisible();
  };
  const first = await start(folder);
  await enter(page, first.link);
  const address = new URL(page.url()).origin;
  await page.goto(`${address}/${hrefOf('orders', id)}`);
  for (const [words, sum] of [
    ['Look at the mount 0.5 h', '241.92'],
    ['Look at the shaft 0.5 h', '302.40'],
  ] as const) {
    await field(page, t('sheet.newWords', { letter: 'A' })).fill(words);
    await page.getByRole('button', { name: t('sheet.add'), exact: true }).click();
    await expectOnSheet(page, sum);
  }
  await end(first.host, 'SIGKILL');

  const price = field(page, t('sheet.cellPrice', { words: 'Road test' }));
  await price.fill('100');
  await price.press('Tab');
  await expect(price).toHaveAccessibleDescription(t('errors.no-answer'));
  await expect(price).toHaveValue('100');

  const second = await start(folder);
  const other = await context.newPage();
  await enter(other, second.link);
  expect(new URL(other.url()).origin).toBe(address);
  await other.goto(`${address}/${hrefOf('orders', id)}`);
  await expectOnSheet(other, '302.40');
  await expect(sheetOf(other)).toContainText('KTB 4471');
  // The first window is let in again with the second: what stands typed in its cell goes out as it is left once more.
  await price.fill('100.00');
  await price.press('Tab');
  await expectOnSheet(other, '309.96');
  await end(second.host, 'SIGTERM');

  const after = await openWithDoor({ folder, port: 0 });
  const shop = garage.reopened(after);
  const lines = (await shop.order(id)).jobs[0]?.lines.map((line) => [line.words, line.unitPrice]);
  expect(lines).toEqual([
    ['Road test', 10_000],
    ['Look at the mount', 9600],
    ['Look at the shaft', 9600],
  ]);
  expect(await shop.did('Odile', 'care.verify', {})).toMatchObject({ sound: true });
  await after.close();
  rmSync(folder, { recursive: true });
});
