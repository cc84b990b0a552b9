import { appendOnly } from './append-only.ts';

/**
 * Schema 7: work on account. How much an account may owe, when its own order number has to be there, and each time that
 * the owner let work over that limit go on. Minor units. Columns added to an older table may be null (see schema 2).
 */
const tables = `
ALTER TABLE customer ADD COLUMN credit_limit INTEGER CHECK (credit_limit >= 0);
ALTER TABLE customer ADD COLUMN po_before TEXT CHECK (po_before IN ('invoice', 'work'));

-- append-only; one order, once, up to the yes that it then had
CREATE TABLE credit_pass (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, customer_id TEXT NOT NULL REFERENCES customer,
  up_to INTEGER NOT NULL CHECK (up_to >= 0), exposure INTEGER NOT NULL, credit_limit INTEGER NOT NULL CHECK (credit_limit >= 0),
  reason TEXT NOT NULL CHECK (reason <> ''), person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX credit_pass_order ON credit_pass (work_order_id);
`;

export const CREDIT_APPEND_ONLY = ['credit_pass'] as const;

export const credit = { version: 7, name: 'credit', sql: tables + appendOnly(CREDIT_APPEND_ONLY) };
