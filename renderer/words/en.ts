import { account } from './en/account.ts';
import { bay } from './en/bay.ts';
import { bench } from './en/bench.ts';
import { bringIn } from './en/bring-in.ts';
import { cars } from './en/cars.ts';
import { closeOut } from './en/close-out.ts';
import { contact } from './en/contact.ts';
import { customers } from './en/customers.ts';
import { decision } from './en/decision.ts';
import { edit } from './en/edit.ts';
import { errors } from './en/errors.ts';
import { fluids } from './en/fluids.ts';
import { found } from './en/found.ts';
import { frame } from './en/frame.ts';
import { held } from './en/held.ts';
import { intake } from './en/intake.ts';
import { jobBook } from './en/job-book.ts';
import { keys } from './en/keys.ts';
import { lab } from './en/lab.ts';
import { leave } from './en/leave.ts';
import { money } from './en/money.ts';
import { next } from './en/next.ts';
import { orders } from './en/orders.ts';
import { own } from './en/own-rules.ts';
import { papers } from './en/papers.ts';
import { parts } from './en/parts.ts';
import { plan } from './en/plan.ts';
import { privacy } from './en/privacy.ts';
import { quote } from './en/quote.ts';
import { reckoning } from './en/reckoning.ts';
import { release } from './en/release.ts';
import { reminders } from './en/reminders.ts';
import { rules } from './en/rules.ts';
import { sheet } from './en/sheet.ts';
import { shop } from './en/shop.ts';
import { start } from './en/start.ts';
import { statement } from './en/statement.ts';
import { stock } from './en/stock.ts';
import { terms } from './en/terms.ts';
import { today } from './en/today.ts';
import { tools } from './en/tools.ts';
import { warnings } from './en/warnings.ts';

/** Every word shown, in English, by the place that shows it. */
export const en = {
  bay,
  bench,
  bringIn,
  cars,
  closeOut,
  account,
  privacy,
  contact,
  customers,
  decision,
  edit,
  errors,
  fluids,
  found,
  frame,
  held,
  intake,
  jobBook,
  keys,
  leave,
  lab,
  money,
  statement,
  next,
  orders,
  own,
  papers,
  parts,
  plan,
  quote,
  reckoning,
  rules,
  release,
  reminders,
  sheet,
  shop,
  start,
  stock,
  terms,
  tools,
  today,
  warnings,
};
