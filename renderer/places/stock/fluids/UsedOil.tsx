import { useState } from 'react';
import { civilDateOf } from '../../../../core/time/instant.ts';
import { hrefOf } from '../../../frame/router.ts';
import { Field } from '../../../parts/Field.tsx';
import { useWriting } from '../../../state/shop.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { quantityText } from '../../../words/figures.ts';
import { t } from '../../../words/t.ts';
import { civilText } from '../../../words/times.ts';

/** What came out of cars between two days, and the sum of each fluid. From the first of the year until told otherwise. */
export function UsedOil() {
  const writing = useWriting();
  const today = civilDateOf(Date.now(), writing.zone);
  const [from, setFrom] = useState(`${today.slice(0, 4)}-01-01`);
  const [to, setTo] = useState(today);
  const fits = from !== '' && to !== '' && from <= to;
  const { data } = useAsk('fluid.usedOil', fits ? { from, to } : null);
  const litres = (quantity: number) => quantityText(quantity, '', writing);
  return (
    <>
      <div className="side-by-side">
        <Field label={t('fluids.from')} type="date" past value={from} onChange={setFrom} />
        <Field
          label={t('fluids.to')}
          type="date"
          past
          value={to}
          onChange={setTo}
          error={from !== '' && to !== '' && !fits ? t('fluids.wrongDays') : null}
        />
      </div>
      {data === undefined || !fits ? null : data.rows.length === 0 ? (
        <p className="ink-2">{t('fluids.nothing')}</p>
      ) : (
        <table className="fluid-log">
          <thead>
            <tr>
              <th scope="col">{t('fluids.day')}</th>
              <th scope="col">{t('fluids.order')}</th>
              <th scope="col">{t('fluids.car')}</th>
              <th scope="col">{t('fluids.unit')}</th>
              <th scope="col">{t('fluids.fluid')}</th>
              <th scope="col">{t('fluids.by')}</th>
              <th scope="col" className="figure">
                {t('fluids.quantity')}
              </th>
            </tr>
          </thead>
          <tbody>
            {data.rows.map((row) => (
              <tr key={row.id}>
                <td>{civilText(row.on, writing)}</td>
                <td>
                  <a href={hrefOf('orders', row.orderId)}>{row.orderNumber}</a>
                </td>
                <td>{row.car}</td>
                <td>{[row.unit.name, row.unit.serial].filter((part) => part !== '').join(', ')}</td>
                <td>{row.fluid}</td>
                <td>{row.by}</td>
                <td className="figure">{litres(row.quantity)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            {data.byFluid.map(({ fluid, quantity }) => (
              <tr key={fluid}>
                <th scope="row" colSpan={6}>
                  {fluid}
                </th>
                <td className="figure">{litres(quantity)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row" colSpan={6}>
                {t('fluids.total')}
              </th>
              <td className="figure">{litres(data.total)}</td>
            </tr>
          </tfoot>
        </table>
      )}
    </>
  );
}
