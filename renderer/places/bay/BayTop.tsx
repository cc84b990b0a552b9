import type { ReactNode } from 'react';
import { Plate } from '../../parts/Plate.tsx';
import type { Order } from '../../sheet/order.ts';
import { t } from '../../words/t.ts';

interface Props {
  readonly order: Order;
  readonly title: string;
  /** Under the title; absent: the car, the order and its bay. */
  readonly under?: string;
  readonly action: ReactNode;
}

/** The head of each page beside the lift: which car, what about it, and the way back. */
export function BayTop({ order, title, under, action }: Props) {
  const where = { car: order.car.words, order: order.number, number: order.number, bay: order.booking?.bay ?? '' };
  return (
    <header className="bay-top">
      <Plate plate={order.car.plate} big />
      <div>
        <h1>{title}</h1>
        <p className="ink-2">{under ?? t(where.bay === '' ? 'bay.where' : 'bay.whereBay', where)}</p>
      </div>
      {action}
    </header>
  );
}
