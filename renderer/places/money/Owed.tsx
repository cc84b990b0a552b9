import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Empty } from '../../parts/Empty.tsx';
import { PaperLink } from '../../parts/PaperLink.tsx';
import { WordMark } from '../../parts/WordMark.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { Sticks, standing, type UnpaidRow } from './Sticks.tsx';

type Money = OutputOf<'money.get'>;

/** What is owed to the shop: drawn by age, and listed with the oldest first. */
export function Owed({ money }: { readonly money: Money }) {
  const writing = useWriting();
  const rows = [...money.unpaid].sort((a, b) => b.age - a.age || b.open - a.open);
  return (
    <section aria-label={t('money.owed')}>
      <h2 className="money-head">
        {t('money.owed')} <small>{t('money.byAge')}</small>
        <span>{amountText(money.owed, writing)}</span>
      </h2>
      {rows.length === 0 ? (
        <Empty>{t('money.allPaid')}</Empty>
      ) : (
        <>
          <Sticks rows={rows} />
          <table className="money-table">
            <thead>
              <tr>
                <th>{t('money.who')}</th>
                <th>{t('money.invoice')}</th>
                <th>{t('money.age')}</th>
                <th>{t('money.due')}</th>
                <th className="figure">{t('money.open')}</th>
                <th>
                  <span className="aloud">{t('money.actions')}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <Row key={row.paperId} row={row} />
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function Row({ row }: { readonly row: UnpaidRow }) {
  const writing = useWriting();
  const how = standing(row);
  const age = row.age === 0 ? t('money.today') : t('money.days', { n: row.age });
  return (
    <tr>
      <td>
        <a className="semi" href={hrefOf('customers', row.customerId)}>
          {row.customer}
        </a>
        <br />
        <span className="small ink-2">
          {row.plate === '' ? null : `${row.plate}, `}
          <a href={hrefOf('orders', row.orderId)}>{t('money.order', { number: row.orderNumber })}</a>
        </span>
      </td>
      <td>
        <PaperLink paperId={row.paperId}>
          <span className="aloud">{t('money.invoice')} </span>
          {row.number}
        </PaperLink>
      </td>
      <td>{age}</td>
      <td>
        {how === 'open' ? (
          civilText(row.dueOn, writing)
        ) : (
          <WordMark kind={how}>{t('money.overdue', { n: row.daysPastDue })}</WordMark>
        )}
      </td>
      <td className="figure semi">{amountText(row.open, writing)}</td>
      <td className="figure">
        <a
          href={hrefOf('orders', row.orderId)}
          aria-label={t('money.takeFor', { name: row.customer, number: row.number })}
        >
          {t('money.takePayment')}
        </a>
      </td>
    </tr>
  );
}

/** What came in today by way, what of it lies in the drawer, ageing and what stands the other way. */
export function Taken({ money }: { readonly money: Money }) {
  const writing = useWriting();
  const { today } = money;
  const text = (sum: number) => amountText(sum, writing);
  const ways = today.ways.filter((way) => way.count > 0);
  return (
    <>
      <section aria-label={t('money.taken')}>
        <h2>
          {t('money.taken')} <span>{text(today.in - today.back)}</span>
        </h2>
        {ways.length === 0 ? <p className="ink-2">{t('money.takenNone')}</p> : null}
        <dl className="money-sums">
          {ways.map((way) => (
            <div key={way.way}>
              <dt>
                {t(`money.way-${way.way}`, { n: way.count })}
                {way.back > 0 ? (
                  <span className="small ink-2">
                    {' '}
                    {t('money.back')} {text(way.back)}
                  </span>
                ) : null}
              </dt>
              <dd>{text(way.in - way.back)}</dd>
            </div>
          ))}
          <div className="sum">
            <dt>{t('money.drawer')}</dt>
            <dd>{text(today.drawer)}</dd>
          </div>
        </dl>
        <p className="small ink-2">{t('money.drawerWords')}</p>
      </section>
      <section aria-label={t('money.ageing')}>
        <h2>{t('money.ageing')}</h2>
        <dl className="money-sums">
          {money.ageing.map((bucket, at) => (
            <div key={bucket.upTo ?? 'above'}>
              <dt>{bucketWords(bucket.upTo, money.ageing[at - 1]?.upTo ?? 0)}</dt>
              <dd>{text(bucket.sum)}</dd>
            </div>
          ))}
        </dl>
      </section>
      {money.deposits === 0 && money.inFavour.length === 0 ? null : (
        <section aria-label={t('money.inFavour')}>
          <h2>{t('money.inFavour')}</h2>
          <dl className="money-sums">
            {money.deposits === 0 ? null : (
              <div>
                <dt>{t('money.deposits')}</dt>
                <dd>{text(money.deposits)}</dd>
              </div>
            )}
            {money.inFavour.map((row) => (
              <div key={row.paperId}>
                <dt>
                  <a href={hrefOf('orders', row.orderId)}>
                    {t('money.favourOf', { name: row.customer, number: row.number })}
                  </a>
                </dt>
                <dd>{text(row.sum)}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
    </>
  );
}

function bucketWords(upTo: number | null, before: number): string {
  if (upTo === null) return t('money.above', { n: before });
  return upTo === 0 ? t('money.notDue') : t('money.upTo', { n: upTo });
}
