import { useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { figureWords, heldSentence } from '../words/error-sentence.ts';
import { t, tMaybe } from '../words/t.ts';
import type { Order } from './order.ts';
import { WorkDone } from './WorkDone.tsx';
import { Wrong } from './Wrong.tsx';

interface Props {
  readonly order: Order;
  readonly onYes: () => void;
  readonly onDone: () => void;
}

/** Before it leaves: what still stops the invoice, each with its way out, then the invoice. */
export function CloseOut({ order, onYes, onDone }: Props) {
  const writing = useWriting();
  const role = useSession((session) => session.person?.role);
  const invoice = useDo('invoice.issue');
  const mileage = useDo('order.mileageOut');
  const change = useDo('order.change');
  const [out, setOut] = useState('');
  const [reasons, setReasons] = useState<Readonly<Record<string, string>>>({});
  const [unread, setUnread] = useState<string | null>(null);
  const stops = order.stops;
  const mayPass = (override: string) => override === 'note' || (override === 'owner' && role === 'owner');
  const standing = stops.filter((stop) => !mayPass(stop.override) || (reasons[stop.what] ?? '').trim() === '');

  const saveMileage = async () => {
    const figure = /^\d{1,7}$/.test(out.replaceAll(/[ .,]/g, '')) ? Number(out.replaceAll(/[ .,]/g, '')) : null;
    if (figure === null) return setUnread(t('sheet.unread', { label: t('decision.mileageOut') }));
    setUnread(null);
    const answer = await mileage.run({ id: order.id, revision: order.revision, mileage: figure });
    if (answer.ok) setOut('');
  };
  const go = async () => {
    const named = [...new Set(stops.map((stop) => stop.what))];
    const answer = await invoice.run({
      orderId: order.id,
      overrides: named.flatMap((what) => {
        const reason = (reasons[what] ?? '').trim();
        return reason === '' ? [] : [{ what, reason }];
      }),
    });
    if (answer.ok) onDone();
  };
  const asking = new Set<string>();
  return (
    <>
      <header className="bench-head">
        <h2>{t('decision.before')}</h2>
        <span>{t('decision.stopsLeft', { n: standing.length })}</span>
      </header>
      <section>
        {stops.length === 0 ? <p>{t('decision.nothingStops')}</p> : null}
        <ul>
          {stops.map((stop) => {
            const first = mayPass(stop.override) && !asking.has(stop.what);
            asking.add(stop.what);
            return (
              <li className="stop-row" key={`${stop.what} ${JSON.stringify(stop.with)}`}>
                <p className="semi in-stop">
                  {tMaybe(`sheet.held-${stop.what}`, figureWords(stop.with, writing)) ?? heldSentence(stop, writing)}
                </p>
                {stop.what === 'job-without-yes' || stop.what === 'over-the-yes' ? (
                  <Button small onClick={onYes}>
                    {t('decision.record')}
                  </Button>
                ) : null}
                {stop.what === 'po-missing' ? (
                  <PoNumber
                    order={order}
                    save={(poNumber) =>
                      void change.run({ id: order.id, revision: order.revision, change: { poNumber } })
                    }
                  />
                ) : null}
                {stop.what === 'old-parts-unanswered' ? <OldParts order={order} /> : null}
                {first ? (
                  <Field
                    label={t(stop.override === 'owner' ? 'decision.ownerReason' : 'decision.note')}
                    value={reasons[stop.what] ?? ''}
                    onChange={(reason) => setReasons({ ...reasons, [stop.what]: reason })}
                  />
                ) : null}
                {stop.override === 'owner' && role !== 'owner' ? (
                  <p className="small ink-2">{t('decision.ownerOnly')}</p>
                ) : null}
              </li>
            );
          })}
        </ul>
        <Wrong error={change.error} />
      </section>
      <section>
        <form
          className="row-form"
          onSubmit={(event) => {
            event.preventDefault();
            void saveMileage();
          }}
        >
          <Field
            label={t('decision.mileageOut')}
            value={out}
            onChange={setOut}
            placeholder={String(order.mileageOut ?? order.mileageIn ?? '')}
            inputMode="numeric"
            figure
            error={unread}
          />
          <Button type="submit" disabled={mileage.busy}>
            {t('decision.mileageSave')}
          </Button>
        </form>
        <Wrong error={mileage.error} />
      </section>
      <WorkDone order={order} />
      <section className="form-acts">
        <Button onClick={onDone}>{t('decision.toBench')}</Button>
        <Button
          kind="go"
          onClick={() => void go()}
          disabled={invoice.busy}
          held={standing.length === 0 ? null : t('decision.stopsLeft', { n: standing.length })}
        >
          {t('decision.makeInvoice')}
        </Button>
        <Wrong error={invoice.error} />
      </section>
    </>
  );
}

function PoNumber({ order, save }: { readonly order: Order; readonly save: (text: string) => void }) {
  const [text, setText] = useState(order.poNumber);
  return (
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        save(text);
      }}
    >
      <Field label={t('decision.poNumber')} value={text} onChange={setText} />
      <Button small type="submit">
        {t('decision.poSave')}
      </Button>
    </form>
  );
}

const OLD_PARTS = ['returned', 'shown', 'core', 'refused', 'disposed'] as const;

function OldParts({ order }: { readonly order: Order }) {
  const change = useDo('order.change');
  return (
    <div className="old-parts">
      {OLD_PARTS.map((oldPartsAnswer) => (
        <Button
          small
          key={oldPartsAnswer}
          onClick={() => void change.run({ id: order.id, revision: order.revision, change: { oldPartsAnswer } })}
        >
          {t(`decision.oldPart-${oldPartsAnswer}`)}
        </Button>
      ))}
      <Wrong error={change.error} />
    </div>
  );
}
