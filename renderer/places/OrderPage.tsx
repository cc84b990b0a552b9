import { useState } from 'react';
import { Bench } from '../bench/Bench.tsx';
import { CloseOutPage } from '../close-out/CloseOutPage.tsx';
import { useKey } from '../frame/keys.ts';
import { goTo } from '../frame/router.ts';
import { TwoSides } from '../frame/TwoSides.tsx';
import { BeforeItGoes } from '../papers/BeforeItGoes.tsx';
import { InvoicedPage } from '../papers/InvoicedPage.tsx';
import { Papers } from '../papers/Papers.tsx';
import { Payments } from '../papers/Payments.tsx';
import { newestPaper } from '../papers/paper-name.ts';
import { Button } from '../parts/Button.tsx';
import { FootBar } from '../parts/FootBar.tsx';
import { Loading } from '../parts/Loading.tsx';
import { OnAccount } from '../sheet/OnAccount.tsx';
import { OrderActs } from '../sheet/OrderActs.tsx';
import { invoiceOf } from '../sheet/order.ts';
import { QuotePage } from '../sheet/quote/QuotePage.tsx';
import { Sheet } from '../sheet/Sheet.tsx';
import { Wrong } from '../sheet/Wrong.tsx';
import { YesPage } from '../sheet/yes/YesPage.tsx';
import { useSession } from '../state/session.ts';
import { printPaper } from '../state/transport.ts';
import { useAsk } from '../state/use-ask.ts';
import { t } from '../words/t.ts';
import { OrderContact } from './contact/OrderContact.tsx';
import '../sheet/sheet.css';
import '../sheet/beside.css';
import '../sheet/edit/edit.css';
import '../papers/papers.css';

interface Props {
  readonly id: string;
  /** What stands beside the sheet: '', 'yes', 'close-out', 'job-B' for the bench at a job, or 'invoice' when it was made just now. */
  readonly beside: string;
}

/** One order: its sheet as paper, and beside it the bench, the form of a yes, the close-out, or what follows the invoice. */
export function OrderPage({ id, beside }: Props) {
  const asked = useAsk('order.get', { id });
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  const [current, setCurrent] = useState<string | null>(null);
  const toYes = () => goTo('orders', id, 'yes');
  const toCloseOut = () => goTo('orders', id, 'close-out');
  const order = asked.data;
  const newest = order === undefined || !desk ? undefined : newestPaper(order);
  const closing = order?.next.what.startsWith('close-out') ?? false;
  const plain =
    desk && (beside === '' || beside.startsWith('job-')) && order !== undefined && invoiceOf(order) === undefined;
  useKey('Alt+Y', toYes, desk);
  useKey('Ctrl+Enter', closing ? toCloseOut : toYes, plain);
  useKey('Alt+P', () => newest !== undefined && printPaper(newest.id), newest !== undefined);
  if (order === undefined)
    return asked.error === null ? (
      asked.loading ? (
        <Loading rows={10} />
      ) : null
    ) : (
      <div className="page">
        <Wrong error={asked.error} />
      </div>
    );
  const invoice = invoiceOf(order);
  const quoted = order.papers.some((paper) => paper.kind === 'quote');
  const job =
    order.jobs.find((one) => one.id === current) ??
    order.jobs.find((one) => beside === `job-${one.letter}`) ??
    order.jobs.find((one) => one.covered) ??
    order.jobs[0];
  if (desk && invoice !== undefined)
    return <InvoicedPage order={order} invoice={invoice} fresh={beside === 'invoice'} />;
  const form = desk ? beside : '';
  if (form === 'yes') return <YesPage order={order} />;
  if (form === 'quote') return <QuotePage order={order} current={job?.id} onCurrent={setCurrent} />;
  if (form === 'close-out') return <CloseOutPage order={order} />;
  return (
    <TwoSides
      sheetLabel={`${t('sheet.order')} ${order.number}`}
      sheet={<Sheet order={order} locked={!desk || invoice !== undefined} current={job?.id} onCurrent={setCurrent} />}
      benchLabel={t('bench.title')}
      {...(desk ? {} : { onBench: () => goTo('orders', id, job === undefined ? 'bay' : `bay-${job.letter}`) })}
      bench={
        <>
          <OnAccount order={order} />
          <Bench order={order} job={job} onJob={setCurrent} />
          {desk ? (
            <>
              <Payments order={order} />
              <Papers order={order} />
              <BeforeItGoes order={order} />
              <OrderActs order={order} />
              <OrderContact order={order} />
            </>
          ) : null}
        </>
      }
      foot={
        <FootBar yes={order.yes}>
          {!desk ? null : (
            <>
              <Button onClick={() => goTo('orders', id, 'quote')}>
                {t(quoted ? 'sheet.quoteAgain' : 'sheet.quote')}
              </Button>
              <Button kind={closing ? 'plain' : 'go'} onClick={toYes} keys="Alt+Y">
                {t('decision.record')}
              </Button>
              <Button
                kind={closing ? 'go' : 'plain'}
                onClick={toCloseOut}
                {...(closing ? { keys: 'Ctrl+Enter' as const } : {})}
              >
                {t('sheet.closeOut')}
              </Button>
            </>
          )}
        </FootBar>
      }
    />
  );
}
