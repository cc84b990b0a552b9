import { appendOnly } from './append-only.ts';

/** Of the papers on an order a quote is superseded by a later one and by the invoice; what stands is to be sent. */
const superseded = (paper: string) => `${paper}.kind = 'quote' AND EXISTS (
    SELECT 1 FROM paper AS later WHERE later.work_order_id = ${paper}.work_order_id
      AND (later.kind = 'invoice' OR (later.kind = 'quote' AND later.version > ${paper}.version)))`;

/**
 * Schema 13: papers that wait to be sent, each by a row that goes with its sending, so that counting them reads no other
 * paper: kept by triggers like the balance of an order (schema 5), compared again by `verify`, no record of its own. What a
 * customer agreed to, with when and how. What was done with a statement before it was sent. Storage that came to be after
 * the invoice: an order of its own that says whose storage it is, and the last day that a fee charges.
 */
const sql = `
CREATE TABLE to_send (paper_id TEXT PRIMARY KEY REFERENCES paper, issued_at INTEGER NOT NULL) STRICT;
INSERT INTO to_send SELECT id, issued_at FROM paper
  WHERE NOT EXISTS (SELECT 1 FROM paper_sent WHERE paper_id = paper.id) AND NOT (${superseded('paper')});
CREATE INDEX to_send_issued ON to_send (issued_at);
CREATE TRIGGER to_send_new AFTER INSERT ON paper BEGIN
  DELETE FROM to_send WHERE new.kind IN ('quote', 'invoice') AND paper_id IN (
    SELECT paper.id FROM paper WHERE paper.work_order_id = new.work_order_id AND ${superseded('paper')});
  INSERT INTO to_send SELECT new.id, new.issued_at WHERE NOT (${superseded('new')});
END;
CREATE TRIGGER to_send_sent AFTER INSERT ON paper_sent BEGIN
  DELETE FROM to_send WHERE paper_id = new.paper_id;
END;

-- append-only
CREATE TABLE consent (
  id TEXT PRIMARY KEY, customer_id TEXT NOT NULL REFERENCES customer,
  what TEXT NOT NULL CHECK (what IN ('reminders', 'photos', 'history')),
  answer TEXT NOT NULL CHECK (answer IN ('yes', 'no', 'unasked')),
  way TEXT NOT NULL CHECK (way IN ('person', 'signed', 'phone', 'message', 'mail', 'letter', 'unsaid')),
  on_day TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX consent_customer ON consent (customer_id, id);

-- append-only
CREATE TABLE statement_noted (
  id TEXT PRIMARY KEY, statement_id TEXT NOT NULL REFERENCES statement, what TEXT NOT NULL CHECK (what IN ('made', 'mail')),
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX statement_noted_statement ON statement_noted (statement_id);
CREATE INDEX statement_made ON statement (at, id) WHERE run_id IS NOT NULL;

ALTER TABLE work_order ADD COLUMN storage_of TEXT REFERENCES work_order;
CREATE INDEX work_order_storage_of ON work_order (storage_of) WHERE storage_of IS NOT NULL;
ALTER TABLE job ADD COLUMN storage_last TEXT;
`;

export const BOOKS_APPEND_ONLY = ['consent', 'statement_noted'] as const;

export const books = { version: 13, name: 'books', sql: sql + appendOnly(BOOKS_APPEND_ONLY) };
