import type { Mapping } from '../../../core/bring-in/fields.ts';
import { valueShown } from '../../../core/bring-in/row.ts';
import type { Table } from '../../../core/bring-in/table.ts';
import type { BadRow } from '../../../core/bring-in/whole-file.ts';
import { writeCsv } from '../../../core/take-out/csv.ts';
import { Button } from '../../parts/Button.tsx';
import { saveText } from '../../parts/save-text.ts';
import { problemSentence } from '../../words/error-sentence.ts';
import { t } from '../../words/t.ts';

const SHOWN = 40;

/** Why a row cannot be brought in: of each field what stands there and what does not fit. */
const reasonsOf = (row: BadRow, cells: readonly string[], mapping: Mapping): string =>
  row.problems
    .map(({ field, problem, with: figures }) => {
      const value = valueShown(cells, mapping, field);
      const words = { field: t(`bringIn.field-${field}`), value, problem: problemSentence(problem, figures) };
      return t(value === '' ? 'bringIn.badField' : 'bringIn.badValue', words);
    })
    .join('; ');

interface Props {
  readonly table: Table;
  readonly mapping: Mapping;
  readonly bad: readonly BadRow[];
}

/** Rows that cannot be brought in, each with its line and why; all of them to save, to put right and bring in again. */
export function BadRows({ table, mapping, bad }: Props) {
  if (bad.length === 0) return null;
  const cells = new Map(table.rows.map((row) => [row.line, row.cells]));
  const reasons = (row: BadRow) => reasonsOf(row, cells.get(row.line) ?? [], mapping);
  const save = () => {
    const rows = bad.map((row) => {
      const own = cells.get(row.line) ?? [];
      return [...table.names.map((_, at) => ({ figure: own[at] ?? '' })), reasons(row)];
    });
    const mark = table.delimiter === ',' ? ',' : ';';
    saveText('rows-to-put-right.csv', writeCsv([[...table.names, t('bringIn.reason')], ...rows], mark));
  };
  return (
    <section className="bring-bad" aria-label={t('bringIn.bad', { n: bad.length })}>
      <h3 className="h4">{t('bringIn.bad', { n: bad.length })}</h3>
      <p className="ink-2">{t('bringIn.badStay')}</p>
      <ul>
        {bad.slice(0, SHOWN).map((row) => (
          <li key={row.line}>
            <span className="figure">{t('bringIn.line', { line: row.line })}</span> <span>{reasons(row)}</span>
          </li>
        ))}
      </ul>
      {bad.length > SHOWN ? <p className="ink-2">{t('bringIn.more', { n: bad.length - SHOWN })}</p> : null}
      <Button small onClick={save}>
        {t('bringIn.saveBad')}
      </Button>
    </section>
  );
}
