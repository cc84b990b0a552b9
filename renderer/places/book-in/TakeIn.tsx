import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { holdUnread } from '../../parts/unread.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { AgreedRow } from './AgreedRow.tsx';
import { draftOfOrder } from './coming.ts';
import { DoorRow } from './DoorRow.tsx';
import { saveSlip } from './DropOffSlip.tsx';
import { type Draft, errorsOf } from './draft.ts';
import { Mileage } from './Mileage.tsx';
import { refusedAt } from './refused.ts';
import { Since } from './Since.tsx';
import { Talk } from './Talk.tsx';
import { useBookIn } from './use-book-in.ts';

type Order = OutputOf<'order.get'>;

/** A car that was booked before comes: what is taken over at the door and agreed there. Where it is here already, its order. */
export function TakeIn({ orderId }: { readonly orderId: string }) {
  const writing = useWriting();
  const { data, error } = useAsk('order.get', { id: orderId });
  if (error && !data) return <Empty>{errorSentence(error, writing)}</Empty>;
  // The page goes on with the order as it was when it began: what changes by its own steps does not begin it anew.
  return data === undefined ? null : <TakingIn start={data} />;
}

function TakingIn({ start }: { readonly start: Order }) {
  const writing = useWriting();
  const [order] = useState(start);
  const [draft, setDraft] = useState<Draft>(() => draftOfOrder(order, writing));
  const [tried, setTried] = useState(false);
  const book = useBookIn(order);
  const error = book.stopped?.error ?? null;
  const doubted = error?.code === 'held' && error.reasons.some((reason) => reason.what === 'mileage-lower');
  const refused = error?.code === 'bad-input' ? refusedAt(error.fields) : null;
  const errors = {
    ...(tried ? errorsOf(draft, writing) : {}),
    ...refused?.errors,
    ...(doubted && draft.doubt === 'none' ? { doubt: t('intake.doubtNeeded') } : {}),
  };
  const change = (part: Partial<Draft>) => {
    if (part.mileage !== undefined) book.clear();
    // It comes now: that it is still to come is no answer here.
    setDraft((before) => ({ ...before, ...part, here: true }));
  };
  const go = async (withSlip: boolean) => {
    setTried(true);
    if (book.busy || holdUnread()) return;
    if (Object.keys(errorsOf(draft, writing)).length > 0) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('.talk [aria-invalid="true"]')?.focus());
      return;
    }
    const id = await book.run(draft);
    if (id === null) return;
    // The order itself stands: a slip that could not be made is asked for there again.
    if (withSlip) await saveSlip(id);
    goTo('orders', id);
  };
  useKey('Ctrl+Enter', () => void go(false));
  useKey('Esc', () => {
    const here = document.activeElement;
    if (here instanceof HTMLElement && here.closest('.talk') !== null) here.blur();
    else goTo('orders', order.id);
  });
  const stopped =
    book.booked === null
      ? t('intake.notTakenIn')
      : t(`intake.stopped-${book.stopped?.step ?? 'book'}`, { number: order.number });
  return (
    <Page
      title={t('intake.takeIn')}
      words={t('intake.takeInOrder', { number: order.number })}
      actions={<Since />}
      foot={
        <>
          {error === null || doubted ? null : (
            <Notice what={stopped}>{refused?.elsewhere.join(' ') || errorSentence(error, writing)}</Notice>
          )}
          <div className="place-foot">
            <p>
              <b>
                {t(draft.night ? 'intake.footNight' : 'intake.footHere', {
                  who: draft.name,
                  car: draft.plate || draft.words,
                })}
              </b>
            </p>
            <Button onClick={() => void go(true)} disabled={book.busy}>
              {t('intake.takeInSlip')}
            </Button>
            <Button kind="go" keys="Ctrl+Enter" onClick={() => void go(false)} disabled={book.busy}>
              {t('intake.takeInGo')}
            </Button>
          </div>
        </>
      }
    >
      <div className="book-in">
        <div>
          <Talk head={t('intake.car')}>
            <p>
              {order.car.plate === '' ? null : <Plate plate={order.car.plate} />} {order.car.words},{' '}
              {order.customer.name}{' '}
              <a className="link" href={hrefOf('orders', order.id)}>
                {t('plan.openOrder')}
              </a>
            </p>
            <p className="said">{order.complaint}</p>
            <Mileage draft={draft} change={change} errors={errors} doubted={doubted} />
          </Talk>
          <AgreedRow draft={draft} change={change} errors={errors} />
        </div>
        <div className="book-in-door">
          <DoorRow draft={draft} change={change} errors={errors} coming={false} />
        </div>
      </div>
    </Page>
  );
}
