import { useRef } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { useKey } from '../../frame/keys.ts';
import { Page } from '../../frame/Page.tsx';
import { goTo, hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { useRowKeys } from '../../parts/row-keys.ts';
import { useNow } from '../../state/now.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { usePlan } from '../bookings/use-plan.ts';
import { AlsoWaits } from './AlsoWaits.tsx';
import { NotCome } from './NotCome.tsx';
import { isLate } from './row-words.ts';
import { Day } from './strip/Day.tsx';
import { TodayInHand } from './TodayInHand.tsx';
import { TodayRow } from './TodayRow.tsx';
import './today.css';

type Row = OutputOf<'today.get'>['rows'][number];
const GROUPS = ['ours', 'customer', 'supplier'] as const;

function BookButton() {
  return (
    <>
      <a className="semi" href={hrefOf('today', 'week')}>
        {t('today.week')}
      </a>
      <Button kind="go" keys="N" onClick={() => goTo('today', 'book')}>
        {t('today.book')}
      </Button>
    </>
  );
}

/** Every open order under whose move it is, late first, with the next thing in words. */
export function TodayList() {
  const { data, error } = useAsk('today.get', {});
  const writing = useWriting();
  const now = useNow(30_000);
  const list = useRef<HTMLDivElement>(null);
  const plan = usePlan();
  const { hand } = plan;
  useKey('Esc', plan.leave, hand !== null);
  useKey('Ctrl+Enter', () => void plan.save(), hand !== null);

  useRowKeys(list, 'a.today-row');

  const rows = data?.rows ?? [];
  const late = rows.filter(isLate).length;
  const head = data && rows.length > 0 ? `${t('today.open', { n: rows.length })} ${lateWords(late)}` : undefined;
  return (
    <Page
      title={t('today.title')}
      {...(head === undefined ? {} : { words: head })}
      {...(data && rows.length === 0 ? {} : { actions: <BookButton /> })}
      foot={<TodayInHand plan={plan} now={now} />}
    >
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {data && rows.length === 0 ? <Empty action={<BookButton />}>{t('today.empty')}</Empty> : null}
      {data && rows.length > 0 ? <Day rows={rows} now={now} plan={plan} /> : null}
      <div ref={list}>
        {rows.length === 0
          ? null
          : GROUPS.map((group) => (
              <Group key={group} group={group} rows={rows.filter((row) => row.next.whose === group)} now={now} />
            ))}
        {data === undefined ? null : <AlsoWaits today={data} now={now} />}
      </div>
    </Page>
  );
}

function lateWords(late: number): string {
  return late === 0 ? t('today.noneLate') : t('today.late', { n: late });
}

function Group(props: {
  readonly group: (typeof GROUPS)[number];
  readonly rows: readonly Row[];
  readonly now: number;
}) {
  const { group, rows, now } = props;
  const writing = useWriting();
  const desk = useSession((session) => session.person?.role !== 'mechanic');
  return (
    <section className="today-group" aria-labelledby={`today-${group}`}>
      <header>
        <h2 id={`today-${group}`}>{t(`today.${group}`)}</h2>
        <p>{t(`today.${group}Words`)}</p>
      </header>
      {rows.length === 0 ? (
        <p className="ink-2 today-none">{t('today.none')}</p>
      ) : (
        <ul>
          {rows.map((row) => (
            <li key={row.orderId}>
              <TodayRow row={row} now={now} writing={writing} />
              {row.absent === null || !desk ? null : (
                <NotCome orderId={row.orderId} revision={row.absent} car={row.plate || row.car} />
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
