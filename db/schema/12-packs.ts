/** Schema 12: up to how much of a part is bought, and in packs of how many; both in thousandths, null where nobody has said. */
const sql = `
ALTER TABLE part ADD COLUMN keep_at_most INTEGER CHECK (keep_at_most > 0);
ALTER TABLE part ADD COLUMN pack INTEGER CHECK (pack > 0);
`;

export const packs = { version: 12, name: 'packs', sql };
