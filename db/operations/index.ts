import type { Handlers } from '../context.ts';
import { accountHandlers } from './account.ts';
import { benchHandlers } from './bench.ts';
import { benchPapersHandlers } from './bench-papers.ts';
import { bookVersionsHandlers } from './book-versions.ts';
import { bookingHandlers } from './booking.ts';
import { capacityHandlers } from './capacity.ts';
import { careHandlers } from './care.ts';
import { checkHandlers } from './check.ts';
import { closeOutHandlers } from './close-out.ts';
import { comebackHandlers } from './comeback.ts';
import { creditNoteHandlers } from './credit-note.ts';
import { customerHandlers } from './customer.ts';
import { customerJoinHandlers } from './customer-join.ts';
import { deskHandlers } from './desk.ts';
import { dropOffHandlers } from './drop-off.ts';
import { exportHandlers } from './export.ts';
import { findHandlers } from './find.ts';
import { findingHandlers } from './finding.ts';
import { fluidHandlers } from './fluid.ts';
import { historyHandlers } from './history.ts';
import { importHandlers } from './import.ts';
import { jobBookHandlers } from './job-book.ts';
import { keysAndStorageHandlers } from './keys-and-storage.ts';
import { listHandlers } from './lists.ts';
import { markHandlers } from './mark.ts';
import { messageHandlers } from './message.ts';
import { moneyHandlers } from './money.ts';
import { ordersHandlers } from './orders.ts';
import { paperListHandlers } from './paper-lists.ts';
import { paperHandlers } from './papers.ts';
import { paymentHandlers } from './payment.ts';
import { photoHandlers } from './photo.ts';
import { plateAndOwnerHandlers } from './plate-and-owner.ts';
import { privacyHandlers } from './privacy.ts';
import { quarantineHandlers } from './quarantine.ts';
import { quoteHandlers } from './quotes.ts';
import { releaseHandlers } from './release.ts';
import { reminderHandlers } from './reminder.ts';
import { sampleHandlers } from './sample.ts';
import { sheetHandlers } from './sheet.ts';
import { shopHandlers } from './shop.ts';
import { shopListsHandlers } from './shop-lists.ts';
import { statementHandlers } from './statement.ts';
import { stepHandlers } from './step.ts';
import { stockHandlers } from './stock.ts';
import { stockListHandlers } from './stock-list.ts';
import { stockStillHandlers } from './stock-still.ts';
import { storageHandlers } from './storage.ts';
import { todayHandlers } from './today.ts';
import { torqueHandlers } from './torque.ts';
import { workSheetHandlers } from './work-sheet.ts';
import { wrenchHandlers } from './wrench.ts';
import { yesHandlers } from './yes.ts';

/** Every operation's handler. */
export const handlers: Handlers = {
  ...shopHandlers,
  ...deskHandlers,
  ...customerHandlers,
  ...accountHandlers,
  ...privacyHandlers,
  ...customerJoinHandlers,
  ...findHandlers,
  ...findingHandlers,
  ...sheetHandlers,
  ...yesHandlers,
  ...plateAndOwnerHandlers,
  ...bookingHandlers,
  ...capacityHandlers,
  ...ordersHandlers,
  ...exportHandlers,
  ...importHandlers,
  ...dropOffHandlers,
  ...markHandlers,
  ...messageHandlers,
  ...keysAndStorageHandlers,
  ...storageHandlers,
  ...reminderHandlers,
  ...historyHandlers,
  ...closeOutHandlers,
  ...moneyHandlers,
  ...statementHandlers,
  ...paperListHandlers,
  ...benchHandlers,
  ...stepHandlers,
  ...torqueHandlers,
  ...quarantineHandlers,
  ...releaseHandlers,
  ...comebackHandlers,
  ...wrenchHandlers,
  ...stockHandlers,
  ...jobBookHandlers,
  ...bookVersionsHandlers,
  ...listHandlers,
  ...paperHandlers,
  ...creditNoteHandlers,
  ...paymentHandlers,
  ...quoteHandlers,
  ...todayHandlers,
  ...careHandlers,
  ...stockListHandlers,
  ...stockStillHandlers,
  ...shopListsHandlers,
  ...photoHandlers,
  ...fluidHandlers,
  ...sampleHandlers,
  ...checkHandlers,
  ...workSheetHandlers,
  ...benchPapersHandlers,
};
