import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import type { Order } from './order.ts';
import { Wrong } from './Wrong.tsx';

type Doubt = NonNullable<InputOf<'order.arrive'>['mileageDoubt']>;
/** What the desk may answer where the clock shows less than last time. */
const DOUBTS = ['as-typed', 'clock-replaced', 'owner-told'] as const;

/** The car is here, with its mileage; a lower one than last time wants a word. */
export function Arrive({ order }: { readonly order: Order }) {
  const arrive = useDo('order.arrive');
  const [text, setText] = useState('');
  const [unread, setUnread] = useState(false);
  const digits = text.replaceAll(/[\s.,]/g, '');
  const go = async (mileageDoubt: Doubt) => {
    const readable = /^\d{0,7}$/.test(digits);
    setUnread(!readable);
    if (!readable) return;
    const mileage = digits === '' ? null : Number(digits);
    await arrive.run({ id: order.id, revision: order.revision, mileage, mileageDoubt });
  };
  const lower = arrive.error?.code === 'held' && arrive.error.reasons.some((reason) => reason.what === 'mileage-lower');
  return (
    <SmallForm
      big
      verb={t('sheet.arrive')}
      onSend={() => go('none')}
      busy={arrive.busy}
      wrong={
        <>
          <Wrong error={arrive.error} />
          {lower
            ? DOUBTS.map((doubt) => (
                <Button key={doubt} small disabled={arrive.busy} onClick={() => void go(doubt)}>
                  {t(`papers.doubt-${doubt}`)}
                </Button>
              ))
            : null}
        </>
      }
    >
      <Field
        label={t('sheet.mileageIn')}
        value={text}
        onChange={setText}
        inputMode="numeric"
        figure
        error={unread ? t('closeOut.wholeFigure') : null}
      />
    </SmallForm>
  );
}
