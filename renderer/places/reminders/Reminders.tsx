import { useRef, useState } from 'react';
import { addDays } from '../../../core/time/civil.ts';
import { civilDateOf } from '../../../core/time/instant.ts';
import { Page } from '../../frame/Page.tsx';
import { Empty } from '../../parts/Empty.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loading } from '../../parts/Loading.tsx';
import { useRowKeys } from '../../parts/row-keys.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { errorSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';
import { ReminderLine } from './ReminderLine.tsx';
import './reminders.css';

/** One list to call down: whom, about what, what came of it the last times; one of them open. */
export function Reminders() {
  const writing = useWriting();
  const list = useRef<HTMLUListElement>(null);
  const [until, setUntil] = useState(() => civilDateOf(Date.now(), writing.zone));
  const [open, setOpen] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const { data, error, loading } = useAsk('reminder.list', until === '' ? null : { until });
  useRowKeys(list, '.reminder-row');
  const rows = data?.rows ?? [];
  return (
    <Page title={t('reminders.title')} words={data === undefined ? '' : t('reminders.words', { n: rows.length })}>
      <div className="list-find">
        <Field label={t('reminders.until')} type="date" value={until} onChange={setUntil} />
        <div className="contact-acts">
          {[0, 14, 30].map((days) => (
            <button
              key={days}
              type="button"
              className="link"
              onClick={() => setUntil(addDays(civilDateOf(Date.now(), writing.zone), days))}
            >
              {t(days === 0 ? 'reminders.today' : 'reminders.inDays', { n: days })}
            </button>
          ))}
        </div>
      </div>
      <p role="status" className="semi">
        {said}
      </p>
      {error && !data ? <p role="alert">{errorSentence(error, writing)}</p> : null}
      {loading ? <Loading rows={6} /> : null}
      {data !== undefined && rows.length === 0 ? <Empty>{t('reminders.none')}</Empty> : null}
      <ul className="reminders" ref={list}>
        {rows.map((row) => (
          <ReminderLine
            key={row.id}
            row={row}
            open={open === row.id}
            onOpen={() => setOpen(open === row.id ? null : row.id)}
            onSaid={setSaid}
          />
        ))}
      </ul>
    </Page>
  );
}
