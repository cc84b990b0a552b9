import type { OutputOf } from '../../core/contract/index.ts';
import { useWriting } from '../state/shop.ts';
import { amountText, quantityText } from '../words/figures.ts';
import { t } from '../words/t.ts';

export type Part = OutputOf<'part.list'>['rows'][number];

/** Parts on the shelf that answer what is typed: pressing one puts it into the line. */
export function PartHits({
  parts,
  onPick,
}: {
  readonly parts: readonly Part[];
  readonly onPick: (part: Part) => void;
}) {
  const writing = useWriting();
  if (parts.length === 0) return null;
  return (
    <ul className="part-hits" aria-label={t('edit.onTheShelf')}>
      {parts.map((part) => (
        <li key={part.id}>
          <button type="button" className="link small" onClick={() => onPick(part)}>
            {part.number} {part.words}
          </button>{' '}
          <span className="small ink-2">
            {amountText(part.price, writing)}, {quantityText(part.onHand, part.unit, writing)}
          </span>
        </li>
      ))}
    </ul>
  );
}
