import type { InputOf } from '../../../core/contract/index.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Job } from '../order.ts';
import { LastTimes } from '../quote/LastTimes.tsx';
import { SheetCell } from '../SheetCell.tsx';
import { save } from '../save.ts';
import { GiveJob } from './GiveJob.tsx';
import { Named } from './Named.tsx';
import { SheetPick } from './SheetPick.tsx';
import { SheetText } from './SheetText.tsx';

const KINDS = ['charged', 'warranty', 'goodwill', 'internal'] as const;

/** The rest of a job, opened under its head: who bears it, a fixed price, whether it is only offered, a note. */
export function JobMore({ job }: { readonly job: Job }) {
  const writing = useWriting();
  const { letter, revision } = job;
  const change = (on: number, fields: InputOf<'job.change'>['change']) =>
    save('job.change', { id: job.id, revision: on, change: fields });
  return (
    <div className="more" role="group" aria-label={t('edit.moreOf', { words: `${letter} ${job.title}` })}>
      <Named words={t('edit.jobKind')}>
        <SheetPick
          revision={revision}
          label={t('edit.jobKindOf', { letter })}
          value={job.kind}
          options={KINDS.map((value) => ({ value, words: t(`edit.jobKind-${value}`) }))}
          save={(value, on) => change(on, { kind: KINDS.find((one) => one === value) ?? job.kind })}
          inRow={(row) => String(row.kind)}
        />
      </Named>
      {job.kind === 'charged' ? null : (
        <Named words={t('edit.bearer')}>
          <SheetCell
            revision={revision}
            label={t('edit.bearerOf', { letter })}
            value={job.bearer}
            placeholder={t('edit.bearerHint')}
            save={(bearer, on) => change(on, { bearer })}
            inRow={(row) => String(row.bearer)}
          />
        </Named>
      )}
      {job.amount === null ? null : (
        <Named words={t('edit.fixedPrice')}>
          <SheetCell
            figure
            revision={revision}
            label={t('edit.fixedPriceOf', { letter })}
            value={amountText(job.fixedPrice, writing)}
            placeholder={t('edit.byLines')}
            save={(text, on) => {
              if (text.trim() === '') return change(on, { fixedPrice: null });
              const fixedPrice = readAmount(text, writing);
              return fixedPrice === null || fixedPrice < 0 ? null : change(on, { fixedPrice });
            }}
            inRow={(row) => (typeof row.fixedPrice === 'number' ? amountText(row.fixedPrice, writing) : '')}
          />
        </Named>
      )}
      <Named words={t('edit.stands')}>
        <SheetPick
          revision={revision}
          label={t('edit.standsOf', { letter })}
          value={job.offered ? 'offered' : 'in'}
          options={[
            { value: 'in', words: t('edit.stands-in') },
            { value: 'offered', words: t('edit.stands-offered') },
          ]}
          save={(value, on) => change(on, { offered: value === 'offered' })}
          inRow={(row) => (row.offered === true || row.offered === 1 ? 'offered' : 'in')}
        />
      </Named>
      <Named words={t('edit.note')} wide>
        <SheetText
          locked={false}
          revision={revision}
          label={t('edit.noteOf', { letter })}
          hand={`${job.id} note`}
          value={job.note}
          placeholder={t('edit.noteHint')}
          save={(note, on) => change(on, { note })}
          inRow={(row) => String(row.note)}
        />
      </Named>
      <div className="wide">
        <GiveJob job={job} />
        <LastTimes job={job} />
      </div>
    </div>
  );
}
