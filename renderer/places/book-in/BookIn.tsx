import { useEffect, useState } from 'react';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { holdUnread } from '../../parts/unread.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { AgreedRow } from './AgreedRow.tsx';
import { CarRow } from './CarRow.tsx';
import { DoorRow } from './DoorRow.tsx';
import { saveSlip } from './DropOffSlip.tsx';
import { type Draft, emptyDraft, errorsOf } from './draft.ts';
import { knownCar, knownCustomer } from './known.ts';
import { readBack } from './read-back.ts';
import { refusedAt } from './refused.ts';
import { SayRow } from './SayRow.tsx';
import { Since } from './Since.tsx';
import { useBookIn } from './use-book-in.ts';
import { WhenRow } from './WhenRow.tsx';
import { WhoRow } from './WhoRow.tsx';

interface Props {
  /** Somebody or some car that the page begins with: 'car' or 'customer', and its id. */
  readonly with?: readonly string[];
}

/** Booking a car in, in the order the talk goes. Ctrl Enter books; then the order opens. */
export function BookIn({ with: [kind, id] = [] }: Props) {
  const shop = useShop();
  const writing = useWriting();
  const book = useBookIn();
  const [draft, setDraft] = useState<Draft>(() => emptyDraft(shop?.settings?.distance ?? 'km'));
  const [tried, setTried] = useState(false);
  const change = (part: Partial<Draft>) => {
    // Another figure, another car: what the shop doubted no longer stands.
    if (part.mileage !== undefined || part.carId !== undefined) book.clear();
    setDraft((before) => ({ ...before, ...part }));
  };

  const error = book.stopped?.error ?? null;
  useEffect(() => {
    if (kind === undefined || id === undefined) return;
    void (kind === 'car' ? knownCar(id) : knownCustomer(id, null)).then((known) => {
      if (known !== null) setDraft((before) => ({ ...before, ...known }));
    });
  }, [kind, id]);

  const doubted = error?.code === 'held' && error.reasons.some((reason) => reason.what === 'mileage-lower');
  const refused = error?.code === 'bad-input' ? refusedAt(error.fields) : null;
  const errors = {
    ...(tried ? errorsOf(draft, writing) : {}),
    ...refused?.errors,
    ...(doubted && draft.doubt === 'none' ? { doubt: t('intake.doubtNeeded') } : {}),
  };

  const go = async (withSlip = false) => {
    setTried(true);
    if (book.busy || holdUnread()) return;
    if (Object.keys(errorsOf(draft, writing)).length > 0) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('.talk [aria-invalid="true"]')?.focus());
      return;
    }
    const orderId = await book.run(draft);
    if (orderId === null) return;
    // The order itself stands: a slip that could not be made is asked for there again.
    if (withSlip) await saveSlip(orderId);
    goTo('orders', orderId);
  };
  useKey('Ctrl+Enter', () => void go());
  const wrongField = refused !== null;
  useEffect(() => {
    if (wrongField) document.querySelector<HTMLElement>('.talk [aria-invalid="true"]')?.focus();
  }, [wrongField]);
  useEffect(() => {
    if (doubted) document.querySelector<HTMLElement>('.mileage-doubt input')?.focus();
  }, [doubted]);
  // Esc leaves the field, then the page; what was typed is never thrown away by it.
  useKey('Esc', () => {
    const here = document.activeElement;
    if (here instanceof HTMLElement && here.closest('.talk') !== null) here.blur();
    else if (draft.name === '' && draft.phone === '' && draft.complaint === '') goTo('today');
  });

  const failed =
    error === null || doubted
      ? null
      : refused !== null && refused.elsewhere.length > 0
        ? refused.elsewhere.join(' ')
        : refused !== null
          ? t('errors.bad-input')
          : errorSentence(error, writing);
  const [first, rest] = readBack(draft, shop?.bays ?? [], writing);
  return (
    <Page
      title={t('intake.title')}
      words={t('intake.order')}
      actions={<Since />}
      foot={
        <>
          {failed === null ? null : (
            <Notice
              what={
                book.booked === null
                  ? t('intake.notBooked')
                  : t(`intake.stopped-${book.stopped?.step ?? 'book'}`, { number: book.booked.number })
              }
              action={
                book.booked === null ? undefined : (
                  <Button small onClick={() => goTo('orders', book.booked?.id ?? '')}>
                    {t('intake.openAnyway')}
                  </Button>
                )
              }
            >
              {failed}
            </Notice>
          )}
          <div className="place-foot">
            <p aria-live="polite">
              <b>{first}</b>
              <br />
              <span className="ink-2">{rest}</span>
            </p>
            <Button onClick={() => void go(true)} disabled={book.busy}>
              {t('intake.goSlip')}
            </Button>
            <Button kind="go" keys="Ctrl+Enter" onClick={() => void go()} disabled={book.busy}>
              {t('intake.go')}
            </Button>
          </div>
        </>
      }
    >
      <div className="book-in">
        <div>
          <WhoRow draft={draft} change={change} errors={errors} />
          <CarRow draft={draft} change={change} errors={errors} doubted={doubted} />
          <SayRow draft={draft} change={change} errors={errors} />
          <WhenRow draft={draft} change={change} errors={errors} />
        </div>
        <div className="book-in-door">
          <DoorRow draft={draft} change={change} errors={errors} />
          <AgreedRow draft={draft} change={change} errors={errors} />
        </div>
      </div>
    </Page>
  );
}
