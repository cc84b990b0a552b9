import { useState } from 'react';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { SmallForm } from '../parts/SmallForm.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';

const PURPOSES = ['check', 'confirm'] as const;
const OUTCOMES = ['fine', 'found', 'not-released'] as const;

/** Digits as on the clock; marks that part thousands do not count. */
const readMileage = (text: string): number | null => {
  const digits = text.replace(/[\s.,\u00a0]/g, '');
  return /^\d{1,7}$/.test(digits) ? Number(digits) : null;
};

/** A drive written down at the desk, with its odometer out and in; a check drive is somebody else's than who did the work. */
export function TestDrive({ order }: { readonly order: Order }) {
  const record = useDo('testDrive.record');
  const [open, setOpen] = useState(false);
  const [purpose, setPurpose] = useState<(typeof PURPOSES)[number]>('check');
  const [outcome, setOutcome] = useState<(typeof OUTCOMES)[number]>('fine');
  const [out, setOut] = useState(order.lastMileage === null ? '' : String(order.lastMileage));
  const [back, setBack] = useState('');
  const [words, setWords] = useState('');
  const [asked, setAsked] = useState(false);
  const from = readMileage(out);
  const to = readMileage(back);
  const silent = outcome !== 'fine' && words.trim() === '';
  const go = async () => {
    setAsked(true);
    if (from === null || to === null || silent) return;
    const answer = await record.run({ orderId: order.id, purpose, out: from, in: to, outcome, words });
    if (answer.ok) setOpen(false);
  };
  if (!open)
    return (
      <button type="button" className="link" onClick={() => setOpen(true)}>
        {t('release.drive')}
      </button>
    );
  return (
    <SmallForm verb={t('release.driveKeep')} onSend={go} busy={record.busy} wrong={<Wrong error={record.error} />}>
      <Choice
        label={t('release.driveFor')}
        value={purpose}
        options={PURPOSES.map((value) => ({ value, words: t(`release.purpose-${value}`) }))}
        onChange={setPurpose}
      />
      <Field
        label={t('release.driveOut')}
        value={out}
        onChange={setOut}
        inputMode="numeric"
        figure
        error={asked && from === null ? t('release.mileageWrong') : null}
      />
      <Field
        label={t('release.driveIn')}
        value={back}
        onChange={setBack}
        inputMode="numeric"
        figure
        autoFocus
        error={asked && to === null ? t('release.mileageWrong') : null}
      />
      <Choice
        label={t('release.driveResult')}
        value={outcome}
        options={OUTCOMES.map((value) => ({ value, words: t(`release.outcome-${value}`) }))}
        onChange={setOutcome}
      />
      <Field
        label={t('release.driveWords')}
        value={words}
        onChange={setWords}
        maxLength={300}
        error={asked && silent ? t('release.wordsNeeded') : null}
      />
    </SmallForm>
  );
}
