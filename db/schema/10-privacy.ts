/**
 * Schema 10: what somebody asks about themselves, and taking out what may go. Words of append-only rows may become the mark
 * for what was taken out, and nothing else of them changes; what was noted for a row of the trail may lose its values,
 * while its number, its place in the chain and its hash stay. The row of the trail that did it notes the new digest.
 */
const MARK = "'—'";

/** Append-only but for the words, which may be taken out. */
const wordsMayGo = (table: string, words: readonly string[], others: readonly string[]) => `
DROP TRIGGER ${table}_no_update;
CREATE TRIGGER ${table}_no_update BEFORE UPDATE ON ${table}
WHEN NOT (${words.map((column) => `new.${column} = ${MARK}`).join(' AND ')} AND ${others.map((column) => `new.${column} IS old.${column}`).join(' AND ')})
BEGIN SELECT raise(ABORT, '${table} is append-only'); END;
`;

const TRAIL = ['n', 'at', 'person_id', 'device', 'operation', 'request', 'before', 'hash'];

const sql = `
ALTER TABLE customer ADD COLUMN answers_from INTEGER;

CREATE TABLE privacy_request (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, customer_id TEXT NOT NULL REFERENCES customer,
  asked_on TEXT NOT NULL, answer_by TEXT NOT NULL, way TEXT NOT NULL CHECK (way IN ('phone', 'message', 'mail', 'letter', 'person')),
  words TEXT NOT NULL, answered_at INTEGER,
  answer TEXT CHECK (answer IN ('copy', 'corrected', 'taken-out', 'refused')), answer_words TEXT NOT NULL,
  answered_by TEXT REFERENCES person, person_id TEXT NOT NULL REFERENCES person
) STRICT;
CREATE INDEX privacy_request_customer ON privacy_request (customer_id);
CREATE INDEX privacy_request_open ON privacy_request (answer_by) WHERE answered_at IS NULL;
${wordsMayGo('message', ['words'], ['id', 'customer_id', 'work_order_id', 'about', 'way', 'direction', 'reached', 'person_id', 'at'])}
${wordsMayGo('contact_try', ['reached', 'words'], ['id', 'work_order_id', 'at', 'way', 'person_id'])}
${wordsMayGo('reminder_try', ['words'], ['id', 'reminder_id', 'outcome', 'ask_on', 'person_id', 'at'])}
DROP TRIGGER trail_no_update;
CREATE TRIGGER trail_no_update BEFORE UPDATE ON trail
WHEN new.changes IS old.changes OR NOT (${TRAIL.map((column) => `new.${column} IS old.${column}`).join(' AND ')})
BEGIN SELECT raise(ABORT, 'trail is append-only'); END;
`;

export const privacy = { version: 10, name: 'privacy', sql };
