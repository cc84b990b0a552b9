import { useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import { Wrong } from '../sheet/Wrong.tsx';
import { useNow } from '../state/now.ts';
import { useSession } from '../state/session.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { nearText } from '../words/times.ts';

type Standing = OutputOf<'release.get'>['quarantines'][number];

/** One thing that must not go or be used, and for the owner the way to release it. */
export function StandingQuarantine({ row }: { readonly row: Standing }) {
  const writing = useWriting();
  const now = useNow(60_000);
  const { words } = row;
  if (row.lifted !== null)
    return <p className="small ink-2">{t('release.lifted', { by: row.lifted.by, why: row.lifted.why, words })}</p>;
  return (
    <div>
      <p className="in-stop semi">{t(row.what === 'car' ? 'release.stands' : 'release.partStands', { words })}</p>
      <p className="small ink-2">{t('release.since', { by: row.by, when: nearText(row.at, writing, now) })}</p>
      <Lift row={row} />
    </div>
  );
}

/** The owner releases it, with a reason; anybody else is told so. */
export function Lift({ row }: { readonly row: Standing }) {
  const owner = useSession((session) => session.person?.role === 'owner');
  const lift = useDo('quarantine.lift');
  const [why, setWhy] = useState('');
  if (!owner) return <p className="small ink-2">{t('release.ownerLifts')}</p>;
  return (
    <SmallForm
      verb={t('release.lift')}
      onSend={() => (why.trim() === '' ? undefined : lift.run({ id: row.id, revision: row.revision, why }))}
      busy={lift.busy || why.trim() === ''}
      wrong={<Wrong error={lift.error} />}
    >
      <Field label={t('release.liftWhy')} value={why} onChange={setWhy} maxLength={300} />
    </SmallForm>
  );
}

/** Marks the car or a part of this order as not to be released. */
export function MarkQuarantine({ orderId }: { readonly orderId: string }) {
  const set = useDo('quarantine.set');
  const [open, setOpen] = useState(false);
  const [what, setWhat] = useState<'car' | 'part'>('car');
  const [words, setWords] = useState('');
  const go = async () => {
    if (words.trim() === '') return;
    const answer = await set.run({ orderId, what, words });
    if (!answer.ok) return;
    setWords('');
    setOpen(false);
  };
  if (!open)
    return (
      <button type="button" className="link" onClick={() => setOpen(true)}>
        {t('release.mark')}
      </button>
    );
  return (
    <SmallForm
      verb={t('release.markIt')}
      onSend={go}
      busy={set.busy || words.trim() === ''}
      wrong={<Wrong error={set.error} />}
    >
      <Choice
        label={t('release.markWhat')}
        value={what}
        options={(['car', 'part'] as const).map((value) => ({ value, words: t(`release.mark-${value}`) }))}
        onChange={setWhat}
      />
      <Field label={t('release.markWhy')} value={words} onChange={setWords} maxLength={300} autoFocus />
    </SmallForm>
  );
}
