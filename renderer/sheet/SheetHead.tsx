import { useNow } from '../state/now.ts';
import { useShop, useWriting } from '../state/shop.ts';
import { wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { nearText, timeText, weekdayText } from '../words/times.ts';
import type { Order } from './order.ts';
import { Saved } from './Saved.tsx';

interface Props {
  readonly order: Order;
  /** In place of the shop's name and address. */
  readonly title?: string;
  /** Under the title. */
  readonly under?: string;
}

/** The head of the paper: the shop, the number of the order, the car with who brought it. */
export function SheetHead({ order, title, under = '' }: Props) {
  const settings = useShop()?.settings;
  const writing = useWriting();
  const now = useNow(60_000);
  const mileage = order.mileageOut ?? order.mileageIn ?? order.lastMileage;
  return (
    <>
      <header className="sheet-top">
        <div>
          <h2 className="shop-name">{title ?? settings?.name ?? ''}</h2>
          <p className="small ink-2">
            {title === undefined ? [...(settings?.address ?? []), settings?.phone ?? ''].join(', ') : under}
          </p>
        </div>
        <div className="order-side">
          <Saved />
          <h1 className="order-number">
            <span>{t('sheet.order')}</span> {order.number}
          </h1>
        </div>
      </header>
      <div className="car-line">
        <span className="plate big">{order.car.plate || t('sheet.noPlate')}</span>
        <p>
          <b>
            {order.car.words}
            {order.car.year === null ? '' : `, ${order.car.year}`}
          </b>
          <br />
          <span className="small">{order.car.vin === '' ? '' : `VIN ${order.car.vin}`}</span>
        </p>
        <p>
          <b>{order.customer.name}</b>
          <br />
          <span className="small">
            {[order.customer.phone, order.customer.tellBy].filter((one) => one !== '').join(', ')}
          </span>
          {order.payer === null ? null : <span className="small">{t('sheet.payer', { name: order.payer.name })}</span>}
        </p>
        <p className="figure">
          <b>{mileage === null ? '' : `${wholeText(mileage, writing)}\u00a0${order.car.unit}`}</b>
          <br />
          <span className="small">
            {order.arrivedAt === null
              ? t('sheet.notHere')
              : order.mileageOut !== null && order.mileageIn !== null
                ? t('closeOut.outSince', { n: wholeText(order.mileageOut - order.mileageIn, writing) })
                : t('sheet.in', {
                    when: `${weekdayText(order.arrivedAt, writing)}, ${timeText(order.arrivedAt, writing)}`,
                  })}
          </span>
          {order.promiseAt === null || order.mileageOut !== null ? null : (
            <span className="small">, {t('sheet.promised', { when: nearText(order.promiseAt, writing, now) })}</span>
          )}
        </p>
      </div>
    </>
  );
}
