/** What is kept of a person, as data: parts by name, each with its rows. */
export type CopyData = Readonly<Record<string, readonly Readonly<Record<string, string | number | boolean | null>>[]>>;

/**
 * The same to read: a heading a part, a paragraph a row, a line a value. What is empty is left out; a part without rows
 * says so, so that nobody wonders whether it was forgotten.
 */
export function copyText(title: string, data: CopyData): string {
  const parts = Object.entries(data).map(([head, rows]) => {
    const paragraphs = rows.map((row) =>
      Object.entries(row)
        .filter(([, value]) => value !== null && value !== '')
        .map(([name, value]) => `${name}: ${value === true ? 'yes' : value === false ? 'no' : value}`)
        .join('\n'),
    );
    return [head.toUpperCase(), ...(paragraphs.length === 0 ? ['nothing is kept'] : paragraphs)].join('\n\n');
  });
  return `${[title, ...parts].join('\n\n\n')}\n`;
}
