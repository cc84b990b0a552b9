import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { describe, expect, it, onTestFinished } from 'vitest';
import { createShopFolder } from '../../../db/file/folder.ts';
import { holdShop, readHolder } from '../../../db/file/lock.ts';
import { AT, newFolder } from './fixture.ts';

const module = new URL('../../../db/file/lock.ts', import.meta.url).href;

/** Another process that takes the shop and keeps it until it is killed. */
async function otherProcess(folder: string): Promise<ChildProcess> {
  const script = `const { holdShop } = await import(${JSON.stringify(module)});
    holdShop(${JSON.stringify(folder)}, { at: 5 }).announce('http://127.0.0.1:4711', 'secret');
    console.log('held'); setInterval(() => {}, 1000);`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  await new Promise((resolve) => child.stdout.once('data', resolve));
  return child;
}

describe('one process has the shop', () => {
  it('refuses a second start and says who has it, and at which door', () => {
    const { folder, holder } = createShopFolder(newFolder());
    const lock = holdShop(folder, { at: AT });
    lock.announce('http://127.0.0.1:4711', 'secret');
    expect(statSync(holder).mode & 0o777).toBe(process.platform === 'win32' ? 0o666 : 0o600);
    const expected = { pid: process.pid, host: hostname(), since: AT, address: 'http://127.0.0.1:4711', key: 'secret' };
    expect(() => holdShop(folder, { at: AT + 1 })).toThrow(
      expect.objectContaining({ name: 'ShopHeld', certain: true, holder: expected }),
    );
    expect(lock.held).toBe(true);
    lock.release();
    lock.release();
    expect(existsSync(holder)).toBe(false);
    holdShop(folder, { at: AT + 2 }).release();
  });

  it('holds between processes, and ends with a process that is killed', async () => {
    const { folder } = createShopFolder(newFolder());
    const child = await otherProcess(folder);
    expect(() => holdShop(folder, { at: AT })).toThrow(
      expect.objectContaining({ name: 'ShopHeld', holder: expect.objectContaining({ pid: child.pid, key: 'secret' }) }),
    );
    const gone = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGKILL');
    await gone;
    expect(readHolder(folder)?.pid).toBe(child.pid);
    const lock = holdShop(folder, { at: AT });
    expect(readHolder(folder)?.pid).toBe(process.pid);
    lock.release();
  });

  it('takes over what a dead process left, though another process has its number now', () => {
    const paths = createShopFolder(newFolder());
    const left = { pid: process.ppid, host: hostname(), since: 1, address: null, key: null };
    writeFileSync(paths.holder, JSON.stringify(left));
    holdShop(paths.folder, { at: AT }).release();
  });

  it('asks somebody when another machine stands on it', () => {
    const paths = createShopFolder(newFolder());
    const left = { pid: 1, host: 'the-other-machine', since: 1, address: null, key: null };
    writeFileSync(paths.holder, JSON.stringify(left));
    expect(() => holdShop(paths.folder, { at: AT })).toThrow(
      expect.objectContaining({ name: 'ShopHeld', certain: false, holder: left }),
    );
    holdShop(paths.folder, { at: AT, takeOver: true }).release();
  });

  it('is not stopped by a holder file that cannot be read', () => {
    const paths = createShopFolder(newFolder());
    writeFileSync(paths.holder, '{"pid":');
    holdShop(paths.folder, { at: AT }).release();
  });
});
