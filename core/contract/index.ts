import type { z } from 'zod';
import { accountRoom } from './account.ts';
import { benchRoom } from './bench.ts';
import { benchPapersRoom } from './bench-papers.ts';
import { bookVersionsRoom } from './book-versions.ts';
import { bookingRoom } from './booking.ts';
import { checkRoom } from './check.ts';
import { closeOutRoom } from './close-out.ts';
import { customerRoom } from './customer.ts';
import { deskRoom } from './desk.ts';
import { dropOffRoom } from './drop-off.ts';
import { exportRoom } from './export.ts';
import { fluidRoom } from './fluid.ts';
import { importRoom } from './import.ts';
import { markRoom } from './mark.ts';
import { messageRoom } from './message.ts';
import { moneyRoom } from './money.ts';
import { ordersRoom } from './orders.ts';
import { photoRoom } from './photo.ts';
import { privacyRoom } from './privacy.ts';
import { quotesRoom } from './quotes.ts';
import { releaseRoom } from './release.ts';
import { reminderRoom } from './reminder.ts';
import { sampleRoom } from './sample.ts';
import { sheetRoom } from './sheet.ts';
import { shopRoom } from './shop.ts';
import { shopListsRoom } from './shop-lists.ts';
import { statementRoom } from './statement.ts';
import { stockRoom } from './stock.ts';
import { todayRoom } from './today.ts';
import { torqueRoom } from './torque.ts';
import { workSheetRoom } from './work-sheet.ts';

/** Every operation of the program. Every door goes through this map. */
export const operations = {
  ...shopRoom,
  ...deskRoom,
  ...sheetRoom,
  ...bookingRoom,
  ...customerRoom,
  ...accountRoom,
  ...ordersRoom,
  ...exportRoom,
  ...importRoom,
  ...dropOffRoom,
  ...markRoom,
  ...messageRoom,
  ...reminderRoom,
  ...privacyRoom,
  ...releaseRoom,
  ...closeOutRoom,
  ...moneyRoom,
  ...statementRoom,
  ...quotesRoom,
  ...benchRoom,
  ...bookVersionsRoom,
  ...stockRoom,
  ...torqueRoom,
  ...shopListsRoom,
  ...todayRoom,
  ...photoRoom,
  ...fluidRoom,
  ...sampleRoom,
  ...checkRoom,
  ...workSheetRoom,
  ...benchPapersRoom,
};

export type Operations = typeof operations;
export type OperationName = keyof Operations;
/** What a caller hands in. */
export type InputOf<N extends OperationName> = z.input<Operations[N]['input']>;
/** What the handler gets, with defaults filled in. */
export type ParsedInputOf<N extends OperationName> = z.output<Operations[N]['input']>;
export type OutputOf<N extends OperationName> = z.output<Operations[N]['output']>;
