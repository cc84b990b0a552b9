import { appendOnly } from './append-only.ts';

/**
 * Schema 3: the day at the desk. Hours in thousandths of an hour; places on a drawing in thousandths of its width and
 * height. A column added to an older table may be null (see schema 2); booking is rebuilt, since it may now stand
 * without an order (a lift examined, a day kept free).
 */
const tables = `
ALTER TABLE person ADD COLUMN week TEXT CHECK (week IS NULL OR json_valid(week));
ALTER TABLE customer ADD COLUMN language TEXT;
ALTER TABLE customer ADD COLUMN consents TEXT CHECK (consents IS NULL OR json_valid(consents));
ALTER TABLE customer ADD COLUMN joined_into TEXT REFERENCES customer;
ALTER TABLE customer ADD COLUMN invoice_to TEXT REFERENCES customer;
ALTER TABLE car ADD COLUMN outline TEXT CHECK (outline IN ('coupe', 'saloon', 'estate', 'van'));
ALTER TABLE work_order ADD COLUMN counter_sale INTEGER CHECK (counter_sale IN (0, 1));

CREATE TABLE booking_2 (
  id TEXT PRIMARY KEY, work_order_id TEXT REFERENCES work_order, bay_id TEXT NOT NULL REFERENCES bay,
  day TEXT NOT NULL, from_time TEXT NOT NULL, hours INTEGER NOT NULL CHECK (hours > 0),
  revision INTEGER, words TEXT, person_id TEXT REFERENCES person, no_show_at INTEGER, taken_out INTEGER CHECK (taken_out IN (0, 1))
) STRICT;
INSERT INTO booking_2 (id, work_order_id, bay_id, day, from_time, hours)
  SELECT id, work_order_id, bay_id, day, from_time, hours FROM booking;
DROP TABLE booking;
ALTER TABLE booking_2 RENAME TO booking;
CREATE INDEX booking_day ON booking (day);
CREATE INDEX booking_order ON booking (work_order_id);

CREATE TABLE absence (
  id TEXT PRIMARY KEY, person_id TEXT NOT NULL REFERENCES person, day TEXT NOT NULL,
  hours INTEGER NOT NULL CHECK (hours > 0), words TEXT NOT NULL, taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;
CREATE INDEX absence_day ON absence (day);

-- marks on a car's outline, carried from visit to visit
CREATE TABLE car_mark (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, car_id TEXT NOT NULL REFERENCES car,
  view TEXT NOT NULL CHECK (view IN ('top', 'left', 'right', 'front', 'back')),
  x INTEGER NOT NULL CHECK (x BETWEEN 0 AND 1000), y INTEGER NOT NULL CHECK (y BETWEEN 0 AND 1000), words TEXT NOT NULL,
  seen_order_id TEXT NOT NULL REFERENCES work_order, gone_order_id TEXT REFERENCES work_order
) STRICT;
CREATE INDEX car_mark_car ON car_mark (car_id);
-- append-only; "still so", visit by visit
CREATE TABLE car_mark_seen (
  id TEXT PRIMARY KEY, car_mark_id TEXT NOT NULL REFERENCES car_mark, work_order_id TEXT NOT NULL REFERENCES work_order,
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL, UNIQUE (car_mark_id, work_order_id)
) STRICT;

-- append-only; keys handed out, and to whom
CREATE TABLE key_out (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, to_whom TEXT NOT NULL CHECK (to_whom <> ''),
  words TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX key_out_order ON key_out (work_order_id);

-- append-only; what was said or written to a customer
CREATE TABLE message (
  id TEXT PRIMARY KEY, customer_id TEXT NOT NULL REFERENCES customer, work_order_id TEXT REFERENCES work_order,
  about TEXT NOT NULL CHECK (about IN ('ready', 'found', 'part-late', 'reminder', 'other')),
  way TEXT NOT NULL CHECK (way IN ('phone', 'message', 'mail', 'letter', 'person')), direction TEXT NOT NULL CHECK (direction IN ('out', 'in')),
  reached INTEGER NOT NULL CHECK (reached IN (0, 1)), words TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX message_customer ON message (customer_id, at);
CREATE INDEX message_order ON message (work_order_id) WHERE work_order_id IS NOT NULL;

CREATE TABLE reminder (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, car_id TEXT NOT NULL REFERENCES car,
  source TEXT NOT NULL CHECK (source IN ('service', 'declined', 'run-in', 'warranty', 'wheel-recheck', 'own')),
  source_id TEXT, words TEXT NOT NULL CHECK (words <> ''), due_on TEXT, due_mileage INTEGER, look_on TEXT,
  made_at INTEGER NOT NULL, made_by TEXT NOT NULL REFERENCES person,
  closed_at INTEGER, close_why TEXT NOT NULL
) STRICT;
CREATE INDEX reminder_car ON reminder (car_id);
-- look_on is the day it is due by date or by the pace of the visits, reckoned anew with every reading
CREATE INDEX reminder_open ON reminder (look_on) WHERE closed_at IS NULL;
CREATE UNIQUE INDEX reminder_source ON reminder (source, source_id) WHERE source_id IS NOT NULL;
-- append-only
CREATE TABLE reminder_try (
  id TEXT PRIMARY KEY, reminder_id TEXT NOT NULL REFERENCES reminder,
  outcome TEXT NOT NULL CHECK (outcome IN ('booked', 'later', 'no', 'nobody', 'letter')), ask_on TEXT, words TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX reminder_try_reminder ON reminder_try (reminder_id);

-- append-only; a customer joined into another, or parted again
CREATE TABLE customer_join (
  id TEXT PRIMARY KEY, from_id TEXT NOT NULL REFERENCES customer, into_id TEXT NOT NULL REFERENCES customer,
  what TEXT NOT NULL CHECK (what IN ('joined', 'parted')), moved TEXT NOT NULL CHECK (json_valid(moved)),
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;

-- a file that was brought in from elsewhere, and what it made
CREATE TABLE import_run (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, file_name TEXT NOT NULL, file_hash TEXT NOT NULL, mapping TEXT NOT NULL CHECK (json_valid(mapping)),
  counts TEXT NOT NULL CHECK (json_valid(counts)), person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL, undone_at INTEGER
) STRICT;
-- append-only
CREATE TABLE import_made (
  id TEXT PRIMARY KEY, import_run_id TEXT NOT NULL REFERENCES import_run, line INTEGER NOT NULL, row_hash TEXT NOT NULL,
  made_table TEXT NOT NULL CHECK (made_table IN ('customer', 'car', 'car_owner', 'past_visit')), made_id TEXT NOT NULL,
  -- what the file calls it; was_here: it was in the shop before, the row only names it
  file_key TEXT, was_here INTEGER NOT NULL CHECK (was_here IN (0, 1))
) STRICT;
CREATE INDEX import_made_run ON import_made (import_run_id, id);
CREATE INDEX import_made_hash ON import_made (row_hash);
CREATE INDEX import_made_key ON import_made (file_key, made_table) WHERE file_key IS NOT NULL;
-- what asks whether a customer may go looks here, row by row
CREATE INDEX customer_joined ON customer (joined_into) WHERE joined_into IS NOT NULL;
CREATE INDEX customer_invoice_to ON customer (invoice_to) WHERE invoice_to IS NOT NULL;
CREATE INDEX customer_join_from ON customer_join (from_id);
CREATE INDEX customer_join_into ON customer_join (into_id);
CREATE INDEX paper_customer ON paper (customer_id);
-- every order ever, newest first
CREATE INDEX work_order_opened ON work_order (opened_at, id);

CREATE TABLE past_visit (
  id TEXT PRIMARY KEY, car_id TEXT NOT NULL REFERENCES car, on_day TEXT NOT NULL, mileage INTEGER, words TEXT NOT NULL,
  amount INTEGER
) STRICT;
CREATE INDEX past_visit_car ON past_visit (car_id, on_day);
`;

export const DESK_APPEND_ONLY = [
  'car_mark_seen',
  'key_out',
  'message',
  'reminder_try',
  'customer_join',
  'import_made',
] as const;

export const desk = { version: 3, name: 'desk', sql: tables + appendOnly(DESK_APPEND_ONLY) };
