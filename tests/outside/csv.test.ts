import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readRows, readTable } from '../../core/bring-in/table.ts';
import { guarded, writeCsv } from '../../core/take-out/csv.ts';
import { checkFile } from './check-file.ts';

const file = checkFile(
  '07_text_formats.json',
  z.object({
    csv: z.array(z.object({ text: z.string(), rows: z.array(z.array(z.string())), src: z.string() })).min(1),
    csvInjection: z.array(z.object({ cell: z.string(), guarded: z.string(), note: z.string().default('') })).min(1),
  }),
);

const cellsOf = (text: string) => {
  const rows = readRows(text, ',');
  return 'problem' in rows ? rows : rows.map(({ cells }) => cells);
};

describe.skipIf(file === null)('RFC 4180', () => {
  test.each(file?.csv ?? [])('$src', ({ text, rows }) => {
    expect(cellsOf(text)).toEqual(rows);
    // What is written is read back as it was.
    expect(cellsOf(writeCsv(rows.map((row) => row.map((figure) => ({ figure })))))).toEqual(rows);
  });
});

describe.skipIf(file === null)('a cell that a table program would run', () => {
  test.each(file?.csvInjection ?? [])('$cell', ({ cell, guarded: expected, note }) => {
    // The one with a note is a figure of our own.
    const written = note === '' ? guarded(cell) : writeCsv([[{ figure: cell }]]).trimEnd();
    expect(written).toBe(expected);
  });
});

describe('the same table in every encoding and parting', () => {
  const rows = [
    ['Name', 'Ort'],
    ['Łucja Ćwik', 'Żory'],
    ['Måns Öst', 'Västerås'],
  ];
  const text = (mark: string, of: readonly (readonly string[])[]) => of.map((row) => row.join(mark)).join('\r\n');
  const latin = [rows[0] ?? [], rows[2] ?? []];
  const be = (bytes: Buffer) => Buffer.from(bytes).swap16();
  test.each([
    ['UTF-8', ',', Buffer.from(text(',', rows)), rows],
    ['UTF-8', ';', Buffer.from(`\uFEFF${text(';', rows)}`), rows],
    ['UTF-16', '\t', Buffer.from(`\uFEFF${text('\t', rows)}`, 'utf16le'), rows],
    ['UTF-16', ';', be(Buffer.from(`\uFEFF${text(';', rows)}`, 'utf16le')), rows],
    ['UTF-16', ';', Buffer.from(text(';', latin), 'utf16le'), latin],
    ['windows-1252', ';', Buffer.from(text(';', latin), 'latin1'), latin],
  ])('%s, parted by %j', (encoding, delimiter, bytes, expected) => {
    expect(readTable(bytes)).toMatchObject({
      encoding,
      delimiter,
      names: expected[0],
      rows: expected.slice(1).map((cells, at) => ({ line: at + 2, cells })),
    });
  });
});

test('a quote that is never closed is named by its line, an empty file as empty', () => {
  expect(readTable(Buffer.from('a,b\r\n1,2\r\n"3,4\r\n5,6\r\n'))).toEqual({ problem: 'quote-open', line: 3 });
  expect(readTable(Buffer.from(''))).toEqual({ problem: 'empty' });
  expect(readTable(Buffer.from('\uFEFF\r\n\r\n'))).toEqual({ problem: 'empty' });
});
