// Stands in for Electron where the desktop's bundle is run by Node: it opens the window, asks one thing, and quits.
const listeners = {};
const handlers = {};
let serve;
let preload;

const quit = () => {
  let stopped = false;
  listeners['will-quit']?.({
    preventDefault: () => {
      stopped = true;
    },
  });
  if (!stopped) process.exit(0);
};

export const app = {
  setName: () => {},
  enableSandbox: () => {},
  whenReady: () => Promise.resolve(),
  on: (name, listener) => {
    listeners[name] = listener;
  },
  quit,
  exit: (code) => process.exit(code),
  getPath: () => '.',
};
export const protocol = {
  registerSchemesAsPrivileged: () => {},
  handle: (_scheme, handler) => {
    serve = handler;
  },
};
export const ipcMain = {
  handle: (channel, handler) => {
    handlers[channel] = handler;
  },
};
const nothing = () => {};
export const session = {
  defaultSession: {
    setPermissionRequestHandler: nothing,
    setPermissionCheckHandler: nothing,
    setDevicePermissionHandler: nothing,
    setDisplayMediaRequestHandler: nothing,
    webRequest: { onBeforeRequest: nothing },
  },
};
export const shell = { openPath: async () => '' };
export const dialog = { showErrorBox: (_title, words) => process.stderr.write(words) };
export const contextBridge = {};
export const ipcRenderer = {};

export class BrowserWindow {
  webContents = { send: nothing, on: nothing, setWindowOpenHandler: nothing };
  #on = {};
  constructor(options) {
    preload = options.webPreferences.preload;
  }
  once(name, listener) {
    this.#on[name] = listener;
  }
  show() {}
  async loadURL(url) {
    const page = await (await serve({ url })).text();
    const event = { senderFrame: { parent: null, url }, sender: this.webContents };
    const { output } = await handlers['shop:call'](event, { operation: 'shop.get', input: {} });
    process.stdout.write(JSON.stringify({ page, preload, isSetUp: output.isSetUp, practice: output.practice }));
    this.#on.closed();
  }
}
