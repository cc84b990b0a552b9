import { LINE_KINDS } from '../../../core/money/line.ts';
import { useSession } from '../../state/session.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import type { Line, Order } from '../order.ts';
import { readReduction, reductionText } from '../reduction.ts';
import { SheetCell } from '../SheetCell.tsx';
import { AwaitedPart } from './AwaitedPart.tsx';
import { changeLine } from './change-line.ts';
import { LabourMore } from './LabourMore.tsx';
import { Named } from './Named.tsx';
import { Offered } from './Offered.tsx';
import { SheetPick } from './SheetPick.tsx';

const CONDITIONS = ['', 'new', 'used', 'rebuilt', 'reconditioned'] as const;

interface Props {
  readonly order: Order;
  readonly line: Line;
}

/** The rest of a line, opened under it: kind, part number, condition, supplier, discount, cost, how hours are charged. */
export function LineMore({ order, line }: Props) {
  const writing = useWriting();
  const owner = useSession((session) => session.person?.role === 'owner');
  const change = changeLine(line.id);
  const cell = { revision: line.revision };
  const bought = line.kind === 'part' || line.kind === 'fluid' || line.kind === 'outside' || line.kind === 'core';
  return (
    <div className="more" role="group" aria-label={t('edit.moreOf', { words: line.words })}>
      <Named words={t('sheet.newKind')}>
        <SheetPick
          {...cell}
          label={t('edit.kindOf', { words: line.words })}
          value={line.kind}
          options={LINE_KINDS.map((kind) => ({ value: kind, words: t(`sheet.kind-${kind}`) }))}
          save={(kind, revision) => change(revision, { kind: LINE_KINDS.find((one) => one === kind) ?? line.kind })}
          inRow={(row) => String(row.kind)}
        />
      </Named>
      {line.kind === 'labour' ? (
        <LabourMore order={order} line={line} />
      ) : (
        <>
          <Named words={t('edit.partNumber')}>
            <SheetCell
              {...cell}
              label={t('edit.partNumberOf', { words: line.words })}
              value={line.partNumber}
              save={(partNumber, revision) => change(revision, { partNumber })}
              inRow={(row) => String(row.partNumber)}
            />
          </Named>
          <Named words={t('edit.condition')}>
            <SheetPick
              {...cell}
              label={t('edit.conditionOf', { words: line.words })}
              value={line.condition ?? ''}
              options={CONDITIONS.map((value) => ({
                value,
                words: value === '' ? t('edit.notSaid') : t(`sheet.condition-${value}`),
              }))}
              save={(value, revision) =>
                change(revision, { condition: CONDITIONS.find((one) => one !== '' && one === value) || null })
              }
              inRow={(row) => String(row.condition ?? '')}
            />
          </Named>
        </>
      )}
      {bought ? (
        <Named words={t('edit.supplier')}>
          <SheetCell
            {...cell}
            label={t('edit.supplierOf', { words: line.words })}
            value={line.supplier}
            save={(supplier, revision) => change(revision, { supplier })}
            inRow={(row) => String(row.supplier)}
          />
        </Named>
      ) : null}
      {line.unitPrice === null ? null : (
        <Named words={t('edit.discount')}>
          <SheetCell
            {...cell}
            figure
            label={t('edit.discountOf', { words: line.words })}
            value={reductionText(line.discount, writing)}
            placeholder={t('edit.discountHint')}
            unread={t('sheet.discountUnread')}
            save={(text, revision) => {
              if (text.trim() === '') return change(revision, { discount: null });
              const discount = readReduction(text, writing);
              return discount === null ? null : change(revision, { discount });
            }}
            inRow={(row) => reductionText(row.discount as Line['discount'], writing)}
          />
        </Named>
      )}
      {bought && (owner || line.unitCost !== null) ? (
        <Named words={t('edit.cost')}>
          <SheetCell
            {...cell}
            figure
            label={t('edit.costOf', { words: line.words })}
            value={amountText(line.unitCost, writing)}
            placeholder={t('edit.notKnown')}
            save={(text, revision) => {
              if (text.trim() === '') return change(revision, { unitCost: null });
              const unitCost = readAmount(text, writing);
              return unitCost === null || unitCost < 0 ? null : change(revision, { unitCost });
            }}
            inRow={(row) => (typeof row.unitCost === 'number' ? amountText(row.unitCost, writing) : '')}
          />
        </Named>
      ) : null}
      <Offered line={line} />
      {bought ? <AwaitedPart order={order} line={line} /> : null}
    </div>
  );
}
