import { appendOnly } from './append-only.ts';

/**
 * Schema 8: statements that were sent or made to be sent. The figures are not kept, they follow from papers and payments
 * recorded by `as_of`; what was owed by it is, so that a list can say it.
 */
const tables = `
-- append-only; run_id: those of one run, joined into one file where joined is 1
CREATE TABLE statement (
  id TEXT PRIMARY KEY, run_id TEXT, joined INTEGER NOT NULL CHECK (joined IN (0, 1)),
  customer_id TEXT NOT NULL REFERENCES customer, from_day TEXT NOT NULL, until_day TEXT NOT NULL CHECK (until_day >= from_day),
  as_of INTEGER NOT NULL, closing INTEGER NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX statement_run ON statement (run_id, id) WHERE run_id IS NOT NULL;
CREATE INDEX statement_customer ON statement (customer_id, at);
-- append-only
CREATE TABLE statement_sent (
  id TEXT PRIMARY KEY, statement_id TEXT NOT NULL REFERENCES statement, how TEXT NOT NULL CHECK (how <> ''),
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX statement_sent_statement ON statement_sent (statement_id);
`;

export const STATEMENT_APPEND_ONLY = ['statement', 'statement_sent'] as const;

export const statement = { version: 8, name: 'statement', sql: tables + appendOnly(STATEMENT_APPEND_ONLY) };
