import type { OutputOf } from '../../../core/contract/index.ts';
import { t } from '../../words/t.ts';

type PaperRow = OutputOf<'paper.list'>['rows'][number];

/** "Quote 301, version 2". */
export function paperName({ kind, number, version }: Pick<PaperRow, 'kind' | 'number' | 'version'>): string {
  return t(`money.paper-${kind}`, { number, version: version ?? 1 });
}
