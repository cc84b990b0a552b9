import { useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { Pick } from '../places/book-in/Talk.tsx';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { useDo } from '../state/use-do.ts';
import { type Writing, wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { civilText } from '../words/times.ts';
import { Wrong } from './Wrong.tsx';

type Row = OutputOf<'comeback.firstJobs'>['rows'][number];

const CAUSES = ['', 'part', 'work', 'other', 'misdiagnosis'] as const;

/** Jobs done on this car before, each with its cover; one of them is taken up again as free work. */
export function Comeback({ orderId }: { readonly orderId: string }) {
  const rows = useAsk('comeback.firstJobs', { orderId }).data?.rows ?? [];
  const writing = useWriting();
  const [open, setOpen] = useState(false);
  const [cause, setCause] = useState<(typeof CAUSES)[number]>('');
  const [bearer, setBearer] = useState(t('release.us'));
  const add = useDo('comeback.add');
  if (rows.length === 0) return null;
  if (!open)
    return (
      <p className="small">
        {t('release.cover', { n: rows.length })}.{' '}
        <button type="button" className="link" onClick={() => setOpen(true)}>
          {t('release.takeUp')}
        </button>
      </p>
    );
  const takeUp = async ({ jobId, title }: Row) => {
    const answer = await add.run({ orderId, firstJobId: jobId, title, cause, bearer });
    if (answer.ok) setOpen(false);
  };
  return (
    <section aria-label={t('release.takeUp')} className="comeback">
      <h3>{t('release.takeUp')}</h3>
      <div className="row-form">
        <Pick
          label={t('release.cause')}
          value={cause}
          options={CAUSES.map((value) => ({ value, words: t(`release.cause-${value}`) }))}
          onChange={(value) => setCause(CAUSES.find((one) => one === value) ?? '')}
        />
        <Field label={t('release.bearer')} value={bearer} onChange={setBearer} maxLength={80} />
      </div>
      <ul>
        {rows.map((row) => (
          <li key={row.jobId}>
            {row.title} <span className="small ink-2">{coverWords(row.cover, writing)}</span>{' '}
            <Button
              small
              label={t('release.takeUpOf', { title: row.title, number: row.orderNumber })}
              disabled={add.busy}
              onClick={() => void takeUp(row)}
            >
              {t('release.takeUpIt')}
            </Button>
          </li>
        ))}
      </ul>
      <p className="small ink-2">{t('release.freeWaits')}</p>
      <Wrong error={add.error} />
    </section>
  );
}

function coverWords({ covered, until, untilMileage, unit }: Row['cover'], writing: Writing): string {
  if (covered === null || until === null || untilMileage === null) return t('release.coverUnknown');
  return t(covered ? 'release.covered' : 'release.notCovered', {
    until: civilText(until, writing),
    mileage: `${wholeText(untilMileage, writing)}\u00a0${unit}`,
  });
}
