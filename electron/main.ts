// The desktop's entry, bundled by vite.main.config.ts and run by Electron only. Never run where this is built.
import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, protocol, session, shell } from 'electron';
import { copiesOf } from './copies.ts';
import { runDesktop } from './desktop.ts';
import { shopFolder } from './folder.ts';
import { openWithDoor } from './open.ts';
import { sayCopies, sayFault } from './words.ts';

const folder = shopFolder(undefined);
const built = import.meta.dirname;

app.setName('Crownwheel');
runDesktop(
  { app, BrowserWindow, ipcMain, protocol, session, shell },
  {
    root: join(built, '../renderer'),
    preload: join(built, 'preload.cjs'),
    open: async () => {
      const { standing, hands, begin, close } = await openWithDoor({
        folder,
        practice: process.env.CROWNWHEEL_PRACTICE === '1',
        root: join(built, '../renderer'),
      });
      return { shop: standing, hands, begin, close };
    },
    pickCopy: async () => {
      const { filePaths } = await dialog.showOpenDialog({ properties: ['openFile', 'openDirectory'] });
      return filePaths[0] ?? null;
    },
    tell: (fault) => dialog.showErrorBox('Crownwheel', `${sayFault(fault, folder)}\n\n${sayCopies(copiesOf(folder))}`),
  },
);
