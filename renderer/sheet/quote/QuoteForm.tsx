import { useState } from 'react';
import { addDays } from '../../../core/time/civil.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { useKey } from '../../frame/keys.ts';
import { goTo } from '../../frame/router.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { useNow } from '../../state/now.ts';
import { useShop, useWriting } from '../../state/shop.ts';
import { openPaper } from '../../state/transport.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import type { Order } from '../order.ts';
import { Wrong } from '../Wrong.tsx';
import { LastTimes } from './LastTimes.tsx';
import { SinceQuote } from './SinceQuote.tsx';

const GOES = ['open', 'hand', 'mail', 'text', 'later'] as const;
type Goes = (typeof GOES)[number];

/** The form's id: its main button stands in the foot bar. */
export const QUOTE_FORM = 'quote-form';

/** A quote about to be issued: until when it stands, what moved since the last one, and how it goes to the customer. */
export function QuoteForm({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const settings = useShop()?.settings;
  const now = useNow(60_000);
  const quotes = useAsk('quote.list', { orderId: order.id }).data?.quotes ?? [];
  const issue = useDo('quote.issue');
  const sent = useDo('paper.sent');
  const [until, setUntil] = useState<string | null>(null);
  const [goes, setGoes] = useState<Goes>('open');
  const usual = addDays(civilDateOf(now, writing.zone), settings?.quoteDays ?? 0);
  const day = until ?? usual;
  const past = day !== '' && day < civilDateOf(now, writing.zone);
  const leave = () => goTo('orders', order.id);
  const { customer } = order;

  const go = async () => {
    if (past || issue.busy) return;
    const answer = await issue.run({ orderId: order.id, validUntil: until === '' ? null : until });
    if (!answer.ok) return;
    const how = {
      hand: t('sheet.handedOver'),
      mail: t('sheet.mailed', { to: customer.email }),
      text: t('quote.texted', { to: customer.phone }),
    };
    if (goes === 'hand' || goes === 'mail' || goes === 'text')
      await sent.run({ id: answer.output.paperId, how: how[goes] });
    if (goes !== 'later') openPaper(answer.output.paperId);
    leave();
  };
  useKey('Ctrl+Enter', () => void go());
  useKey('Esc', leave);

  return (
    <form
      id={QUOTE_FORM}
      className="quote-form"
      aria-label={t('quote.title')}
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <header className="bench-head">
        <h2>{t(quotes.length === 0 ? 'quote.title' : 'quote.titleAgain')}</h2>
        <span className="small">{t('quote.version', { n: quotes.length + 1 })}</span>
      </header>
      <section>
        <Field
          label={t('quote.until')}
          type="date"
          value={day}
          onChange={setUntil}
          onLeave={() => setUntil(day === '' ? null : until)}
          autoFocus
          {...(until === null ? { filledFrom: t('quote.fromShop') } : {})}
          error={past ? t('quote.past') : null}
          note={day === '' ? undefined : t('quote.untilNote', { day: civilText(day, writing) })}
        />
      </section>
      <SinceQuote order={order} quote={quotes.at(-1) ?? null} />
      <section>
        <h3>{t('quote.goes')}</h3>
        <Choice
          label={t('quote.goes')}
          quiet
          value={goes}
          options={GOES.map((value) => ({
            value,
            words: t(`quote.goes-${value}`),
            held: (value === 'mail' && customer.email === '') || (value === 'text' && customer.phone === ''),
          }))}
          onChange={setGoes}
        />
        <p className="small ink-2">
          {goes === 'mail' ? t('quote.mailNote', { to: customer.email }) : ''}
          {goes === 'text' ? t('quote.textNote', { to: customer.phone }) : ''}
          {goes === 'later' ? t('quote.laterNote') : ''}
        </p>
        {goes === 'text' || goes === 'mail' ? (
          <Field
            label={t('quote.words')}
            value={messageOf(order, amountText(order.yes.onSheet ?? null, writing), civilText(day, writing))}
            readOnly
            lines={5}
          />
        ) : null}
      </section>
      {order.jobs.some((job) => job.bookVersionId !== null) ? (
        <section>
          <h3>{t('quote.lastTimesHead')}</h3>
          {order.jobs.map((job) =>
            job.bookVersionId === null ? null : (
              <div key={job.id}>
                <b>
                  {job.letter} {job.title}
                </b>
                <LastTimes job={job} />
              </div>
            ),
          )}
        </section>
      ) : null}
      <Wrong error={issue.error ?? sent.error} />
    </form>
  );
}

/** What is written to the customer: which car, which jobs, how much, until when, and how they may answer. */
function messageOf(order: Order, sum: string, until: string): string {
  const jobs = order.jobs.filter((job) => !job.offered && job.answer !== 'no' && job.answer !== 'later');
  return [
    t('quote.message', { car: `${order.car.words} ${order.car.plate}`.trim(), sum, until }),
    ...jobs.map((job) => `${job.letter}  ${job.title}`),
    t('quote.messageEnd'),
  ].join('\n');
}
