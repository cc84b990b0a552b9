import { useState } from 'react';
import type { InputOf, OutputOf } from '../../../../core/contract/index.ts';
import { Button } from '../../../parts/Button.tsx';
import { Choice } from '../../../parts/Choice.tsx';
import { Field } from '../../../parts/Field.tsx';
import type { Job, Order } from '../../../sheet/order.ts';
import { Wrong } from '../../../sheet/Wrong.tsx';
import { useNow } from '../../../state/now.ts';
import { useSession } from '../../../state/session.ts';
import { useWriting } from '../../../state/shop.ts';
import { useDo } from '../../../state/use-do.ts';
import { wholeText } from '../../../words/figures.ts';
import { listWords } from '../../../words/list.ts';
import { t } from '../../../words/t.ts';
import { nearText } from '../../../words/times.ts';

type Release = OutputOf<'release.get'>;
type Drive = InputOf<'testDrive.record'>;
type Urgency = NonNullable<Drive['urgency']>;

interface Props {
  readonly order: Order;
  readonly job: Job | undefined;
  readonly drives: Release['drives'];
  readonly doers: Release['doers'];
}

const URGENCIES: readonly Urgency[] = ['unsafe', 'soon', 'watch'];
const readWhole = (text: string) => (/^\d{1,7}$/.test(text.trim()) ? Number(text) : null);

/** Test drives: odometer out and in, how it went, what was noticed. The work is tried by somebody who did not do it. */
export function Drives({ order, job, drives, doers }: Props) {
  const writing = useWriting();
  const now = useNow(30_000);
  const me = useSession((session) => session.person?.personId);
  const record = useDo('testDrive.record');
  const last = drives.at(-1)?.in ?? order.mileageIn;
  const [purpose, setPurpose] = useState<'confirm' | 'check'>(
    order.jobs.some((one) => one.clockedMinutes > 0) ? 'check' : 'confirm',
  );
  const [out, setOut] = useState(last === null ? '' : String(last));
  const [back, setBack] = useState('');
  const [outcome, setOutcome] = useState<Drive['outcome'] | null>(null);
  const [words, setWords] = useState('');
  const [urgency, setUrgency] = useState<Urgency>('soon');
  const from = readWhole(out);
  const to = readWhole(back);
  const own = purpose === 'check' && doers.some((one) => one.personId === me);
  const missing =
    from === null || to === null
      ? t('leave.bothReadings')
      : outcome === null
        ? t('leave.sayHow')
        : outcome !== 'fine' && words.trim() === ''
          ? t('leave.sayNoticed')
          : null;
  const go = async () => {
    if (from === null || to === null || outcome === null) return;
    const answer = await record.run({
      ...{ orderId: order.id, jobId: job?.id ?? null, purpose, out: from, in: to, outcome, words, urgency },
    });
    if (!answer.ok) return;
    setOut(String(to));
    setBack('');
    setOutcome(null);
    setWords('');
  };
  return (
    <section className="found-row" aria-label={t('leave.drives')}>
      <h2>{t('leave.drives')}</h2>
      {drives.map((drive) => (
        <p key={drive.id} className="list-row">
          <span>
            <b>{t(`leave.purpose-${drive.purpose}`)}</b>{' '}
            {t('leave.drove', {
              by: drive.by,
              when: nearText(drive.at, writing, now),
              out: wholeText(drive.out, writing),
              in: wholeText(drive.in, writing),
              unit: order.car.unit,
            })}{' '}
            {t(`leave.went-${drive.outcome}`)} {drive.words}
          </span>
        </p>
      ))}
      <div className="leave-form">
        <Choice
          label={t('leave.purpose')}
          value={purpose}
          options={[
            { value: 'confirm', words: t('leave.purpose-confirm') },
            { value: 'check', words: t('leave.purpose-check') },
          ]}
          onChange={setPurpose}
        />
        {own ? (
          <p className="in-stop semi">{t('leave.byOther', { names: listWords(doers.map((one) => one.name)) })}</p>
        ) : null}
        <div className="work-fields">
          <Field
            label={t('leave.out', { unit: order.car.unit })}
            figure
            inputMode="numeric"
            value={out}
            onChange={setOut}
          />
          <Field
            label={t('leave.in', { unit: order.car.unit })}
            figure
            inputMode="numeric"
            value={back}
            onChange={setBack}
          />
        </div>
        <Choice
          label={t('leave.outcome')}
          value={outcome}
          options={(['fine', 'found', 'not-released'] as const).map((one) => ({
            value: one,
            words: t(`leave.outcome-${one}`),
          }))}
          onChange={setOutcome}
        />
        {outcome === null || outcome === 'fine' ? null : (
          <Field label={t('leave.noticed')} value={words} maxLength={300} onChange={setWords} />
        )}
        {outcome === 'found' ? (
          <Choice
            label={t('found.urgent')}
            value={urgency}
            options={URGENCIES.map((one) => ({ value: one, words: t(`found.urgency-${one}`) }))}
            onChange={setUrgency}
          />
        ) : null}
        <Wrong error={record.error} />
        <Button kind="go" held={missing} disabled={record.busy} onClick={() => void go()}>
          {t('leave.record')}
        </Button>
      </div>
    </section>
  );
}
