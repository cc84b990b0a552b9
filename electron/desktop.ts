// Electron's binary cannot be had on the machine where this is built: this file is type-checked and tested against a
// stub, and was never run here.
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type {
  App,
  BrowserWindow,
  BrowserWindowConstructorOptions,
  IpcMain,
  IpcMainInvokeEvent,
  Protocol,
  Session,
  Shell,
  WebContents,
} from 'electron';
import {
  type BeginBody,
  beginBody,
  callBody,
  type DoorAnswer,
  enterBody,
  enterOutput,
  handBody,
  paperId,
  paperOutput,
} from './bodies.ts';
import { CHANNELS } from './channels.ts';
import type { Shop } from './dispatch.ts';
import type { Hands } from './hands.ts';
import { findPage, GUARDS } from './pages.ts';
import type { Entered } from './sessions.ts';

/** The parts of Electron that are used, handed in: importing the package outside Electron starts a download. */
export interface ElectronParts {
  readonly app: App;
  readonly ipcMain: IpcMain;
  readonly protocol: Protocol;
  readonly shell: Pick<Shell, 'openPath'>;
  readonly session: { readonly defaultSession: Session };
  readonly BrowserWindow: new (options: BrowserWindowConstructorOptions) => BrowserWindow;
}

export interface DesktopSettings {
  /** The folder of the built window. */
  readonly root: string;
  /** The file of the built preload. */
  readonly preload: string;
  /** Opens the shop; called once the program may run. */
  open(): Promise<{
    shop: Shop;
    hands: Hands;
    begin(body: BeginBody): Promise<DoorAnswer>;
    close(): Promise<void>;
  }>;
  /** Lets somebody pick a copy, a folder or a file of one; null where they picked none. */
  pickCopy(): Promise<string | null>;
  /** Says in a box why the shop cannot be opened. */
  tell(fault: unknown): void;
}

export const ORIGIN = 'app://crownwheel';

const isOurs = (url: string) => url.startsWith(`${ORIGIN}/`);

/** Runs the desktop window. Call it before anything is awaited: schemes and the sandbox are settled before `ready`. */
export function runDesktop(parts: ElectronParts, settings: DesktopSettings): void {
  const { app, protocol } = parts;
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  app.on('web-contents-created', (_event, contents) => confine(contents));
  app.whenReady().then(
    () => openWindow(parts, settings).catch((fault: unknown) => stop(parts, settings, fault)),
    (fault: unknown) => stop(parts, settings, fault),
  );
}

function stop(parts: ElectronParts, settings: DesktopSettings, fault: unknown): void {
  settings.tell(fault);
  parts.app.exit(1);
}

async function openWindow(parts: ElectronParts, settings: DesktopSettings): Promise<void> {
  const { app, protocol } = parts;
  denyAll(parts.session.defaultSession);
  protocol.handle('app', (request) => page(settings.root, request.url));
  const opened = await settings.open();
  const { shop, hands, close } = opened;
  const window = new parts.BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 800,
    minHeight: 600,
    title: 'Crownwheel',
    show: false,
    webPreferences: {
      preload: settings.preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
      navigateOnDragDrop: false,
    },
  });
  const stopListening = shop.onChange((rooms) => window.webContents.send(CHANNELS.change, rooms));
  const stopHands = hands.onMove(() => window.webContents.send(CHANNELS.hands, hands.others(window)));
  serve(parts, shop, hands, window, { begin: (body) => opened.begin(body), pickCopy: () => settings.pickCopy() });
  window.once('ready-to-show', () => window.show());
  window.once('closed', () => {
    stopListening();
    stopHands();
    hands.take(window, null);
    app.quit();
  });
  let closed = false;
  app.on('will-quit', (event) => {
    if (closed) return;
    event.preventDefault();
    closed = true;
    close().then(
      () => app.quit(),
      (fault: unknown) => stop(parts, settings, fault),
    );
  });
  await window.loadURL(`${ORIGIN}/`);
}

/** The window goes nowhere else, opens nothing and holds no foreign page. */
function confine(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  const keep = (details: { url: string; preventDefault(): void }) => {
    if (!isOurs(details.url)) details.preventDefault();
  };
  contents.on('will-navigate', keep);
  contents.on('will-frame-navigate', keep);
  contents.on('will-redirect', keep);
  contents.on('will-attach-webview', (event) => event.preventDefault());
}

/** No permission, no device, no screen, and no request that leaves the program. */
function denyAll(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}));
  session.webRequest.onBeforeRequest((details, answer) =>
    answer({ cancel: !isOurs(details.url) && !details.url.startsWith('data:') && !details.url.startsWith('blob:') }),
  );
}

async function page(root: string, url: string): Promise<Response> {
  const nothing = (status: number) => new Response(null, { status, headers: { ...GUARDS } });
  if (!isOurs(url)) return nothing(404);
  let path: string;
  try {
    path = decodeURIComponent(new URL(url).pathname);
  } catch {
    return nothing(400);
  }
  const found = path.includes('\0') ? null : findPage(root, path);
  if (found === null) return nothing(404);
  return new Response(await readFile(found.file), { headers: { ...GUARDS, 'content-type': found.type } });
}

/** What a window asks before there is a garage. */
interface FirstStart {
  begin(body: BeginBody): Promise<DoorAnswer>;
  pickCopy(): Promise<string | null>;
}

/** Answers the window's own top frame, and nobody else. */
function serve(parts: ElectronParts, shop: Shop, hands: Hands, window: BrowserWindow, first: FirstStart): void {
  let entered: Entered | null = null;
  const caller = () => ({ personId: entered?.personId ?? null, device: 'desktop' });
  const turnedAway = (why: string): DoorAnswer => ({ ok: false, error: { code: 'turned-away', why } });

  const answer = (channel: string, work: (sent: unknown) => Promise<DoorAnswer>) =>
    parts.ipcMain.handle(channel, async (event: IpcMainInvokeEvent, sent: unknown) => {
      const frame = event.senderFrame;
      const own = frame !== null && frame.parent === null && isOurs(frame.url) && event.sender === window.webContents;
      return own ? work(sent) : turnedAway('sender');
    });

  answer(CHANNELS.call, async (sent) => {
    const read = callBody.safeParse(sent);
    if (!read.success) return turnedAway('shape');
    const { operation, input, request, at } = read.data;
    const options = { ...(request === undefined ? {} : { request }), ...(at === undefined ? {} : { at }) };
    return shop.call(operation, input, caller(), options);
  });
  answer(CHANNELS.enter, async (sent) => {
    const read = enterBody.safeParse(sent);
    if (!read.success) return turnedAway('shape');
    const result = await shop.enter(read.data.person, read.data.code);
    hands.take(window, null);
    if (result.ok) entered = enterOutput.parse(result.output);
    return result;
  });
  answer(CHANNELS.leave, async () => {
    entered = null;
    hands.take(window, null);
    return { ok: true, output: {} };
  });
  answer(CHANNELS.hand, async (sent) => {
    const read = handBody.safeParse(sent);
    if (!read.success) return turnedAway('shape');
    if (entered === null) return turnedAway('sign-in');
    const { cell } = read.data;
    hands.take(window, cell === null ? null : { name: entered.name, cell });
    return { ok: true, output: {} };
  });
  answer(CHANNELS.begin, async (sent) => {
    const read = beginBody.safeParse(sent);
    if (!read.success) return turnedAway('shape');
    const answered = await first.begin(read.data);
    if (answered.ok) entered = null;
    return answered;
  });
  answer(CHANNELS.pickCopy, async () => ({ ok: true, output: { path: await first.pickCopy() } }));
  answer(CHANNELS.who, async () => ({
    ok: true,
    output: { person: entered, practice: shop.practice, folder: shop.folder },
  }));
  answer(CHANNELS.paper, async (sent) => {
    const id = paperId.safeParse(sent);
    if (!id.success) return turnedAway('shape');
    const read = await shop.call('paper.read', { id: id.data }, caller());
    if (!read.ok) return read;
    const file = join(parts.app.getPath('temp'), `crownwheel-${id.data}.pdf`);
    await writeFile(file, Buffer.from(paperOutput.parse(read.output).base64, 'base64'), { mode: 0o600 });
    const problem = await parts.shell.openPath(file);
    return problem === '' ? { ok: true, output: {} } : turnedAway('no-reader');
  });
}
