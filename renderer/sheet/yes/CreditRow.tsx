import { exposureOf } from '../../../core/books/exposure.ts';
import { money } from '../../../core/money/money.ts';
import { CreditBar } from '../../parts/CreditBar.tsx';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { FormProps } from './YesForm.tsx';

/** Where the yes that is being recorded would put the account that pays; nothing where it has no limit. */
export function CreditRow({ order, ceiling }: FormProps) {
  const writing = useWriting();
  const { credit } = order;
  const account = useAsk('customer.credit', credit === null ? null : { id: credit.accountId }).data;
  if (credit === null || account === undefined || account.limit === null) return null;
  const mine = account.orders.find((one) => one.orderId === order.id)?.upTo ?? 0;
  const paid = order.payments.reduce((sum, one) => sum + one.amount, 0);
  const owes = (upTo: number) => Math.max(0, upTo - paid);
  const others = account.authorised - owes(mine);
  const now = owes(ceiling ?? mine);
  const debt = { openInvoices: money(account.openInvoices), authorised: money(others), newJob: money(now) };
  const { over } = exposureOf(debt, money(account.limit));
  return (
    <section>
      <h3>{t('account.title')}</h3>
      <div>
        <CreditBar owed={account.openInvoices} saidYes={others} asked={now} limit={account.limit} />
        {over === 0 ? null : (
          <p className="small">
            <b className="in-stop">{t('account.over', { name: credit.name, over: amountText(over, writing) })}</b>{' '}
            {t('account.yesStands')}
          </p>
        )}
      </div>
    </section>
  );
}
