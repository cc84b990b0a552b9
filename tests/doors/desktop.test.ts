import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { makeBridge } from '../../electron/bridge.ts';
import { CHANNELS } from '../../electron/channels.ts';
import { type ElectronParts, ORIGIN, runDesktop } from '../../electron/desktop.ts';
import { Hands } from '../../electron/hands.ts';
import { FakeShop } from './fake-shop.ts';

// Electron's binary is not there: these tests show what the shell asks of Electron, not what Electron does with it.

type Listener = (...args: never[]) => unknown;
type Recorded = Record<string, Listener>;

let folder: string;
let shop: FakeShop;
let hands: Hands;
let log: string[];
let appOn: Recorded;
let contentsOn: Recorded;
let windowOn: Recorded;
let handlers: Recorded;
let guards: Recorded;
let options: { webPreferences?: object } | undefined;
let sent: unknown[];
let begun: unknown[];
const topFrame = { parent: null, url: `${ORIGIN}/` };
const webContents = {
  setWindowOpenHandler: (handler: Listener) => {
    guards.windowOpen = handler;
  },
  on: (name: string, listener: Listener) => {
    contentsOn[name] = listener;
  },
  send: (...args: unknown[]) => sent.push(args),
};

class StubWindow {
  readonly webContents = webContents;
  constructor(given: object) {
    options = given;
    log.push('window');
  }
  once(name: string, listener: Listener) {
    windowOn[name] = listener;
  }
  show() {
    log.push('show');
  }
  async loadURL(url: string) {
    log.push(`load ${url}`);
  }
}

function parts(): ElectronParts {
  const guard = (name: string) => (handler: Listener) => {
    guards[name] = handler;
  };
  const stub = {
    app: {
      enableSandbox: () => log.push('sandbox'),
      whenReady: () => Promise.resolve(),
      on: (name: string, listener: Listener) => {
        appOn[name] = listener;
      },
      quit: () => log.push('quit'),
      exit: (code: number) => log.push(`exit ${code}`),
      getPath: () => folder,
    },
    ipcMain: {
      handle: (channel: string, handler: Listener) => {
        handlers[channel] = handler;
      },
    },
    protocol: {
      registerSchemesAsPrivileged: () => log.push('schemes'),
      handle: (_scheme: string, handler: Listener) => {
        guards.page = handler;
      },
    },
    shell: {
      openPath: async (file: string) => {
        log.push(`open ${file}`);
        return '';
      },
    },
    session: {
      defaultSession: {
        setPermissionRequestHandler: guard('request'),
        setPermissionCheckHandler: guard('check'),
        setDevicePermissionHandler: guard('device'),
        setDisplayMediaRequestHandler: guard('display'),
        webRequest: { onBeforeRequest: guard('network') },
      },
    },
    BrowserWindow: StubWindow,
  };
  // The one cast: a stub of Electron can be no more than the parts that are used.
  return stub as unknown as ElectronParts;
}

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'crownwheel-desktop-'));
  mkdirSync(join(folder, 'root'));
  writeFileSync(join(folder, 'root', 'index.html'), 'the window');
  writeFileSync(join(folder, 'secret.json'), '{}');
  shop = new FakeShop();
  hands = new Hands();
  [log, sent, begun, options] = [[], [], [], undefined];
  [appOn, contentsOn, windowOn, handlers, guards] = [{}, {}, {}, {}, {}];
  runDesktop(parts(), {
    root: join(folder, 'root'),
    preload: join(folder, 'preload.cjs'),
    open: async () => ({
      shop,
      hands,
      begin: async (body) => {
        begun.push(body);
        return { ok: true, output: { stage: 'none' } };
      },
      close: () => shop.close(),
    }),
    pickCopy: async () => '/media/stick/shop 2026-11-20',
    tell: (fault) => log.push(`tell ${String(fault)}`),
  });
  expect(log).toEqual(['sandbox', 'schemes']);
  await vi.waitFor(() => expect(log).toContain(`load ${ORIGIN}/`));
  appOn['web-contents-created']?.(...([{}, webContents] as never[]));
});

afterEach(() => rmSync(folder, { recursive: true }));

const ask = (channel: string, body?: unknown, frame: object | null = topFrame, sender: object = webContents) =>
  handlers[channel]?.(...([{ senderFrame: frame, sender }, body] as never[]));
const show = async (path: string) => (await guards.page?.(...([{ url: path }] as never[]))) as Response;

test('the window is sandboxed, isolated and shows our own pages', () => {
  expect(options?.webPreferences).toMatchObject({
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    webviewTag: false,
  });
  expect(log).toContain(`load ${ORIGIN}/`);
});

test('it opens no windows, goes nowhere else and holds no foreign page', () => {
  expect(guards.windowOpen?.()).toEqual({ action: 'deny' });
  for (const name of ['will-navigate', 'will-frame-navigate', 'will-redirect']) {
    const went = (url: string) => {
      let stopped = false;
      contentsOn[name]?.(...([{ url, preventDefault: () => (stopped = true) }] as never[]));
      return !stopped;
    };
    expect(went('https://evil.example/')).toBe(false);
    expect(went('file:///etc/passwd')).toBe(false);
    expect(went('app://crownwheel.evil/')).toBe(false);
    expect(went(`${ORIGIN}/`)).toBe(true);
  }
  let attached = true;
  contentsOn['will-attach-webview']?.(...([{ preventDefault: () => (attached = false) }] as never[]));
  expect(attached).toBe(false);
});

test('it has no permission and reaches nothing outside', () => {
  const answers: unknown[] = [];
  const take = (answer: unknown) => answers.push(answer);
  guards.request?.(...([{}, 'geolocation', take] as never[]));
  guards.display?.(...([{}, take] as never[]));
  for (const url of ['https://evil.example/x', 'http://127.0.0.1/', `${ORIGIN}/index.html`]) {
    guards.network?.(...([{ url }, take] as never[]));
  }
  expect(answers).toEqual([false, {}, { cancel: true }, { cancel: true }, { cancel: false }]);
  expect(guards.check?.()).toBe(false);
  expect(guards.device?.()).toBe(false);
});

test('its pages carry the policy and stay inside the folder', async () => {
  const page = await show(`${ORIGIN}/`);
  expect(await page.text()).toBe('the window');
  expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
  expect((await show(`${ORIGIN}/..%2fsecret.json`)).status).toBe(404);
  expect((await show(`${ORIGIN}/%zz`)).status).toBe(400);
  expect((await show('app://elsewhere/')).status).toBe(404);
});

test('only the top frame of the window is answered', async () => {
  const body = { operation: 'today.get', input: {} };
  const away = { ok: false, error: { code: 'turned-away', why: 'sender' } };
  expect(await ask(CHANNELS.call, body, null)).toEqual(away);
  expect(await ask(CHANNELS.call, body, { parent: {}, url: `${ORIGIN}/` })).toEqual(away);
  expect(await ask(CHANNELS.call, body, { parent: null, url: 'https://evil.example/' })).toEqual(away);
  expect(await ask(CHANNELS.call, body, topFrame, {})).toEqual(away);
  expect(await ask(CHANNELS.call, { ...body, personId: 'x' })).toMatchObject({ error: { why: 'shape' } });
  expect(shop.made).toEqual([]);
});

test('somebody enters, calls under that name, reads a paper, and leaves', async () => {
  expect(await ask(CHANNELS.enter, { person: 'Nadja', code: 'wrong' })).toMatchObject({ ok: false });
  expect(await ask(CHANNELS.paper, 'paper-1')).toMatchObject({ ok: false });
  await ask(CHANNELS.enter, { person: 'Nadja', code: '4711' });
  expect(await ask(CHANNELS.who)).toMatchObject({ output: { person: { name: 'Nadja' }, practice: true } });
  await ask(CHANNELS.call, { operation: 'today.get', input: {}, request: 'r1' });
  expect(shop.made.at(-1)).toMatchObject({
    caller: { personId: 'id-Nadja', device: 'desktop' },
    options: { request: 'r1' },
  });
  expect(await ask(CHANNELS.paper, '../../x')).toMatchObject({ error: { why: 'shape' } });
  expect(await ask(CHANNELS.paper, 'paper-1')).toEqual({ ok: true, output: {} });
  expect(readFileSync(join(folder, 'crownwheel-paper-1.pdf'), 'utf8')).toBe('%PDF-1.7 x');
  await ask(CHANNELS.leave);
  expect(await ask(CHANNELS.who)).toMatchObject({ output: { person: null } });
});

test('before there is a garage the window asks for a copy or the demo, in the shapes that there are', async () => {
  expect(await ask(CHANNELS.begin, { what: 'look', copy: '/media/stick/shop' })).toMatchObject({ ok: true });
  expect(begun).toEqual([{ what: 'look', copy: '/media/stick/shop' }]);
  for (const wrong of [{ what: 'remove' }, { what: 'look' }, { what: 'demo', folder: '/' }, null])
    expect(await ask(CHANNELS.begin, wrong)).toMatchObject({ ok: false, error: { why: 'shape' } });
  expect(await ask(CHANNELS.begin, { what: 'demo' }, null)).toMatchObject({ ok: false, error: { why: 'sender' } });
  expect(begun).toHaveLength(1);
  expect(await ask(CHANNELS.pickCopy)).toEqual({ ok: true, output: { path: '/media/stick/shop 2026-11-20' } });
});

test('the window hears what changed', async () => {
  await ask(CHANNELS.call, { operation: 'customer.add', input: {} });
  expect(sent).toEqual([[CHANNELS.change, ['customer']]]);
});

test('which cell is in hand is told under the name of whoever is working, and the others are heard', async () => {
  expect(await ask(CHANNELS.hand, { cell: 'line-1 price' })).toMatchObject({ error: { why: 'sign-in' } });
  await ask(CHANNELS.enter, { person: 'Nadja', code: '4711' });
  expect(await ask(CHANNELS.hand, { cell: 7 })).toMatchObject({ error: { why: 'shape' } });
  expect(await ask(CHANNELS.hand, { cell: 'line-1 price' })).toEqual({ ok: true, output: {} });
  const browser = {};
  expect(hands.others(browser)).toMatchObject([{ cell: 'line-1 price' }]);
  hands.take(browser, { name: 'Piet', cell: 'line-2 price' });
  expect(sent.at(-1)).toEqual([CHANNELS.hands, [{ name: 'Piet', cell: 'line-2 price' }]]);
  await ask(CHANNELS.leave);
  expect(hands.others(browser)).toEqual([]);
});

test('quitting waits for the shop to close, once', async () => {
  windowOn.closed?.();
  let stopped = 0;
  const quit = () => appOn['will-quit']?.(...([{ preventDefault: () => stopped++ }] as never[]));
  quit();
  await vi.waitFor(() => expect(log).toContain('quit'));
  quit();
  expect([stopped, shop.closed, log.filter((said) => said === 'quit').length]).toEqual([1, 1, 2]);
});

test('the bridge names its own channels and keeps the event to itself', async () => {
  const invoked: unknown[] = [];
  let hear: Listener | undefined;
  const ipc = {
    invoke: async (...args: unknown[]) => invoked.push(args),
    on: (_name: string, listener: Listener) => {
      hear = listener;
    },
    off: () => {
      hear = undefined;
    },
  };
  const bridge = makeBridge(ipc as never);
  await bridge.call({ operation: 'x' });
  await bridge.enter('Nadja', '4711');
  expect(invoked).toEqual([
    [CHANNELS.call, { operation: 'x' }],
    [CHANNELS.enter, { person: 'Nadja', code: '4711' }],
  ]);
  const heard: unknown[] = [];
  const stop = bridge.onChange((...args) => heard.push(args));
  hear?.(...([{ sender: 'secret' }, ['car']] as never[]));
  stop();
  expect(heard).toEqual([[['car']]]);
  expect(hear).toBeUndefined();
});
