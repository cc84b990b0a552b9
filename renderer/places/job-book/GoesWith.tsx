import { formatQuantity, parseQuantity } from '../../../core/measure/quantity.ts';
import { hrefOf } from '../../frame/router.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { t } from '../../words/t.ts';
import { unreadWords } from '../../words/unread.ts';
import { Pick } from '../book-in/Talk.tsx';
import type { Content } from './draft.ts';
import { JobCell, useJob } from './writing-job.tsx';

/** Jobs that go with this one, and what each takes less where both are on a sheet and the taking apart is shared. */
export function GoesWith({ id }: { readonly id: string | null }) {
  const { content, change } = useJob();
  const writing = useWriting();
  const jobs = useAsk('jobBook.list', {}).data?.rows ?? [];
  const { goesWith } = content;
  const free = jobs.filter((job) => job.id !== id && !goesWith.some((one) => one.bookJobId === job.id));
  if (change === null && goesWith.length === 0) return null;
  const without = (now: Content, bookJobId: string): Content => ({
    ...now,
    goesWith: now.goesWith.filter((one) => one.bookJobId !== bookJobId),
  });
  return (
    <section className="book-more" aria-label={t('jobBook.goesWith')}>
      <p className="h4">{t('jobBook.goesWith')}</p>
      {goesWith.map(({ bookJobId, hoursLess }) => {
        const title = jobs.find((job) => job.id === bookJobId)?.title ?? '';
        return (
          <div key={bookJobId} className="book-with">
            <a href={hrefOf('job-book', bookJobId)}>{title}</a>
            <JobCell
              figure
              label={t('jobBook.hoursLessOf', { title })}
              value={formatQuantity(hoursLess, writing.decimal)}
              rest={
                hoursLess === 0
                  ? t('jobBook.noHoursLess')
                  : t('jobBook.hoursLess', { hours: formatQuantity(hoursLess, writing.decimal) })
              }
              read={(text, now) => {
                const less = text.trim() === '' ? 0 : parseQuantity(text.replace(/h$/i, ''), writing);
                if (less === null || less < 0) return null;
                return {
                  ...now,
                  goesWith: now.goesWith.map((one) =>
                    one.bookJobId === bookJobId ? { ...one, hoursLess: less } : one,
                  ),
                };
              }}
              wrong={(text) => unreadWords(text, writing, t('jobBook.hoursWrong'))}
            />
            {change === null ? null : (
              <button
                type="button"
                className="link"
                aria-label={t('jobBook.takeOutOf', { words: title })}
                onClick={() => change((now) => without(now, bookJobId))}
              >
                {t('jobBook.takeOut')}
              </button>
            )}
          </div>
        );
      })}
      {change === null || free.length === 0 || goesWith.length >= 8 ? null : (
        <Pick
          label={t('jobBook.goesWithAdd')}
          value=""
          options={[
            { value: '', words: t('jobBook.goesWithWhich') },
            ...free.map((job) => ({ value: job.id, words: job.title })),
          ]}
          onChange={(bookJobId) => {
            if (bookJobId !== '')
              change((now) => ({
                ...without(now, bookJobId),
                goesWith: [...now.goesWith, { bookJobId, hoursLess: 0 }],
              }));
          }}
        />
      )}
    </section>
  );
}
