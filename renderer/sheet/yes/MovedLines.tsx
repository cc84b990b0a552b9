import { useWriting } from '../../state/shop.ts';
import { amountText, quantityText, type Writing } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { MovedJob, MovedLine } from './moved.ts';

interface Props {
  readonly moved: MovedJob;
  /** Outside the sum: only what it would come to. */
  readonly aside: boolean;
  /** The heading's level where it stands. */
  readonly level?: 'h2' | 'h4';
}

/** A job with what moved in it: the old struck, now, and how much more; what stayed folds to one row. */
export function MovedLines({ moved, aside, level: Head = 'h2' }: Props) {
  const writing = useWriting();
  const { job, same } = moved;
  return (
    <>
      <Head>
        <i>{job.letter}</i> {job.title}
        {job.kind === 'charged' ? null : <em>{t(`sheet.jobKind-${job.kind}`)}</em>}
      </Head>
      {aside ? (
        <p className="yes-line">
          <span className="ink-2">{job.lines.map((line) => line.words).join(', ')}</span>
          <span />
          <span className="figure">{amountText(job.amount, writing)}</span>
          <span />
        </p>
      ) : (
        moved.moved.map((line) => <Row key={line.id} line={line} byLine={moved.byLine} writing={writing} />)
      )}
      {aside || same.count === 0 ? null : (
        <p className="yes-line same">
          <span>{t('decision.asBefore', { n: same.count })}</span>
          <span className="figure yes-was">{amountText(same.amount, writing)}</span>
          <span className="figure">{amountText(same.amount, writing)}</span>
          <span className="figure">{amountText(0, writing)}</span>
        </p>
      )}
      {aside || moved.was === null || moved.byLine ? null : (
        <p className="yes-line same">
          <span>{t('decision.jobWas')}</span>
          <s className="figure yes-was">{amountText(moved.was, writing)}</s>
          <span className="figure">{amountText(moved.now, writing)}</span>
          <b className="figure">{moreText(moved.now - moved.was, writing)}</b>
        </p>
      )}
    </>
  );
}

function Row({ line, byLine, writing }: { line: MovedLine; byLine: boolean; writing: Writing }) {
  const { was, now } = line;
  const quantity = (of: { readonly quantity: number }) => quantityText(of.quantity, line.unit, writing);
  return (
    <p className="yes-line">
      <span>
        {now === null ? <s>{line.words}</s> : line.words}
        {now === null ||
        (now.quantity === 1000 && line.unit === '' && (was === null || was.quantity === 1000)) ? null : (
          <>
            ,{' '}
            {was !== null && was.quantity !== now.quantity ? (
              <>
                <s>{quantity(was)}</s> <b>{quantity(now)}</b>
              </>
            ) : (
              quantity(now)
            )}
          </>
        )}
      </span>
      <span className="figure yes-was">
        {was !== null ? <s>{amountText(was.amount, writing)}</s> : byLine ? t('decision.new') : ''}
      </span>
      <span className="figure">{now === null ? t('decision.gone') : amountText(now.amount, writing)}</span>
      <b className="figure">{byLine ? moreText((now?.amount ?? 0) - (was?.amount ?? 0), writing) : ''}</b>
    </p>
  );
}

/** A difference with its sign: "+3.15", "−12.00", "0.00". */
export function moreText(minor: number, writing: Writing): string {
  return minor > 0 ? `+${amountText(minor, writing)}` : amountText(minor, writing);
}
