import { useState } from 'react';
import type { InputOf } from '../../core/contract/index.ts';
import { useKey } from '../frame/keys.ts';
import { Choice } from '../parts/Choice.tsx';
import { Field } from '../parts/Field.tsx';
import { SignaturePad, type Strokes } from '../parts/SignaturePad.tsx';
import { Tick } from '../parts/Tick.tsx';
import { useWriting } from '../state/shop.ts';
import { useDo } from '../state/use-do.ts';
import { amountText, readAmount } from '../words/figures.ts';
import { t } from '../words/t.ts';
import type { Job, Order } from './order.ts';
import { Tried } from './Tried.tsx';
import { Wrong } from './Wrong.tsx';

type Input = InputOf<'decision.record'>;
type Answer = Input['jobs'][number]['answer'];
type Way = Input['way'];
const ANSWERS = ['yes', 'no', 'later', 'unasked'] as const;
const WAYS = ['signed', 'phone', 'message', 'person'] as const;

interface Props {
  readonly order: Order;
  readonly onDone: () => void;
  /** The ceiling as it is typed, minor units; null where it cannot be read. */
  readonly onUpTo: (total: number | null) => void;
}

/** What is said of one job, with what was told where it is no or later. */
interface Said {
  readonly answer: Answer | 'unasked';
  readonly risk: string;
  readonly unsafe: boolean;
}

/** The form's id: its button stands in the foot bar. */
export const YES_FORM = 'yes-form';

/** Records what somebody said: which jobs, up to how much, who, how, in their words. */
export function RecordYes({ order, onDone, onUpTo }: Props) {
  const writing = useWriting();
  const record = useDo('decision.record');
  const open = order.jobs.filter((job) => !job.covered);
  const [said, setSaid] = useState<Readonly<Record<string, Said>>>({});
  const [upTo, setUpTo] = useState(amountText(order.yes.onSheet ?? null, writing));
  const people = peopleOf(order);
  const [who, setWho] = useState('0');
  const [otherName, setOtherName] = useState('');
  const [way, setWay] = useState<Way>('phone');
  const [reached, setReached] = useState(order.customer.phone);
  const [words, setWords] = useState('');
  const [strokes, setStrokes] = useState<Strokes | null>(null);
  const [onPaper, setOnPaper] = useState(false);
  const [oldParts, setOldParts] = useState<'show' | 'return' | 'dispose' | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);

  const of = (job: Job): Said =>
    said[job.id] ?? { answer: job.covered ? 'unasked' : 'yes', risk: '', unsafe: unsafeFound(order, job) };
  const set = (job: Job, change: Partial<Said>) => setSaid({ ...said, [job.id]: { ...of(job), ...change } });
  const answered = order.jobs.filter((job) => of(job).answer !== 'unasked');
  const anyYes = answered.some((job) => of(job).answer === 'yes');

  const go = async () => {
    const total = readAmount(upTo, writing);
    if (answered.length === 0) return setWrong(t('decision.noneNamed'));
    if (anyYes && (total === null || total < 0)) return setWrong(t('sheet.unread', { label: t('decision.upTo') }));
    const person = people[Number(who)];
    const name = person === undefined || person.name === '' ? otherName.trim() : person.name;
    if (name === '') return setWrong(t('decision.nameNeeded'));
    if (way === 'signed' && onPaper) return setWrong(t('decision.paperWay'));
    setWrong(null);
    const answer = await record.run({
      orderId: order.id,
      quotePaperId: order.papers.findLast((paper) => paper.kind === 'quote')?.id ?? null,
      jobs: answered.map((job) => {
        const one = of(job);
        const no = one.answer !== 'yes';
        return {
          jobId: job.id,
          answer: one.answer === 'unasked' ? 'later' : one.answer,
          risk: no ? one.risk : '',
          unsafe: no && one.unsafe,
        };
      }),
      upTo: anyYes && total !== null ? { total } : null,
      spoken: { name, role: person?.role ?? 'customer' },
      way,
      reached: way === 'signed' ? '' : reached,
      words,
      strokes: way === 'signed' ? strokes : null,
      oldParts,
    });
    if (answer.ok) onDone();
  };
  useKey('Ctrl+Enter', () => void go());
  useKey('Esc', onDone);

  return (
    <form
      id={YES_FORM}
      className="yes-form"
      aria-label={t('decision.title')}
      onSubmit={(event) => {
        event.preventDefault();
        void go();
      }}
    >
      <header className="bench-head">
        <h2>{t('decision.title')}</h2>
        <span>{t('decision.dashed')}</span>
      </header>
      <section>
        <h3>{t('decision.jobs')}</h3>
        {order.jobs.map((job) => {
          const one = of(job);
          return (
            <div className="yes-job" key={job.id}>
              <span>
                <b>{job.letter}</b> {job.title}
                {job.covered ? <em> {t('decision.covered')}</em> : null}
              </span>
              <span className="figure">{amountText(job.amount, writing)}</span>
              <Choice
                label={t('decision.answerOf', { letter: job.letter, title: job.title })}
                quiet
                joined
                stamp="yes"
                value={one.answer}
                options={ANSWERS.filter((value) => value !== 'unasked' || job.covered || open.length > 1).map(
                  (value) => ({
                    value,
                    words: t(`decision.answer-${value}`),
                  }),
                )}
                onChange={(answer) => set(job, { answer })}
              />
              {one.answer === 'no' || one.answer === 'later' ? (
                <div className="yes-told">
                  <Field
                    label={t('decision.risk')}
                    value={one.risk}
                    onChange={(risk) => set(job, { risk })}
                    placeholder={t('decision.riskHint')}
                  />
                  <Tick ticked={one.unsafe} onTick={(unsafe) => set(job, { unsafe })}>
                    {t('decision.unsafe')}
                  </Tick>
                </div>
              ) : null}
            </div>
          );
        })}
      </section>
      <section>
        <h3>{t('decision.upTo')}</h3>
        <div>
          <Field
            label={t('decision.upToLabel')}
            value={upTo}
            onChange={(text) => {
              setUpTo(text);
              onUpTo(readAmount(text, writing));
            }}
            figure
            autoFocus
            inputMode="decimal"
          />
          <p className="small ink-2">
            {t('decision.upToNote', { sheet: amountText(order.yes.onSheet ?? null, writing) })}
          </p>
        </div>
      </section>
      <section>
        <h3>{t('decision.who')}</h3>
        <div>
          <Choice
            label={t('decision.who')}
            quiet
            value={who}
            options={people.map((person, i) => ({ value: String(i), words: person.words(amountIn) }))}
            onChange={setWho}
          />
          {people[Number(who)]?.name === '' ? (
            <Field label={t('decision.name')} value={otherName} onChange={setOtherName} />
          ) : null}
        </div>
      </section>
      <section>
        <h3>{t('decision.how')}</h3>
        <div>
          <Choice
            label={t('decision.how')}
            quiet
            value={way}
            options={WAYS.map((value) => ({ value, words: t(`decision.way-${value}`) }))}
            onChange={(next) => {
              setWay(next);
              setReached(next === 'phone' ? order.customer.phone : next === 'message' ? order.customer.email : '');
            }}
          />
          {way === 'signed' ? (
            <SignaturePad
              words={t('decision.signFor', { sum: upTo })}
              strokes={strokes}
              onChange={setStrokes}
              onPaper={onPaper}
              setOnPaper={setOnPaper}
            />
          ) : (
            <Field label={t(`decision.reached-${way}`)} value={reached} onChange={setReached} />
          )}
        </div>
      </section>
      <section>
        <h3>{t('decision.words')}</h3>
        <Field label={t('decision.wordsLabel')} value={words} onChange={setWords} lines={2} said />
      </section>
      <section>
        <h3>{t('decision.oldParts')}</h3>
        <Choice
          label={t('decision.oldParts')}
          quiet
          value={oldParts}
          options={(['show', 'return', 'dispose'] as const).map((value) => ({
            value,
            words: t(`decision.old-${value}`),
          }))}
          onChange={setOldParts}
        />
      </section>
      <Tried order={order} />
      {wrong === null ? null : (
        <p className="wrong-words" role="alert">
          {wrong}
        </p>
      )}
      <Wrong error={record.error} />
    </form>
  );

  function amountIn(minor: number): string {
    return amountText(minor, writing);
  }
}

interface Speaker {
  /** '' where the name is typed. */
  readonly name: string;
  readonly role: Input['spoken']['role'];
  readonly words: (amount: (minor: number) => string) => string;
}

/** Who may say yes here: the customer, those they named, the payer, the owner for free work, or somebody else named. */
function peopleOf(order: Order): Speaker[] {
  const { customer, payer } = order;
  const free = order.jobs.some((job) => job.kind !== 'charged');
  return [
    { name: customer.name, role: 'customer', words: () => t('decision.whoCustomer', { name: customer.name }) },
    ...customer.mayYes.map(
      (one): Speaker => ({
        name: one.name,
        role: 'named',
        words: (amount) =>
          one.upTo === null ? one.name : t('decision.whoNamed', { name: one.name, sum: amount(one.upTo) }),
      }),
    ),
    ...(payer === null
      ? []
      : [{ name: payer.name, role: 'payer', words: () => t('decision.whoPayer', { name: payer.name }) } as const]),
    ...(free ? [{ name: '', role: 'owner', words: () => t('decision.whoOwner') } as const] : []),
  ];
}

const unsafeFound = (order: Order, job: Job) =>
  order.findings.some((finding) => finding.jobId === job.id && finding.urgency === 'unsafe');
