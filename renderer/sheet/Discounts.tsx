import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { AddRow } from './AddRow.tsx';
import type { Order } from './order.ts';
import { readReduction, reductionText } from './reduction.ts';
import { Wrong } from './Wrong.tsx';

type On = InputOf<'discount.add'>['on'];
const ONS: readonly On[] = ['all', 'labour', 'parts'];
/** Discounts of the whole sheet: a percentage or a sum, on everything, the labour or the parts. */
export function Discounts({ order, locked }: { readonly order: Order; readonly locked: boolean }) {
  const writing = useWriting();
  const add = useDo('discount.add');
  const takeOut = useDo('discount.takeOut');
  const [typed, setTyped] = useState('');
  const [on, setOn] = useState<On>('all');
  const [unread, setUnread] = useState(false);
  const go = async () => {
    const reduction = readReduction(typed, writing);
    setUnread(reduction === null);
    if (reduction === null) return;
    const answer = await add.run({ orderId: order.id, on, reduction });
    if (answer.ok) setTyped('');
  };
  return (
    <div className="discounts">
      {order.discounts.map((one) => (
        <p key={one.id}>
          {t(`sheet.discount-${one.on}`, {
            how: reductionText(one.reduction, writing),
          })}{' '}
          {locked ? null : (
            <button type="button" className="link small" onClick={() => void takeOut.run({ id: one.id })}>
              {t('sheet.takeOut')}
            </button>
          )}
        </p>
      ))}
      {locked ? null : (
        <AddRow
          label={t('sheet.discountNew')}
          hint={t('sheet.discountHint')}
          typed={typed}
          onType={setTyped}
          choiceLabel={t('sheet.discountOn')}
          choices={ONS}
          choice={on}
          sayChoice={(one) => t(`sheet.on-${one}`)}
          onChoose={setOn}
          busy={add.busy}
          onAdd={() => void go()}
        />
      )}
      {unread ? (
        <p className="wrong-words" role="alert">
          {t('sheet.discountUnread')}
        </p>
      ) : null}
      <Wrong error={add.error ?? takeOut.error} />
    </div>
  );
}
