import { CustomerList } from './customers/CustomerList.tsx';
import { CustomerPage } from './customers/CustomerPage.tsx';
import type { PlaceProps } from './index.ts';
import { Reminders } from './reminders/Reminders.tsx';

/** The place Customers: the list, one of them, or who is to be called about what is due. */
export default function Customers({ path }: PlaceProps) {
  const [id] = path;
  if (id === 'reminders') return <Reminders />;
  return id === undefined ? <CustomerList /> : <CustomerPage id={id} />;
}
