import { exposureOf, willOwe } from '../../core/books/exposure.ts';
import { sum } from '../../core/money/money.ts';
import { accountOf, orderAgainst, passes, readAccount, said } from '../account.ts';
import type { Handlers } from '../context.ts';
import { newId } from '../id.ts';
import { loadOrder } from '../order/load.ts';
import { signedIn } from '../people.ts';
import { held, notFound } from '../refusal.ts';
import { standingCustomer } from './customer.ts';

export const accountHandlers: Handlers = {
  'customer.credit': async ({ id }, context) => {
    const accountId = await standingCustomer(context, id);
    const row = await context.tx
      .selectFrom('customer')
      .select('credit_limit')
      .where('id', '=', accountId)
      .executeTakeFirst();
    if (!row) throw notFound('customer', id);
    const account = await readAccount(context, accountId);
    const { openInvoices, orders } = account;
    const limit = row.credit_limit;
    const authorised = sum(said(orders).map(willOwe));
    const asked = sum(orders.map((one) => one.asked));
    const { over } = exposureOf({ openInvoices, authorised, newJob: asked }, limit === null ? null : sum([limit]));
    return {
      ...{ limit, openInvoices, authorised, asked, over },
      orders: orders.map((one) => ({
        ...{ orderId: one.orderId, number: one.number, upTo: one.upTo, asked: one.asked },
        held: limit !== null && orderAgainst(account, one.orderId, limit).held,
        pass: one.pass && passes(one) ? { by: one.pass.by, at: one.pass.at, reason: one.pass.reason } : null,
      })),
    };
  },
  'credit.letPass': async ({ orderId, reason }, context) => {
    const loaded = await loadOrder(context, orderId);
    const account = accountOf(loaded);
    const limit = account.credit_limit;
    const against = limit === null ? null : orderAgainst(await readAccount(context, account.id), orderId, limit);
    if (limit === null || !against?.held || against.order === undefined)
      throw held([{ what: 'inside-credit-limit', with: {} }]);
    const id = newId();
    await context.write.insert('credit_pass', {
      ...{ id, work_order_id: orderId, customer_id: account.id, up_to: against.order.upTo },
      ...{ exposure: against.exposure, credit_limit: limit, reason },
      ...{ person_id: signedIn(context).id, at: context.now },
    });
    return { id };
  },
};
