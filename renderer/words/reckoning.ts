import type { ReckoningStep } from '../../core/money/line.ts';
import { amountText, quantityText, rateText, type Writing } from './figures.ts';
import { tMaybe } from './t.ts';

const SUMS: ReadonlySet<string> = new Set([
  'of',
  'unitPrice',
  'lines',
  'labour',
  'parts',
  'both',
  'base',
  'price',
  'worth',
  'gross',
  'net',
  'tax',
  'sum',
]);

/** One step of a reckoning in words; the rule's own name where there are no words for it yet. */
export function reckoningSentence(step: ReckoningStep, writing: Writing): string {
  const figures = Object.fromEntries(
    Object.entries(step.on).map(([name, value]) => [
      name,
      typeof value === 'number' ? figureText(name, value, writing) : value,
    ]),
  );
  return tMaybe(`reckoning.${step.rule}`, figures) ?? step.rule;
}

function figureText(name: string, value: number, writing: Writing): string {
  if (name === 'ratePpm') return rateText(value, writing);
  if (name === 'bp') return rateText(value * 100, writing);
  if (name === 'quantity' || name === 'step') return quantityText(value, '', writing);
  return SUMS.has(name) ? amountText(value, writing) : String(value);
}
