import type { PlaceProps } from './index.ts';
import { OrderPage } from './OrderPage.tsx';
import { OrderList } from './orders/OrderList.tsx';

/** The place Orders: the list, or one order's sheet. */
export default function Orders({ path }: PlaceProps) {
  const [id, beside = ''] = path;
  return id === undefined ? <OrderList /> : <OrderPage key={id} id={id} beside={beside} />;
}
