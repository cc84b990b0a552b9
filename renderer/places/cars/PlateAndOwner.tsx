import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { Plate } from '../../parts/Plate.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { CustomerPick } from '../customers/CustomerPick.tsx';

type Car = OutputOf<'car.get'>;
type Span = { readonly from: string; readonly to: string | null };

/** Whose it was and which plates it wore, each from when to when; a new one from a day on keeps the old. */
export function PlateAndOwner({ car }: { readonly car: Car }) {
  const writing = useWriting();
  const [open, setOpen] = useState<'' | 'plate' | 'owner'>('');
  const span = ({ from, to }: Span) =>
    to === null
      ? t('cars.from', { from: civilText(from, writing) })
      : t('cars.fromTo', { from: civilText(from, writing), to: civilText(to, writing) });
  return (
    <>
      <ul className="car-spans">
        {car.plates.map((one) => (
          <li key={`${one.plate} ${one.from}`} className={one.to === null ? '' : 'gone'}>
            <Plate plate={one.plate} /> <span className="ink-2">{span(one)}</span>
          </li>
        ))}
        {car.owners.map((one) => (
          <li key={`${one.name} ${one.from}`}>
            <b className="semi">{one.name}</b> <span className="ink-2">{span(one)}</span>
          </li>
        ))}
      </ul>
      <div className="car-acts">
        <Button small expanded={open === 'plate'} onClick={() => setOpen(open === 'plate' ? '' : 'plate')}>
          {t('cars.newPlate')}
        </Button>
        <Button small expanded={open === 'owner'} onClick={() => setOpen(open === 'owner' ? '' : 'owner')}>
          {t('cars.newOwner')}
        </Button>
      </div>
      {open === 'plate' ? <NewPlate car={car} onDone={() => setOpen('')} /> : null}
      {open === 'owner' ? <NewOwner car={car} onDone={() => setOpen('')} /> : null}
    </>
  );
}

interface FormProps {
  readonly car: Car;
  readonly onDone: () => void;
}

function useFrom() {
  const writing = useWriting();
  const [from, setFrom] = useState(() => civilDateOf(Date.now(), writing.zone));
  return { from, field: <Field label={t('cars.fromDay')} type="date" past value={from} onChange={setFrom} /> };
}

function NewPlate({ car, onDone }: FormProps) {
  const change = useDo('car.plate');
  const [plate, setPlate] = useState('');
  const [tried, setTried] = useState(false);
  const { from, field } = useFrom();
  const go = async () => {
    setTried(true);
    if (plate.trim() === '' || from === '') return;
    const answer = await change.run({ id: car.id, revision: car.revision, plate, from });
    if (answer.ok) onDone();
  };
  return (
    <form
      className="side-by-side"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Field
        label={t('cars.plateNow')}
        value={plate}
        onChange={setPlate}
        maxLength={16}
        autoFocus
        error={tried && plate.trim() === '' ? t('cars.plateNeeded') : null}
      />
      {field}
      <div className="car-form-go">
        <Button type="submit" disabled={change.busy}>
          {t('cars.write')}
        </Button>
      </div>
      <NotSaved error={change.error} />
    </form>
  );
}

function NewOwner({ car, onDone }: FormProps) {
  const change = useDo('car.owner');
  const { from, field } = useFrom();
  const pick = async (customerId: string) => {
    if (from === '') return;
    const answer = await change.run({ id: car.id, revision: car.revision, customerId, from });
    if (answer.ok) onDone();
  };
  return (
    <>
      <div className="side-by-side">{field}</div>
      <CustomerPick label={t('cars.ownerNow')} not={car.owner?.id ?? null} onPick={({ id }) => void pick(id)} />
      <NotSaved error={change.error} />
    </>
  );
}
