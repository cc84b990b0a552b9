import { useState } from 'react';
import { goTo } from '../frame/router.ts';
import { Button } from '../parts/Button.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useWriting } from '../state/shop.ts';
import { amountText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { CloseOut, WayOut } from './close-out.ts';
import { useTakeWayOut } from './take-way-out.ts';

interface Props {
  readonly order: Order;
  readonly closeOut: CloseOut;
  readonly onYes: () => void;
}

/** So many ways stand in view at first. */
const IN_VIEW = 3;

/** What is beyond the yes, and every way to bring the sheet back inside, each with its sum and the new total. */
export function WaysOut({ order, closeOut, onYes }: Props) {
  const { take, busy, error, moved } = useTakeWayOut(order, onYes);
  const groups = new Map<string, WayOut[]>();
  for (const way of closeOut.waysOut) {
    const key = way.mends === 'job' ? `job ${way.letter}` : way.mends;
    groups.set(key, [...(groups.get(key) ?? []), way]);
  }
  const main = closeOut.waysOut.find((way) => way.kind === 'yes');
  return (
    <>
      {[...groups.entries()].map(([key, ways]) => (
        <Group key={key} order={order} closeOut={closeOut} ways={ways} main={main} busy={busy} take={take} />
      ))}
      {moved === null ? null : (
        <p role="status">
          {t('closeOut.moved', { letter: moved.letter, number: moved.number })}{' '}
          <button type="button" className="link" onClick={() => goTo('orders', moved.orderId)}>
            {t('closeOut.openMoved', { number: moved.number })}
          </button>
        </p>
      )}
      <Wrong error={error} />
    </>
  );
}

interface GroupProps {
  readonly order: Order;
  readonly closeOut: CloseOut;
  readonly ways: readonly WayOut[];
  readonly main: WayOut | undefined;
  readonly busy: boolean;
  readonly take: (way: WayOut) => void;
}

function Group({ order, closeOut, ways, main, busy, take }: GroupProps) {
  const writing = useWriting();
  const [all, setAll] = useState(false);
  const [first] = ways;
  if (first === undefined) return null;
  const { totals } = closeOut;
  const sum = first.mends === 'excess' ? totals?.excess : (totals?.excess ?? 0) + (totals?.held ?? 0);
  const shown = all || ways.length <= IN_VIEW + 1 ? ways : ways.slice(0, IN_VIEW);
  const figures = { sum: amountText(sum ?? null, writing), letter: first.letter };
  return (
    <section className="ways-out">
      <h2>{t(`closeOut.over-${first.mends}`, figures)}</h2>
      <p className="ink-2">{t('closeOut.overWords')}</p>
      <ul>
        {shown.map((way) => (
          <li className="way-out" key={`${way.kind} ${way.jobId} ${way.lineId}`}>
            <div>
              <b>{wayWords(way, order)}</b>
              <p className="small ink-2">
                {way.kind === 'yes'
                  ? t('closeOut.saidAsk', {
                      ceiling: amountText(totals?.ceiling ?? null, writing),
                      sum: amountText(way.after, writing),
                      more: amountText(way.amount, writing),
                    })
                  : t('closeOut.takesOff', {
                      sum: amountText(way.amount, writing),
                      after: amountText(way.after, writing),
                    })}{' '}
                {way.enough ? '' : t('closeOut.notEnough')} {way.wants === 'owner-yes' ? t('closeOut.ownerYes') : ''}
              </p>
            </div>
            <WayButton way={way} main={way === main} busy={busy} take={take} />
          </li>
        ))}
      </ul>
      {shown.length === ways.length ? null : (
        <button type="button" className="link" onClick={() => setAll(true)}>
          {t('closeOut.moreWays', { n: ways.length - shown.length })}
        </button>
      )}
    </section>
  );
}

interface WayButtonProps {
  readonly way: WayOut;
  readonly main: boolean;
  readonly busy: boolean;
  readonly take: (way: WayOut) => void;
}

function WayButton({ way, main, busy, take }: WayButtonProps) {
  if (way.kind === 'yes')
    return (
      <Button kind={main ? 'go' : 'plain'} onClick={() => take(way)} {...(main ? { keys: 'Alt+Y' } : {})}>
        {t('decision.record')}
      </Button>
    );
  const of =
    way.kind === 'give' ? t('closeOut.giveOf', { words: way.words }) : t('closeOut.moveOf', { letter: way.letter });
  return (
    <Button label={of} onClick={() => take(way)} disabled={busy} held={way.held === '' ? null : t('closeOut.workedOn')}>
      {t(way.kind === 'give' ? 'closeOut.give' : 'closeOut.move')}
    </Button>
  );
}

function wayWords(way: WayOut, order: Order): string {
  const { name, phone } = order.payer ?? order.customer;
  if (way.kind === 'yes') return phone === '' ? t('closeOut.askPlain', { name }) : t('closeOut.ring', { name, phone });
  if (way.kind === 'move') return t('closeOut.moveJob', { letter: way.letter });
  return t(way.lineId === null ? 'closeOut.giveJob' : 'closeOut.giveLine', { letter: way.letter, words: way.words });
}
