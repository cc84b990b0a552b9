// The only thing of the program that the desktop's window can touch. Bundled by vite.main.config.ts as CommonJS, since a
// sandboxed preload can be nothing else. Never run where this is built.
import { contextBridge, ipcRenderer } from 'electron';
import { makeBridge } from './bridge.ts';

contextBridge.exposeInMainWorld('crownwheel', makeBridge(ipcRenderer));
