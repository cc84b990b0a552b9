import { useDeferredValue, useState } from 'react';
import { hrefOf } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { PaperLink } from '../../parts/PaperLink.tsx';
import { useNow } from '../../state/now.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText, nearText } from '../../words/times.ts';
import { paperName } from './paper-name.ts';

const KINDS = ['all', 'quote', 'invoice', 'credit-note', 'receipt'] as const;
type Kind = (typeof KINDS)[number];
const PAGE = 50;

/** Every paper that was issued, newest first. */
export function Papers() {
  const writing = useWriting();
  const now = useNow(60_000);
  const [kind, setKind] = useState<Kind>('all');
  const [text, setText] = useState('');
  const [before, setBefore] = useState<string | null>(null);
  const sought = useDeferredValue(text);
  const asked = useAsk('paper.list', { kind: kind === 'all' ? null : kind, text: sought, before, most: PAGE });
  const rows = asked.data?.rows ?? [];
  const last = rows.at(-1)?.id;
  return (
    <section aria-label={t('money.page-papers')}>
      <div className="money-filter">
        <Choice
          label={t('money.kind')}
          quiet
          joined
          value={kind}
          options={KINDS.map((value) => ({
            value,
            words: value === 'all' ? t('money.all') : t(`money.kind-${value}`),
          }))}
          onChange={(next) => {
            setKind(next);
            setBefore(null);
          }}
        />
        <Field
          label={t('money.find')}
          value={text}
          onChange={(next) => {
            setText(next);
            setBefore(null);
          }}
          maxLength={60}
        />
      </div>
      <NotSaved error={asked.error} />
      {asked.loading ? <Loading rows={8} /> : null}
      {asked.data !== undefined && rows.length === 0 ? (
        <Empty>{t(kind === 'all' && text === '' ? 'money.papersNone' : 'money.papersNoneFound')}</Empty>
      ) : null}
      {rows.length === 0 ? null : (
        <table className="money-table">
          <thead>
            <tr>
              <th>{t('money.paper')}</th>
              <th>{t('money.day')}</th>
              <th>{t('money.who')}</th>
              <th>{t('money.orderHead')}</th>
              <th>{t('money.sent')}</th>
              <th className="figure">{t('money.sum')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.id}>
                <td>
                  <PaperLink paperId={row.id}>{paperName(row)}</PaperLink>
                  {row.corrects === null ? null : (
                    <span className="small ink-2"> {t('money.corrects', { n: row.corrects })}</span>
                  )}
                </td>
                <td>{civilText(row.issuedOn, writing)}</td>
                <td>
                  <a href={hrefOf('customers', row.customerId)}>{row.customer}</a>
                  {row.plate === '' ? null : <span className="small ink-2"> {row.plate}</span>}
                </td>
                <td>
                  <a href={hrefOf('orders', row.orderId)}>{row.orderNumber}</a>
                </td>
                <td className="ink-2">
                  {row.sentAt === null
                    ? t('money.notSent')
                    : t('money.sentAt', { when: nearText(row.sentAt, writing, now) })}
                </td>
                <td className="figure semi">{amountText(row.gross, writing)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="money-pages">
        {before === null ? null : <Button onClick={() => setBefore(null)}>{t('money.newest')}</Button>}
        {rows.length < PAGE || last === undefined ? null : (
          <Button onClick={() => setBefore(last)}>{t('money.older')}</Button>
        )}
      </p>
    </section>
  );
}
