import { Field } from '../parts/Field.tsx';
import type { Order } from '../sheet/order.ts';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { t } from '../words/t.ts';
import type { CloseOut, Stop } from './close-out.ts';
import { doneWords } from './done-words.ts';
import { Mend } from './Mend.tsx';
import { stopSentence } from './stop-sentence.ts';

interface Props {
  readonly order: Order;
  readonly stops: readonly Stop[];
  readonly onNoLine: CloseOut['onNoLine'];
  /** Reasons and notes typed so far, by what they let pass. */
  readonly reasons: Readonly<Record<string, string>>;
  readonly onReason: (what: string, reason: string) => void;
}

/** Before it leaves: what is settled, ticked; what still stops the invoice, each with its way to mend it in place. */
export function BeforeItLeaves({ order, stops, onNoLine, reasons, onReason }: Props) {
  const writing = useWriting();
  const owner = useSession((session) => session.person?.role === 'owner');
  const done = doneWords(order, stops, writing);
  const asked = new Set<string>();
  return (
    <>
      <header className="bench-head">
        <h2>{t('closeOut.before')}</h2>
        <span>{t('closeOut.count', { done: done.length, n: done.length + stops.length })}</span>
      </header>
      <section>
        <ul>
          {done.map((words) => (
            <li key={words} className="before-row">
              <Drawn ticked />
              {words}
            </li>
          ))}
          {stops.map((stop) => {
            const first = !asked.has(stop.what);
            asked.add(stop.what);
            const mayPass = stop.override === 'note' || (stop.override === 'owner' && owner);
            return (
              <li key={`${stop.what} ${JSON.stringify(stop.with)}`} className="before-row before-stop">
                <Drawn />
                <div className="before-mend">
                  <p className="semi in-stop">{stopSentence(stop, writing)}</p>
                  <Mend order={order} stop={stop} onNoLine={onNoLine} />
                  {first && mayPass ? (
                    <Field
                      label={t(stop.override === 'owner' ? 'closeOut.ownerReason' : 'closeOut.note')}
                      value={reasons[stop.what] ?? ''}
                      onChange={(reason) => onReason(stop.what, reason)}
                      maxLength={300}
                    />
                  ) : null}
                  {first && stop.override === 'owner' && !owner ? (
                    <p className="small ink-2">{t('closeOut.ownerOnly')}</p>
                  ) : null}
                </div>
              </li>
            );
          })}
        </ul>
      </section>
    </>
  );
}

/** A drawn box; the words beside it say the same. */
function Drawn({ ticked = false }: { readonly ticked?: boolean }) {
  return (
    <svg className="drawn-box" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <rect x="0.75" y="0.75" width="18.5" height="18.5" rx="3" className={ticked ? 'ticked' : ''} />
      {ticked ? <path d="M5.5 10.5l3.2 3.4 6-7.6" /> : null}
    </svg>
  );
}
