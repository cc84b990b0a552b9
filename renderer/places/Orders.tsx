import { lazy } from 'react';
import type { PlaceProps } from './index.ts';
import { OrderPage } from './OrderPage.tsx';
import { OrderList } from './orders/OrderList.tsx';

/** The bench beside the lift, loaded when somebody goes to it. */
const BayPage = lazy(() => import('./bay/BayPage.tsx'));

/** The place Orders: the list, one order's sheet, or its bench beside the lift. */
export default function Orders({ path }: PlaceProps) {
  const [id, beside = '', side = '', about = ''] = path;
  const bay = /^bay(?:-(.*))?$/.exec(beside);
  if (id !== undefined && bay !== null)
    return <BayPage key={id} id={id} letter={bay[1] ?? ''} side={side} about={about} />;
  return id === undefined ? <OrderList /> : <OrderPage key={id} id={id} beside={beside} />;
}
