import { DATE_ORDERS, type DateOrder, FIELDS, type Field, type Mapping } from '../../../core/bring-in/fields.ts';
import type { Table } from '../../../core/bring-in/table.ts';
import { Choice } from '../../parts/Choice.tsx';
import { t } from '../../words/t.ts';

interface Props {
  readonly table: Table;
  readonly mapping: Mapping;
  readonly onChange: (mapping: Mapping) => void;
}

const SHOWN = 3;
const KINDS = ['customer', 'car', 'visit'] as const;

/** What each column of the file holds: guessed, beside what stands in it; another choice is one list away. */
export function Columns({ table, mapping, onChange }: Props) {
  const change = (at: number, field: Field | null) =>
    onChange({
      ...mapping,
      // A field stands in one column only: where it stood before, it is left out.
      columns: mapping.columns.map((held, i) => (i === at ? field : field !== null && held === field ? null : held)),
    });
  return (
    <section className="bring-columns" aria-label={t('bringIn.columns')}>
      <table>
        <caption className="aloud">{t('bringIn.columns')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('bringIn.column')}</th>
            <th scope="col">{t('bringIn.holds')}</th>
            <th scope="col" colSpan={SHOWN}>
              {t('bringIn.inIt')}
            </th>
          </tr>
        </thead>
        <tbody>
          {table.names.map((name, at) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                <select
                  aria-label={t('bringIn.holdsWhat', { name })}
                  value={mapping.columns[at] ?? ''}
                  onChange={(event) => change(at, FIELDS.find((field) => field === event.target.value) ?? null)}
                >
                  <option value="">{t('bringIn.leftOut')}</option>
                  {KINDS.map((kind) => (
                    <optgroup key={kind} label={t(`bringIn.group_${kind}`)}>
                      {FIELDS.filter((field) => field.startsWith(kind)).map((field) => (
                        <option key={field} value={field}>
                          {t(`bringIn.field-${field}`)}
                        </option>
                      ))}
                    </optgroup>
                  ))}
                </select>
              </td>
              {table.rows.slice(0, SHOWN).map((row) => (
                <td key={row.line} className="ink-2">
                  {row.cells[at]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {mapping.columns.includes('visit-on') ? (
        <Choice<DateOrder>
          label={t('bringIn.dates')}
          value={mapping.dates}
          options={DATE_ORDERS.map((value) => ({ value, words: t(`bringIn.dates-${value}`) }))}
          onChange={(dates) => onChange({ ...mapping, dates })}
        />
      ) : null}
    </section>
  );
}
