import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import type { Content } from './draft.ts';
import { afterText, readAfter } from './read-after.ts';
import { JobCell, useJob } from './writing-job.tsx';

type Due = Content['after'][number];

const SOURCES = ['service', 'run-in', 'wheel-recheck'] as const;

const withDue = (content: Content, at: number, part: Partial<Due>): Content => ({
  ...content,
  after: content.after.map((due, i) => (i === at ? { ...due, ...part } : due)),
});

/** Before the car leaves: the shop's final list. Afterwards: what is due on it, after so many days or so far. */
export function AfterJob() {
  const { content, change } = useJob();
  const lists = (useAsk('checkList.list', {}).data?.rows ?? []).filter((list) => list.kind === 'final');
  const placed = content.after.map((due, at) => ({ due, at, key: `${at} of ${content.after.length}` }));
  const finalList = lists.find((list) => list.id === content.finalCheckId);
  return (
    <section className="book-more" aria-label={t('jobBook.after')}>
      {change === null ? (
        <p className="small">
          <b>{t('jobBook.finalCheck')}</b> {finalList?.title ?? t('jobBook.finalNone')}
        </p>
      ) : (
        <Pick
          label={t('jobBook.finalCheck')}
          value={content.finalCheckId ?? ''}
          options={[
            { value: '', words: lists.length === 0 ? t('jobBook.finalNoLists') : t('jobBook.finalNone') },
            ...lists.map((list) => ({ value: list.id, words: list.title })),
          ]}
          onChange={(id) => change((now) => ({ ...now, finalCheckId: id === '' ? null : id }))}
        />
      )}
      <p className="h4">{t('jobBook.after')}</p>
      {placed.map(({ due, at, key }) => (
        <div key={key} className="book-due">
          {change === null ? (
            <span className="ink-2">{t(`jobBook.due-${due.source}`)}</span>
          ) : (
            <select
              aria-label={t('jobBook.dueKindOf', { words: due.words })}
              value={due.source}
              onChange={(event) => {
                const source = SOURCES.find((one) => one === event.target.value);
                if (source !== undefined) change((now) => withDue(now, at, { source }));
              }}
            >
              {SOURCES.map((source) => (
                <option key={source} value={source}>
                  {t(`jobBook.due-${source}`)}
                </option>
              ))}
            </select>
          )}
          <JobCell
            label={t('jobBook.due', { n: at + 1 })}
            value={afterText(due)}
            read={(text, now) => {
              if (text.trim() === '') return { ...now, after: now.after.filter((_, i) => i !== at) };
              const read = readAfter(text);
              return read === null ? null : withDue(now, at, read);
            }}
            wrong={t('jobBook.dueWrong')}
          />
        </div>
      ))}
      {change === null || content.after.length >= 6 ? null : (
        <JobCell
          again
          className="book-open"
          label={t('jobBook.dueAdd')}
          placeholder={t('jobBook.dueHint')}
          value=""
          read={(text, now) => {
            const read = readAfter(text);
            if (read === null || now.after.length >= 6) return null;
            return { ...now, after: [...now.after, { source: 'service', ...read }] };
          }}
          wrong={t('jobBook.dueWrong')}
        />
      )}
    </section>
  );
}
