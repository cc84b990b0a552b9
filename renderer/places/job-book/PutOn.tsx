import { useState } from 'react';
import { goTo } from '../../frame/router.ts';
import { Button } from '../../parts/Button.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useAsk } from '../../state/use-ask.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { Pick } from '../book-in/Talk.tsx';
import type { Content } from './draft.ts';

interface Props {
  readonly bookJobId: string;
  readonly goesWith: Content['goesWith'];
  readonly onClose: () => void;
}

/** The job goes onto the sheet of an open order, with those that go with it where they are ticked; the order is opened then. */
export function PutOn({ bookJobId, goesWith, onClose }: Props) {
  const orders = useAsk('order.page', { filter: { which: 'open' } }).data?.rows;
  const put = useDo('job.fromBook');
  const [chosen, setChosen] = useState('');
  const [along, setAlong] = useState<readonly string[]>([]);
  const jobs = useAsk('jobBook.list', {}).data?.rows ?? [];
  const offered = goesWith.flatMap((one) => jobs.filter((job) => job.id === one.bookJobId && job.version > 0));
  const orderId = chosen === '' ? (orders?.[0]?.id ?? '') : chosen;
  if (orders === undefined) return null;
  if (orders.length === 0) return <p>{t('jobBook.putOnNone')}</p>;
  const go = async () => {
    for (const id of [bookJobId, ...along]) {
      const answer = await put.run({ orderId, bookJobId: id });
      if (!answer.ok) return;
    }
    goTo('orders', orderId);
  };
  return (
    <form
      className="book-put"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Pick
        label={t('jobBook.putOnWhich')}
        value={orderId}
        options={orders.map((row) => ({
          value: row.id,
          words: [row.number, row.plate, row.car, row.customer].filter((text) => text !== '').join(', '),
        }))}
        onChange={setChosen}
      />
      {offered.map(({ id, title }) => (
        <Tick
          key={id}
          ticked={along.includes(id)}
          onTick={(ticked) => setAlong((now) => (ticked ? [...now, id] : now.filter((one) => one !== id)))}
        >
          {t('jobBook.putOnWith', { title })}
        </Tick>
      ))}
      <Button type="submit" disabled={put.busy}>
        {t('jobBook.putOnGo')}
      </Button>
      <Button onClick={onClose}>{t('frame.close')}</Button>
      <NotSaved error={put.error} />
    </form>
  );
}
