import { useState } from 'react';
import type { OutputOf } from '../../../../core/contract/index.ts';
import { Button } from '../../../parts/Button.tsx';
import { Choice } from '../../../parts/Choice.tsx';
import { Field } from '../../../parts/Field.tsx';
import { WordMark } from '../../../parts/WordMark.tsx';
import type { Order } from '../../../sheet/order.ts';
import { Wrong } from '../../../sheet/Wrong.tsx';
import { useNow } from '../../../state/now.ts';
import { useSession } from '../../../state/session.ts';
import { useWriting } from '../../../state/shop.ts';
import { useDo } from '../../../state/use-do.ts';
import { t } from '../../../words/t.ts';
import { nearText } from '../../../words/times.ts';

type Quarantine = OutputOf<'release.get'>['quarantines'][number];

/** A car or a part that must not be used: anybody keeps it here, the owner alone lets it go, with a reason. */
export function KeptHere({ order, rows }: { readonly order: Order; readonly rows: readonly Quarantine[] }) {
  const set = useDo('quarantine.set');
  const [open, setOpen] = useState(false);
  const [what, setWhat] = useState<'car' | 'part'>('car');
  const [words, setWords] = useState('');
  const go = async () => {
    const answer = await set.run({ orderId: order.id, what, words });
    if (!answer.ok) return;
    setWords('');
    setOpen(false);
  };
  return (
    <section className="found-row" aria-label={t('leave.kept')}>
      <h2>{t('leave.kept')}</h2>
      {rows.length === 0 ? <p className="ink-2">{t('leave.nothingKept')}</p> : null}
      {rows.map((row) => (
        <KeptRow key={row.id} row={row} />
      ))}
      {open ? (
        <div className="leave-form">
          <Choice
            joined
            label={t('leave.whatIsKept')}
            value={what}
            options={[
              { value: 'car', words: t('leave.theCar') },
              { value: 'part', words: t('leave.aPart') },
            ]}
            onChange={setWhat}
          />
          <Field label={t('leave.whyKept')} value={words} maxLength={300} onChange={setWords} autoFocus />
          <Wrong error={set.error} />
          <div className="step-acts">
            <Button held={words.trim() === '' ? t('bench.sayWhy') : null} disabled={set.busy} onClick={() => void go()}>
              {t('leave.keepIt')}
            </Button>
            <Button onClick={() => setOpen(false)}>{t('bench.goBack')}</Button>
          </div>
        </div>
      ) : (
        <Button onClick={() => setOpen(true)}>{t('leave.keepSomething')}</Button>
      )}
    </section>
  );
}

function KeptRow({ row }: { readonly row: Quarantine }) {
  const writing = useWriting();
  const now = useNow(30_000);
  const owner = useSession((session) => session.person?.role === 'owner');
  const lift = useDo('quarantine.lift');
  const [why, setWhy] = useState<string | null>(null);
  const said = { by: row.by, when: nearText(row.at, writing, now) };
  if (row.lifted !== null)
    return (
      <p className="ink-2">
        <s>{row.words}</s> {t('leave.lifted', { by: row.lifted.by, why: row.lifted.why })}
      </p>
    );
  return (
    <div className="kept-row">
      <p>
        <WordMark kind="stop">{t('leave.doNotRelease')}</WordMark> <b>{row.words}</b>{' '}
        <span className="ink-2">{t('leave.keptBy', said)}</span>
      </p>
      {!owner ? (
        <p className="small ink-2">{t('leave.ownerLifts')}</p>
      ) : why === null ? (
        <Button onClick={() => setWhy('')}>{t('leave.letGo')}</Button>
      ) : (
        <div className="leave-form">
          <Field label={t('leave.whyLift')} value={why} maxLength={300} onChange={setWhy} autoFocus />
          <Wrong error={lift.error} />
          <div className="step-acts">
            <Button
              held={why.trim() === '' ? t('bench.sayWhy') : null}
              disabled={lift.busy}
              onClick={() => void lift.run({ id: row.id, revision: row.revision, why })}
            >
              {t('leave.letGo')}
            </Button>
            <Button onClick={() => setWhy(null)}>{t('bench.goBack')}</Button>
          </div>
        </div>
      )}
    </div>
  );
}
