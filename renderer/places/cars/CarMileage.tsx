import { useState } from 'react';
import type { OutputOf } from '../../../core/contract/index.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Field } from '../../parts/Field.tsx';
import { NotSaved } from '../../parts/Notice.tsx';
import { useWriting } from '../../state/shop.ts';
import { useDo } from '../../state/use-do.ts';
import { wholeText } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { readMileageText } from '../book-in/draft.ts';
import { Talk } from '../book-in/Talk.tsx';

type Reading = OutputOf<'car.get'>['readings'][number];

const FEW = 5;

interface Props {
  readonly id: string;
  readonly unit: 'km' | 'mi';
  readonly readings: readonly Reading[];
}

/** The readings in their order, and a new one: read, told by the owner, or a clock that was replaced. */
export function CarMileage({ id, unit, readings }: Props) {
  const writing = useWriting();
  const [all, showAll] = useState(false);
  // Readings only grow at the end, so their place names them. One of the same day and figure says nothing new.
  const told = readings
    .map((reading, at) => ({ ...reading, key: `${at}` }))
    .filter(({ on, reading, event }, at) => {
      const before = readings[at - 1];
      return event === 'replaced' || before === undefined || before.on !== on || before.reading !== reading;
    })
    .toReversed();
  const rows = all ? told : told.slice(0, FEW);
  const distance = (figure: number) =>
    t(unit === 'km' ? 'cars.kilometres' : 'cars.miles', { figure: wholeText(figure, writing) });
  return (
    <Talk head={t('cars.mileage')}>
      {readings.length === 0 ? <p className="ink-2">{t('cars.noReadings')}</p> : null}
      <ul className="list-rows">
        {rows.map((reading) => (
          <li key={reading.key}>
            <div>
              <span>{civilText(reading.on, writing)}</span>
              <b>{distance(reading.reading)}</b>
              <span>{t(`cars.${reading.event}`, { start: distance(reading.newStart ?? 0) })}</span>
              <span className="figure">
                {reading.trueDistance === reading.reading
                  ? null
                  : t('cars.gone', { distance: distance(reading.trueDistance) })}
              </span>
            </div>
          </li>
        ))}
      </ul>
      {rows.length === told.length ? null : (
        <div>
          <button type="button" className="link" onClick={() => showAll(true)}>
            {t('cars.allReadings', { n: told.length })}
          </button>
        </div>
      )}
      <NewReading id={id} />
    </Talk>
  );
}

function NewReading({ id }: { readonly id: string }) {
  const writing = useWriting();
  const record = useDo('car.odometer');
  const [figure, setFigure] = useState('');
  const [start, setStart] = useState('0');
  const [event, setEvent] = useState<Reading['event']>('read');
  const [tried, setTried] = useState(false);
  const reading = readMileageText(figure);
  const newStart = readMileageText(start);
  const replaced = event === 'replaced';

  const go = async () => {
    setTried(true);
    if (reading === null || (replaced && newStart === null)) return;
    const on = civilDateOf(Date.now(), writing.zone);
    const answer = await record.run({ id, reading, on, event, newStart: replaced ? newStart : null });
    if (!answer.ok) return;
    setFigure('');
    setTried(false);
  };
  const wrong = (is: boolean) => (tried && is ? t('cars.mileageWrong') : null);
  return (
    <form
      className="side-by-side"
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <Choice
        label={t('cars.event')}
        value={event}
        options={[
          { value: 'read', words: t('cars.read') },
          { value: 'owner-told', words: t('cars.owner-told') },
          { value: 'replaced', words: t('intake.clockReplaced') },
        ]}
        onChange={setEvent}
      />
      <Field
        label={t(replaced ? 'cars.oldLast' : 'cars.newReading')}
        value={figure}
        onChange={setFigure}
        inputMode="numeric"
        error={wrong(reading === null)}
      />
      {replaced ? (
        <Field
          label={t('cars.newClock')}
          value={start}
          onChange={setStart}
          inputMode="numeric"
          error={wrong(newStart === null)}
        />
      ) : null}
      <div className="car-form-go">
        <Button type="submit" disabled={record.busy}>
          {t('cars.write')}
        </Button>
      </div>
      <NotSaved error={record.error} />
    </form>
  );
}
