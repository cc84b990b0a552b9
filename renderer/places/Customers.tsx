import { CustomerList } from './customers/CustomerList.tsx';
import { CustomerPage } from './customers/CustomerPage.tsx';
import type { PlaceProps } from './index.ts';

/** The place Customers: the list, or one of them. */
export default function Customers({ path }: PlaceProps) {
  const [id] = path;
  return id === undefined ? <CustomerList /> : <CustomerPage id={id} />;
}
