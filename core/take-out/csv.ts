/** A cell that is written out: free text is guarded, a figure of our own stays one. */
export type Cell = string | { readonly figure: string };

/**
 * Text that a table program would run as a formula gets a quote before it: = + - @, tab and carriage return at its
 * beginning (OWASP, CSV Injection).
 */
export const guarded = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

/** Rows as CSV (RFC 4180): cells quoted where they must be, every row ended by CR LF. */
export function writeCsv(rows: readonly (readonly Cell[])[], delimiter: ',' | ';' = ','): string {
  const quoted = (text: string) =>
    /["\r\n]/.test(text) || text.includes(delimiter) ? `"${text.replaceAll('"', '""')}"` : text;
  const written = (cell: Cell) => quoted(typeof cell === 'string' ? guarded(cell) : cell.figure);
  return rows.map((row) => `${row.map(written).join(delimiter)}\r\n`).join('');
}
