import type { OutputOf } from '../../../../core/contract/index.ts';
import { Button } from '../../../parts/Button.tsx';
import type { Order } from '../../../sheet/order.ts';
import { useNow } from '../../../state/now.ts';
import { useWriting } from '../../../state/shop.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { t } from '../../../words/t.ts';
import { nearText } from '../../../words/times.ts';
import { CheckPaper } from './CheckPaper.tsx';

interface Props {
  readonly order: Order;
  /** Final lists that the jobs want. */
  readonly wanted: OutputOf<'release.get'>['finalChecks'];
  readonly onList: (checkListId: string) => void;
}

/** The shop's lists: what the jobs want gone through, what else there is, and what was gone through already. */
export function Lists({ order, wanted, onList }: Props) {
  const writing = useWriting();
  const now = useNow(30_000);
  const lists = (useAsk('checkList.list', {}).data?.rows ?? []).filter((list) => !list.takenOut);
  const done = useAsk('check.list', { orderId: order.id }).data?.rows ?? [];
  const others = lists.filter((list) => !wanted.some((one) => one.checkListId === list.id));
  return (
    <section className="found-row" aria-label={t('leave.lists')}>
      <h2>{t('leave.lists')}</h2>
      {wanted.map((one) => (
        <div className="list-row" key={`${one.jobId} ${one.checkListId}`}>
          <p>
            <b>{one.title}</b> {t('leave.wantedBy', { letter: one.letter })}
          </p>
          {one.done === null ? (
            <Button onClick={() => onList(one.checkListId)}>{t('leave.goThrough')}</Button>
          ) : (
            <p>{t('leave.goneThrough', { by: one.done.by, when: nearText(one.done.at, writing, now) })}</p>
          )}
        </div>
      ))}
      {others.map((list) => (
        <div className="list-row" key={list.id}>
          <p>
            <b>{list.title}</b> <span className="ink-2">{t('leave.items', { n: list.items.length })}</span>
          </p>
          <Button onClick={() => onList(list.id)}>{t('leave.goThrough')}</Button>
        </div>
      ))}
      {lists.length === 0 ? <p className="ink-2">{t('leave.noLists')}</p> : null}
      {done.map((one) => (
        <div className="list-row" key={one.id}>
          <p>
            <b>{one.title}</b> {t('leave.goneThrough', { by: one.by, when: nearText(one.at, writing, now) })}{' '}
            {t('leave.foundInIt', { n: one.answers.filter((answer) => answer.findingId !== null).length })}
          </p>
          <CheckPaper id={one.id} />
        </div>
      ))}
    </section>
  );
}
