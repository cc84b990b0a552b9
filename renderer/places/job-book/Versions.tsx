import type { OutputOf } from '../../../core/contract/index.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { quantityText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { dayText } from '../../words/times.ts';

type Row = OutputOf<'jobBook.versions'>['rows'][number];

/** What the job was before: when, what changed, by whom, which one the bench gets, how many orders began with each. */
export function Versions({ id }: { readonly id: string }) {
  const writing = useWriting();
  const rows = useAsk('jobBook.versions', { id }).data?.rows ?? [];
  if (rows.length === 0) return null;
  const now = Date.now();
  return (
    <section className="book-versions" aria-label={t('jobBook.versions')}>
      <h2 className="book-head">
        {t('jobBook.versions')} <small>{t('jobBook.versionsWords')}</small>
      </h2>
      <ol>
        {rows.map((row) => (
          <li key={row.versionId}>
            <b className="book-n">{row.version}</b>
            <span className="ink-2">{dayText(row.at, writing, now)}</span>
            <span>{changedWords(row.changed, (hours) => quantityText(hours, 'h', writing))}</span>
            <span className="ink-2">{row.by}</span>
            <span className="figure">
              {row.inUse ? <b>{t('jobBook.inUse')}</b> : null}
              {row.inUse && row.orders > 0 ? ', ' : ''}
              {row.orders === 0 ? null : t('jobBook.orders', { n: row.orders })}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function changedWords(changed: Row['changed'], hours: (thousandths: number) => string): string {
  if (changed === null) return t('jobBook.firstVersion');
  const counted = (['added', 'takenOut', 'changed'] as const)
    .filter((what) => changed[what] > 0)
    .map((what) => t(`jobBook.steps-${what}`, { n: changed[what] }));
  const said = [
    ...counted,
    changed.moved ? t('jobBook.steps-moved') : '',
    changed.hours === null
      ? ''
      : t('jobBook.hoursChanged', { from: hours(changed.hours.from), to: hours(changed.hours.to) }),
    changed.price ? t('jobBook.priceChanged') : '',
    changed.lines ? t('jobBook.linesChanged') : '',
    changed.cautions ? t('jobBook.cautionsChanged') : '',
    changed.rest ? t('jobBook.restChanged') : '',
  ].filter((words) => words !== '');
  return said.length === 0 ? t('jobBook.nothingChanged') : said.join(', ');
}
