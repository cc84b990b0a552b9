import { useState } from 'react';
import { FindingMore } from '../bench/FindingMore.tsx';
import { useSession } from '../state/session.ts';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { AddRow } from './AddRow.tsx';
import { SheetText } from './edit/SheetText.tsx';
import type { Order } from './order.ts';
import { SheetCell } from './SheetCell.tsx';
import { save } from './save.ts';
import { Wrong } from './Wrong.tsx';

type Urgency = Order['findings'][number]['urgency'];
/** Letters that a job's title may have at most. */
const TITLE_MOST = 200;
const URGENCIES: readonly Urgency[] = ['unsafe', 'soon', 'watch'];

interface Props {
  readonly order: Order;
  readonly locked: boolean;
  /** Their words may be changed by the desk only. */
  readonly headLocked: boolean;
}

/** What the customer says beside what we found; a finding is added where it is read. */
export function Found({ order, locked, headLocked }: Props) {
  const [text, setText] = useState('');
  const [urgency, setUrgency] = useState<Urgency>('soon');
  const add = useDo('finding.add');
  const toJob = useDo('job.add');
  const fromBook = useDo('job.fromBook');
  // What would mend it is the job: of the book with its lines and steps, else by its words.
  const makeJob = ({ id: findingId, text: words, mend }: Order['findings'][number]) => {
    if (mend?.bookJobId != null) return void fromBook.run({ orderId: order.id, bookJobId: mend.bookJobId, findingId });
    const title = (mend?.words ?? words).slice(0, TITLE_MOST);
    return void toJob.run({ orderId: order.id, job: { title }, findingId });
  };
  const mayPrice = useSession((session) => session.person?.role !== 'mechanic');
  const go = async () => {
    if (text.trim() === '') return;
    const answer = await add.run({ orderId: order.id, text, urgency });
    if (answer.ok) setText('');
  };
  return (
    <div className="say">
      <div>
        <h2 className="h4">{t('sheet.says')}</h2>
        {headLocked ? (
          order.complaint === '' ? null : (
            <p className="said">“{order.complaint}”</p>
          )
        ) : (
          <SheetText
            said
            locked={false}
            label={t('sheet.says')}
            hand={`${order.id} complaint`}
            value={order.complaint}
            revision={order.revision}
            save={(complaint, revision) => save('order.change', { id: order.id, revision, change: { complaint } })}
            inRow={(row) => String(row.complaint)}
          />
        )}
        {order.when.length === 0 ? null : <p className="small ink-2">{order.when.join(', ')}</p>}
      </div>
      <div>
        <h2 className="h4">{t('sheet.found')}</h2>
        {order.findings.map((finding) => (
          <div className="finding" key={finding.id}>
            <SheetCell
              label={t('sheet.found')}
              hand={`${finding.id} text`}
              wraps
              value={finding.text}
              revision={finding.revision}
              locked={locked}
              save={(words, revision) => save('finding.change', { id: finding.id, revision, text: words })}
              inRow={(row) => String(row.text)}
            />
            <em className={finding.urgency === 'unsafe' ? 'in-stop' : ''}>
              {t(`sheet.urgency-${finding.urgency}`)}, {finding.by}
            </em>
            {mayPrice && !locked && finding.jobId === null ? (
              <button type="button" className="link small" onClick={() => makeJob(finding)}>
                {t('sheet.toJob')}
              </button>
            ) : null}
            <FindingMore order={order} finding={finding} />
          </div>
        ))}
        {locked ? null : (
          <AddRow
            label={t('sheet.foundNew')}
            hint={t('sheet.foundHint')}
            typed={text}
            onType={setText}
            choiceLabel={t('sheet.urgency')}
            choices={URGENCIES}
            choice={urgency}
            sayChoice={(one) => t(`sheet.urgency-${one}`)}
            onChoose={setUrgency}
            busy={add.busy}
            onAdd={() => void go()}
          >
            <Wrong error={add.error ?? toJob.error ?? fromBook.error} />
          </AddRow>
        )}
      </div>
    </div>
  );
}
