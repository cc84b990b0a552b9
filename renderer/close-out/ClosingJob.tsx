import { WordMark } from '../parts/WordMark.tsx';
import type { Order } from '../sheet/order.ts';
import { Wrong } from '../sheet/Wrong.tsx';
import { useDo } from '../state/use-do.ts';
import { t } from '../words/t.ts';
import { ClosingLine } from './ClosingLine.tsx';
import type { CloseOutJob } from './close-out.ts';

interface Props {
  readonly order: Order;
  readonly job: CloseOutJob;
  /** Whether there is a quote to hold it against. */
  readonly quoted: boolean;
}

/** A job on the closing paper; without a yes it is washed and says so. */
export function ClosingJob({ order, job, quoted }: Props) {
  const give = useDo('job.give');
  const revision = order.jobs.find((one) => one.id === job.id)?.revision;
  const uncovered = !job.covered && !job.given;
  return (
    <tbody className={uncovered ? 'uncovered' : undefined}>
      <tr className="closing-job">
        <th colSpan={4} scope="rowgroup">
          <div className="closing-title">
            <span className="closing-letter">{job.letter}</span>
            <span>{job.title}</span>
            {uncovered ? <WordMark kind="stop">{t('closeOut.noYes')}</WordMark> : null}
            {job.fixedPrice ? <em className="closing-note">{t('closeOut.fixed')}</em> : null}
            {job.given ? <em className="closing-note">{t('closeOut.given')}</em> : null}
            {job.given && revision !== undefined ? (
              <button
                type="button"
                className="link small"
                aria-label={t('closeOut.chargeAgainOf', { words: job.title })}
                onClick={() => void give.run({ id: job.id, revision, given: false })}
              >
                {t('closeOut.chargeAgain')}
              </button>
            ) : null}
          </div>
          <Wrong error={give.error} />
        </th>
      </tr>
      {job.lines.map((line) => (
        <ClosingLine
          key={line.lineId}
          line={line}
          quoted={quoted}
          revision={order.jobs.flatMap((one) => one.lines).find((one) => one.id === line.lineId)?.revision}
        />
      ))}
    </tbody>
  );
}
