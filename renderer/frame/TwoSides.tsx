import { type ReactNode, useRef, useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { t } from '../words/t.ts';
import { useKey } from './keys.ts';
import { useWidth } from './width.ts';

interface Props {
  readonly sheetLabel: string;
  readonly sheet: ReactNode;
  readonly benchLabel: string;
  readonly bench: ReactNode;
  /** Under both: the foot bar. */
  readonly foot?: ReactNode;
  /** Which side lies on top on a tablet at first. */
  readonly first?: 'sheet' | 'bench';
  /** Where a tablet goes instead of turning to the bench. */
  readonly onBench?: () => void;
}

/** The sheet and what belongs beside it; B takes the hand to it; on a tablet two sides, turned with one button or B. */
export function TwoSides({ sheetLabel, sheet, benchLabel, bench, foot, first = 'sheet', onBench }: Props) {
  const [side, setSide] = useState(first);
  const tablet = useWidth().width === 'tablet';
  const turn = () => (onBench === undefined ? setSide(side === 'sheet' ? 'bench' : 'sheet') : onBench());
  const beside = useRef<HTMLElement>(null);
  useKey('B', () => (tablet ? turn() : beside.current?.focus()));
  return (
    <>
      {tablet ? (
        <div className="turn">
          <Button onClick={turn}>{side === 'sheet' ? benchLabel : t('frame.turnToSheet')}</Button>
        </div>
      ) : null}
      <div className="desk" data-side={side}>
        <article className="sheet" aria-label={sheetLabel}>
          {sheet}
        </article>
        <aside className="bench" aria-label={benchLabel} ref={beside} tabIndex={-1}>
          {bench}
        </aside>
      </div>
      {foot}
    </>
  );
}
