import { useState } from 'react';
import { civilDateOf } from '../../core/time/instant.ts';
import { Button } from '../parts/Button.tsx';
import { Field } from '../parts/Field.tsx';
import { NotSaved } from '../parts/Notice.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { wholeText } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { civilText } from '../words/times.ts';
import { AnswerForm } from './AnswerForm.tsx';
import type { Sample } from './lab-series.ts';

/** The samples of a unit, newest first; each is sent and answered where it stands. */
export function SampleRows({ rows }: { readonly rows: readonly Sample[] }) {
  return (
    <ul className="lab-samples">
      {rows.map((row) => (
        <SampleRow key={row.id} row={row} />
      ))}
    </ul>
  );
}

function SampleRow({ row }: { readonly row: Sample }) {
  const writing = useWriting();
  const [open, setOpen] = useState<'' | 'send' | 'answer'>('');
  const day = (on: string) => civilText(on, writing);
  const said = [
    t('lab.drawn', { day: day(civilDateOf(row.drawnAt, writing.zone)), by: row.drawnBy }),
    row.distance === null
      ? ''
      : t('lab.distance', { figure: wholeText(row.distance, writing), unit: row.distanceUnit }),
    row.startsHistory ? t('lab.starts') : '',
    row.sentOn === null ? '' : t('lab.sent', { day: day(row.sentOn), lab: row.lab }),
    row.resultOn === null ? '' : t('lab.came', { day: day(row.resultOn) }),
    row.sentOn === null && row.resultOn === null ? t('lab.notSent') : '',
  ].filter((part) => part !== '');
  const close = () => setOpen('');
  return (
    <li>
      <div className="lab-sample">
        <b>{row.label}</b>
        <span>{said.join(', ')}</span>
        {open === '' ? (
          <span className="car-acts">
            {row.sentOn === null && row.resultOn === null ? (
              <button type="button" className="link" onClick={() => setOpen('send')}>
                {t('lab.send')} <span className="aloud">{row.label}</span>
              </button>
            ) : null}
            <button type="button" className="link" onClick={() => setOpen('answer')}>
              {t(row.resultOn === null ? 'lab.enter' : 'lab.change')} <span className="aloud">{row.label}</span>
            </button>
          </span>
        ) : null}
      </div>
      {open === 'send' ? <SendForm row={row} close={close} /> : null}
      {open === 'answer' ? <AnswerForm row={row} close={close} /> : null}
    </li>
  );
}

function SendForm({ row, close }: { readonly row: Sample; readonly close: () => void }) {
  const writing = useWriting();
  const send = useDo('sample.send');
  const [lab, setLab] = useState(row.lab);
  const [on, setOn] = useState(() => civilDateOf(Date.now(), writing.zone));
  const [tried, setTried] = useState(false);
  const go = async () => {
    setTried(true);
    if (lab.trim() === '' || on === '') return;
    if ((await send.run({ id: row.id, revision: row.revision, lab: lab.trim(), on })).ok) close();
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
        label={t('lab.lab')}
        value={lab}
        onChange={setLab}
        maxLength={80}
        autoFocus
        error={tried && lab.trim() === '' ? t('lab.labNeeded') : null}
      />
      <Field label={t('lab.on')} type="date" past value={on} onChange={setOn} />
      <div className="car-form-go car-acts">
        <Button type="submit" disabled={send.busy}>
          {t('lab.sendIt')}
        </Button>
        <Button onClick={close}>{t('lab.leave')}</Button>
      </div>
      <NotSaved error={send.error} />
    </form>
  );
}
