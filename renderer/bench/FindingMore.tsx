import type { Order } from '../sheet/order.ts';
import { useWriting } from '../state/shop.ts';
import { useAsk } from '../state/use-ask.ts';
import { quantityText, type Writing } from '../words/figures.ts';
import { t } from '../words/t.ts';
import { Photo } from './Photo.tsx';

type Finding = Order['findings'][number];

/** "play 1.2 mm, at most 0.5 mm (own figure)". */
function measuredWords(measured: NonNullable<Finding['measured']>, writing: Writing): string {
  const { what, value, unit, least, most, source } = measured;
  const figure = (thousandths: number) => quantityText(thousandths, unit, writing);
  const limits = [
    least === null ? '' : t('found.noLess', { limit: figure(least) }),
    most === null ? '' : t('found.noMore', { limit: figure(most) }),
  ].filter((words) => words !== '');
  const from = source === '' ? '' : ` (${source})`;
  return `${[`${what} ${figure(value)}`, ...limits].join(', ')}${from}`;
}

/** What stands under a finding on the sheet: the figure against its limit, what would mend it, its photos. */
export function FindingMore({ order, finding }: { readonly order: Order; readonly finding: Finding }) {
  const writing = useWriting();
  const { measured, mend } = finding;
  const photos = (useAsk('photo.list', { orderId: order.id }).data?.rows ?? []).filter(
    ({ of, takenOut }) => of.what === 'finding' && of.id === finding.id && !takenOut,
  );
  if (measured === null && mend === null && photos.length === 0) return null;
  return (
    <div className="finding-more small">
      {measured === null ? null : <p>{measuredWords(measured, writing)}</p>}
      {mend === null ? null : <p>{t('found.wouldMend', { words: mend.words })}</p>}
      {photos.length === 0 ? null : (
        <p className="finding-photos">
          {photos.map((photo) => (
            <Photo key={photo.id} id={photo.id} words={photo.words} />
          ))}
        </p>
      )}
    </div>
  );
}
