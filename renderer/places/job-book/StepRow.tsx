import { t } from '../../words/t.ts';
import type { Step } from './draft.ts';
import { measureText, oneTimeText } from './read-step.ts';
import { newtonMetres } from './torque-words.ts';
import { useJob } from './writing-job.tsx';

/** A step as it is read: its words, its marks, its figures. */
export function StepRow({ step, onOpen }: { readonly step: Step; readonly onOpen: () => void }) {
  const { content } = useJob();
  const sourceless = step.torque !== null && step.source === '' && content.sourceOfFigures === '';
  return (
    <button type="button" className="book-step" onClick={onOpen}>
      <b className="book-n">{step.n}</b>
      <span>
        {step.do} <Marks step={step} />
      </span>
      <span className="figure semi">
        {figuresOf(step)}
        {sourceless ? <span className="in-heed">, {t('jobBook.noSource')}</span> : null}
      </span>
    </button>
  );
}

/** Dashed: a one-time part. Plain: the second person, a photo, a card. Heavy: hold. */
function Marks({ step }: { readonly step: Step }) {
  return (
    <>
      {step.oneTime.length > 0 ? <span className="book-mark one">{oneTimeText(step.oneTime)}</span> : null}
      {step.second === '' ? null : (
        <span className="book-mark">{t('jobBook.secondMark', { what: t(`jobBook.second-${step.second}`) })}</span>
      )}
      {step.photoWanted ? <span className="book-mark">{t('jobBook.photoMark')}</span> : null}
      {step.recheckCard ? <span className="book-mark">{t('jobBook.cardMark')}</span> : null}
      {step.hold === '' ? null : (
        <span className="book-mark hold">
          {t('jobBook.holdMark')}: {step.hold}
        </span>
      )}
      {step.care === '' ? null : <span className="book-mark care">{step.care}</span>}
    </>
  );
}

function figuresOf({ torque, measure, fluidIn, fluidOut, sample }: Step): string {
  const tightened =
    torque === null
      ? ''
      : t('jobBook.bolts', { count: torque.count * torque.sides, figures: newtonMetres(torque.stages) });
  const fluid = fluidIn ?? fluidOut;
  return [
    tightened,
    measureText(measure),
    fluid === null ? '' : `${fluid.quantity / 1000}\u00a0L`,
    sample === null ? '' : `${sample.millilitres}\u00a0ml`,
  ]
    .filter((text) => text !== '')
    .join(', ');
}
