import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../../core/contract/index.ts';
import { Stepper } from '../../../bench/Stepper.tsx';
import { TapsWaiting } from '../../../bench/TapsWaiting.tsx';
import { Button } from '../../../parts/Button.tsx';
import { Choice } from '../../../parts/Choice.tsx';
import { Field } from '../../../parts/Field.tsx';
import type { Order } from '../../../sheet/order.ts';
import { newRequestId } from '../../../state/request-id.ts';
import { tap } from '../../../state/taps.ts';
import { useAsk } from '../../../state/use-ask.ts';
import { t } from '../../../words/t.ts';
import { BayTop } from '../BayTop.tsx';
import { LimitScale } from '../found/LimitScale.tsx';

type List = OutputOf<'checkList.list'>['rows'][number];
type Answer = InputOf<'check.record'>['answers'][number];
type Said = Pick<Answer, 'seen' | 'words' | 'value'>;

interface Props {
  readonly order: Order;
  readonly checkListId: string;
  readonly onBack: () => void;
}

const SEEN = ['fine', 'watch', 'soon', 'unsafe', 'not-seen'] as const;
const PRESS = 100;

/** A list of the shop gone through at the car: each item is answered once; what is not fine becomes a finding. */
export function CheckPage({ order, checkListId, onBack }: Props) {
  const list = useAsk('checkList.list', {}).data?.rows.find((one) => one.id === checkListId);
  const [said, setSaid] = useState<Readonly<Record<number, Said>>>({});
  if (list === undefined) return null;
  const items = list.items.map((item, place) => ({ item, place, said: said[place] }));
  const left = items.filter((one) => one.said === undefined).length;
  const send = async () => {
    const answers = items.flatMap(({ place, said: answer }) =>
      answer === undefined ? [] : [{ item: place, ...answer, findingId: newRequestId() }],
    );
    await tap('check.record', { orderId: order.id, checkListId, answers });
    onBack();
  };
  return (
    <>
      <BayTop order={order} title={list.title} action={<Button onClick={onBack}>{t('bay.back')}</Button>} />
      <TapsWaiting />
      <div className="bay-mid found">
        {items.map(({ item, place, said: answer }) => (
          <ItemRow key={place} item={item} said={answer} onSay={(to) => setSaid((all) => ({ ...all, [place]: to }))} />
        ))}
      </div>
      <footer className="found-foot">
        <p>{t('leave.findingsOf')}</p>
        <Button
          held={left === 0 ? t('leave.allSaid') : null}
          onClick={() =>
            setSaid(
              Object.fromEntries(items.map(({ place, said: answer }) => [place, answer ?? { seen: 'fine' as const }])),
            )
          }
        >
          {t('leave.restFine', { n: left })}
        </Button>
        <Button kind="go" held={left > 0 ? t('leave.itemsLeft', { n: left }) : null} onClick={() => void send()}>
          {t('leave.gone')}
        </Button>
      </footer>
    </>
  );
}

interface ItemProps {
  readonly item: List['items'][number];
  readonly said: Said | undefined;
  readonly onSay: (said: Said) => void;
}

function ItemRow({ item, said, onSay }: ItemProps) {
  const { measure } = item;
  const bad = said !== undefined && said.seen !== 'fine' && said.seen !== 'not-seen';
  return (
    <section className="found-row" aria-label={item.words}>
      <h2>
        {item.words} {item.place === '' ? null : <small>{item.place}</small>}
      </h2>
      <Choice
        quiet
        label={item.words}
        value={said?.seen ?? null}
        options={SEEN.map((seen) => ({ value: seen, words: t(`leave.seen-${seen}`) }))}
        onChange={(seen) => onSay({ ...said, seen })}
      />
      {measure === null ? null : (
        <>
          <Stepper
            label={measure.what}
            value={said?.value ?? null}
            onChange={(value) => onSay({ seen: 'fine', ...said, value })}
            step={PRESS}
            unit={measure.unit}
          />
          <LimitScale
            measuring={{
              ...{ what: measure.what, unit: measure.unit, value: said?.value ?? null, source: measure.source },
              side: measure.most === null ? 'least' : 'most',
              limit: measure.most ?? measure.least,
            }}
          />
        </>
      )}
      {bad ? (
        <Field
          label={t('found.inWords')}
          value={said.words ?? ''}
          maxLength={400}
          onChange={(words) => onSay({ ...said, words })}
        />
      ) : null}
    </section>
  );
}
