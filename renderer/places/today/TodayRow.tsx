import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Plate } from '../../parts/Plate.tsx';
import { LateMark, SoonMark } from '../../parts/WordMark.tsx';
import { spanText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { nearText } from '../../words/times.ts';
import { aboutWords, isLate, nextWords, promiseWords } from './row-words.ts';

interface Props {
  readonly row: OutputOf<'today.get'>['rows'][number];
  readonly now: number;
  readonly writing: Writing;
}

/** One order: since when, what next, which car, whose, and the promise with its mark. */
export function TodayRow({ row, now, writing }: Props) {
  const late = isLate(row);
  const clocks = row.clocks.map((clock) => t('today.clock', { person: clock.person, time: spanText(now - clock.on) }));
  const under = [aboutWords(row), ...clocks].filter((one) => one !== '').join('; ');
  const booked = row.next.what === 'bring-it-in';
  return (
    <a className={late ? 'today-row today-late' : 'today-row'} href={hrefOf('orders', row.orderId)}>
      <span className="today-since">{booked ? t('today.booked') : nearText(row.next.since, writing, now)}</span>
      <span className="today-next">
        {nextWords(row, writing)}
        {under === '' ? null : <small className="today-about">{under}</small>}
      </span>
      <span>{row.plate === '' ? t('today.order', { number: row.number }) : <Plate plate={row.plate} />}</span>
      <span className="today-car">
        {row.car}
        <small>{row.customer}</small>
      </span>
      <span className="today-promise">
        {late ? <LateMark /> : null}
        {!late && (row.next.promise === 'soon' || row.expected?.late) ? <SoonMark /> : null}{' '}
        {promiseWords(row, writing, now)}
        {row.expected === null ? null : (
          <small className={row.expected.late ? 'in-heed' : undefined}>
            {t(row.expected.late ? 'today.doneTooLate' : 'today.doneAt', {
              time: nearText(row.expected.doneAt, writing, now),
              n: row.expected.people,
            })}
          </small>
        )}
      </span>
    </a>
  );
}
