import { useState } from 'react';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { wrongSentence } from '../sheet/Wrong.tsx';
import { onRevision } from '../state/on-revision.ts';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';

/** The mileage as the car leaves. */
export function MendMileage({ order }: { readonly order: Order }) {
  const writing = useWriting();
  const write = useDo('order.mileageOut');
  const [text, setText] = useState('');
  const [unread, setUnread] = useState(false);
  const go = async () => {
    const digits = text.replaceAll(/[\s.,]/g, '');
    const readable = /^\d{1,7}$/.test(digits);
    setUnread(!readable);
    if (!readable) return;
    const mileage = Number(digits);
    await onRevision(
      order.revision,
      (revision) => write.run({ id: order.id, revision, mileage }),
      (row) => row.mileage === null,
    );
  };
  const came = order.mileageIn === null ? '' : `${wholeText(order.mileageIn, writing)}\u00a0${order.car.unit}`;
  return (
    <SmallForm verb={t('closeOut.write')} onSend={go} busy={write.busy}>
      <Field
        label={t('closeOut.mileageOut')}
        value={text}
        onChange={setText}
        placeholder={came === '' ? '' : t('closeOut.mileageIn', { mileage: came })}
        inputMode="numeric"
        figure
        error={
          unread
            ? t('closeOut.wholeFigure')
            : write.error === null
              ? null
              : belowIn(write.error)
                ? t('closeOut.belowIn', { mileage: came })
                : wrongSentence(write.error, writing)
        }
      />
    </SmallForm>
  );
}

function belowIn(error: NonNullable<ReturnType<typeof useDo>['error']>): boolean {
  return error.code === 'bad-input' && error.fields.some((field) => field.problem === 'below-mileage-in');
}
