import type { OutputOf } from '../../../core/contract/index.ts';
import { hrefOf } from '../../frame/router.ts';
import { Plate } from '../../parts/Plate.tsx';
import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { dayText, monthText } from '../../words/times.ts';

type Customer = OutputOf<'customer.get'>;

const MONTH = 7;
const nameOf = (car: { readonly words: string; readonly year: number | null }) =>
  car.year === null ? car.words : `${car.words}, ${car.year}`;

/** Their cars, and dashed those that were once theirs. */
export function CarsOf({ customer }: { readonly customer: Customer }) {
  const writing = useWriting();
  const now = Date.now();
  const { cars, carsGone } = customer;
  if (cars.length + carsGone.length === 0) return <p className="ink-2">{t('customers.noCars')}</p>;
  return (
    <>
      <ul className="customer-rows customer-cars">
        {cars.map((car) => (
          <li key={car.id}>
            <a href={hrefOf('cars', car.id)}>
              <span>{car.plate === '' ? null : <Plate plate={car.plate} />}</span>
              <span>
                <b className="semi">{nameOf(car)}</b>
                <br />
                <span className="small ink-2">
                  {t('customers.theirsSince', { from: monthText(car.from.slice(0, MONTH), writing) })}
                </span>
              </span>
              <span>
                {car.inShop !== null ? (
                  <b className="semi">{t('customers.inShop', { number: car.inShop })}</b>
                ) : car.lastHere === null ? null : (
                  t('customers.lastHere', { day: dayText(car.lastHere, writing, now) })
                )}
              </span>
            </a>
          </li>
        ))}
        {carsGone.map((car) => (
          <li key={car.id} className="gone">
            <a href={hrefOf('cars', car.id)}>
              <span>{car.plate === '' ? null : <Plate plate={car.plate} />}</span>
              <span>
                {nameOf(car)}
                <br />
                <span className="small ink-2">
                  {t('customers.theirsFromTo', {
                    from: monthText(car.from.slice(0, MONTH), writing),
                    to: monthText(car.to.slice(0, MONTH), writing),
                  })}
                </span>
              </span>
              <span>{t('customers.carGone')}</span>
            </a>
          </li>
        ))}
      </ul>
      {carsGone.length === 0 ? null : <p className="small ink-2">{t('customers.goneWords')}</p>}
    </>
  );
}
