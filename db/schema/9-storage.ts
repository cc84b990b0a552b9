/**
 * Schema 9: storage of a car that is not fetched. When its price a day was agreed, and which job of the sheet charges it,
 * until which day. Columns of older tables may be null (see schema 2).
 */
const sql = `
ALTER TABLE work_order ADD COLUMN storage_agreed_at INTEGER;
ALTER TABLE job ADD COLUMN storage_until TEXT;
`;

export const storage = { version: 9, name: 'storage', sql };
