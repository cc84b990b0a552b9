import type { ReactNode } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { WordMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText, spanText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';

type Today = OutputOf<'today.get'>;

interface Line {
  readonly key: string;
  readonly since: string;
  readonly href: string;
  readonly words: ReactNode;
  readonly about: string;
}

/** What waits for somebody and is no next thing of an open order: clocks left running, papers to send, the lab, old units. */
export function AlsoWaits({ today, now }: { readonly today: Today; readonly now: number }) {
  const writing = useWriting();
  const { open, waiting } = today;
  const lines: Line[] = [
    ...open
      .filter((clock) => clock.left)
      .map((clock) => ({
        key: `clock ${clock.personId}`,
        since: nearText(clock.on, writing, now),
        href: clock.orderId === null ? hrefOf('shop') : hrefOf('orders', clock.orderId),
        words: t('today.clockLeft', { person: clock.person, time: spanText(now - clock.on) }),
        about: clock.orderNumber === null ? '' : t('today.order', { number: clock.orderNumber }),
      })),
    ...(waiting.toSend === 0
      ? []
      : [
          {
            key: 'to-send',
            since: '',
            href: hrefOf('money', 'to-send'),
            words: t('today.toSend', { n: waiting.toSend }),
            about: '',
          },
        ]),
    ...(waiting.statements === null
      ? []
      : [
          {
            key: 'statements',
            since: '',
            href: hrefOf('money', 'statements'),
            words: t('today.statements', {
              n: waiting.statements.n,
              day: civilText(waiting.statements.until, writing),
            }),
            about: '',
          },
        ]),
    ...waiting.privacy.map((request) => ({
      key: request.id,
      since: '',
      href: hrefOf('customers', request.customerId),
      words: (
        <>
          {t('privacy.today', { name: request.customer, by: civilText(request.answerBy, writing) })}{' '}
          {request.late ? <WordMark kind="stop">{t('privacy.late')}</WordMark> : null}
        </>
      ),
      about: '',
    })),
    ...waiting.lab.map((sample) => ({
      key: sample.sampleId,
      since: civilText(sample.sentOn, writing),
      href: hrefOf('orders', sample.orderId),
      words: t('today.labOverdue', { lab: sample.lab, sample: sample.label }),
      about: t('today.order', { number: sample.number }),
    })),
    ...waiting.cores.map((core) => ({
      key: core.lineId,
      since: civilText(core.dueOn, writing),
      href: hrefOf('orders', core.orderId),
      words: t('today.coreOverdue', { part: core.words, customer: core.customer }),
      about: t('today.order', { number: core.number }),
    })),
    ...waiting.stored.map((one) => ({
      key: `stored ${one.orderId}`,
      since: civilText(one.notice, writing),
      // Beside the order the words to the customer are open.
      href: `${hrefOf('orders', one.orderId)}?tell=ready`,
      words: t(one.gross === null ? 'today.notFetched' : 'today.notFetchedSum', {
        ...{ car: one.car, customer: one.customer },
        sum: amountText(one.gross, writing),
      }),
      about: t('today.order', { number: one.number }),
    })),
    ...(waiting.reminders === 0
      ? []
      : [
          {
            key: 'reminders',
            since: '',
            href: hrefOf('customers', 'reminders'),
            words: t('today.reminders', { n: waiting.reminders }),
            about: '',
          },
        ]),
  ];
  if (lines.length === 0) return null;
  return (
    <section className="today-group" aria-labelledby="today-also">
      <header>
        <h2 id="today-also">{t('today.also')}</h2>
        <p>{t('today.alsoWords')}</p>
      </header>
      <ul>
        {lines.map((line) => (
          <li key={line.key}>
            <a className="today-row today-also" href={line.href}>
              <span className="today-since">{line.since}</span>
              <span className="today-next">{line.words}</span>
              <span>{line.about}</span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
