import { appendOnly } from './append-only.ts';

/**
 * Schema 1. STRICT tables in the trade's words; money in minor units, quantities in thousandths, instants in epoch
 * milliseconds, civil dates as text. Rows marked append-only below get triggers that refuse UPDATE and DELETE.
 */
const tables = `
CREATE TABLE shop (
  id TEXT PRIMARY KEY CHECK (id = 'shop'),
  revision INTEGER NOT NULL,
  settings TEXT NOT NULL CHECK (json_valid(settings)),
  practice INTEGER NOT NULL CHECK (practice IN (0, 1)),
  made_at INTEGER NOT NULL
) STRICT;

CREATE TABLE person (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  name TEXT NOT NULL CHECK (name <> ''),
  role TEXT NOT NULL CHECK (role IN ('owner', 'desk', 'mechanic')),
  code_hash TEXT NOT NULL,
  pay_rate INTEGER NOT NULL CHECK (pay_rate >= 0),
  active INTEGER NOT NULL CHECK (active IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX person_name ON person (name);

CREATE TABLE bay (id TEXT PRIMARY KEY, name TEXT NOT NULL, words TEXT NOT NULL, place INTEGER NOT NULL) STRICT;
CREATE TABLE labour_rate (
  id TEXT PRIMARY KEY, name TEXT NOT NULL, price INTEGER NOT NULL CHECK (price >= 0),
  usual INTEGER NOT NULL CHECK (usual IN (0, 1)), place INTEGER NOT NULL
) STRICT;

CREATE TABLE number_series (
  id TEXT PRIMARY KEY CHECK (id IN ('order', 'quote', 'invoice', 'credit-note', 'receipt')),
  next INTEGER NOT NULL CHECK (next >= 1)
) STRICT;

CREATE TABLE customer (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  name TEXT NOT NULL CHECK (name <> ''),
  phone TEXT NOT NULL,
  phone2 TEXT NOT NULL,
  email TEXT NOT NULL,
  address TEXT NOT NULL CHECK (json_valid(address)),
  tell_by TEXT NOT NULL,
  tax_number TEXT NOT NULL,
  tax_exempt TEXT NOT NULL,
  po_required INTEGER NOT NULL CHECK (po_required IN (0, 1)),
  may_yes TEXT NOT NULL CHECK (json_valid(may_yes)),
  note TEXT NOT NULL,
  made_at INTEGER NOT NULL,
  find_name TEXT NOT NULL,
  find_phone TEXT NOT NULL,
  find_phone2 TEXT NOT NULL
) STRICT;
CREATE INDEX customer_find_name ON customer (find_name);
CREATE INDEX customer_find_phone ON customer (find_phone);

CREATE TABLE car (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  plate TEXT NOT NULL,
  vin TEXT NOT NULL,
  words TEXT NOT NULL,
  year INTEGER CHECK (year BETWEEN 1900 AND 2100),
  unit TEXT NOT NULL CHECK (unit IN ('km', 'mi')),
  axle_code TEXT NOT NULL,
  note TEXT NOT NULL,
  made_at INTEGER NOT NULL,
  find_plate TEXT NOT NULL,
  find_words TEXT NOT NULL
) STRICT;
CREATE INDEX car_find_plate ON car (find_plate);
CREATE INDEX car_vin ON car (vin);

CREATE TABLE car_plate (
  id TEXT PRIMARY KEY, car_id TEXT NOT NULL REFERENCES car, plate TEXT NOT NULL, find_plate TEXT NOT NULL,
  from_day TEXT NOT NULL, to_day TEXT
) STRICT;
CREATE INDEX car_plate_car ON car_plate (car_id);
CREATE INDEX car_plate_find ON car_plate (find_plate);

CREATE TABLE car_owner (
  id TEXT PRIMARY KEY, car_id TEXT NOT NULL REFERENCES car, customer_id TEXT NOT NULL REFERENCES customer,
  from_day TEXT NOT NULL, to_day TEXT
) STRICT;
CREATE INDEX car_owner_car ON car_owner (car_id);
CREATE INDEX car_owner_customer ON car_owner (customer_id);

-- append-only
CREATE TABLE odometer_reading (
  id TEXT PRIMARY KEY, car_id TEXT NOT NULL REFERENCES car, work_order_id TEXT REFERENCES work_order,
  reading INTEGER NOT NULL CHECK (reading >= 0), on_day TEXT NOT NULL, at INTEGER NOT NULL,
  event TEXT NOT NULL CHECK (event IN ('read', 'replaced', 'owner-told')),
  new_start INTEGER CHECK (new_start >= 0), why TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person
) STRICT;
CREATE INDEX odometer_reading_car ON odometer_reading (car_id, at);

CREATE TABLE work_order (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  number INTEGER NOT NULL UNIQUE,
  customer_id TEXT NOT NULL REFERENCES customer,
  payer_id TEXT REFERENCES customer,
  car_id TEXT NOT NULL REFERENCES car,
  opened_at INTEGER NOT NULL,
  opened_by TEXT NOT NULL REFERENCES person,
  complaint TEXT NOT NULL,
  when_it_happens TEXT NOT NULL CHECK (json_valid(when_it_happens)),
  door TEXT NOT NULL CHECK (json_valid(door)),
  mileage_in INTEGER CHECK (mileage_in >= 0),
  mileage_out INTEGER CHECK (mileage_out >= 0),
  arrived_at INTEGER,
  handed_over_at INTEGER,
  handed_over_to TEXT NOT NULL,
  cancelled_at INTEGER,
  cancel_why TEXT NOT NULL,
  promise_at INTEGER,
  promise_words TEXT NOT NULL,
  own_maximum INTEGER CHECK (own_maximum >= 0),
  po_number TEXT NOT NULL,
  old_parts_answer TEXT NOT NULL
) STRICT;
CREATE INDEX work_order_car ON work_order (car_id, opened_at);
CREATE INDEX work_order_customer ON work_order (customer_id, opened_at);
CREATE INDEX work_order_payer ON work_order (payer_id) WHERE payer_id IS NOT NULL;
CREATE INDEX work_order_open ON work_order (opened_at) WHERE handed_over_at IS NULL;

CREATE TABLE booking (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, bay_id TEXT NOT NULL REFERENCES bay,
  day TEXT NOT NULL, from_time TEXT NOT NULL, hours INTEGER NOT NULL CHECK (hours > 0)
) STRICT;
CREATE INDEX booking_day ON booking (day);
CREATE INDEX booking_order ON booking (work_order_id);

CREATE TABLE book_job (id TEXT PRIMARY KEY, title TEXT NOT NULL, version INTEGER NOT NULL) STRICT;
-- append-only
CREATE TABLE book_job_version (
  id TEXT PRIMARY KEY, book_job_id TEXT NOT NULL REFERENCES book_job, version INTEGER NOT NULL,
  content TEXT NOT NULL CHECK (json_valid(content)), at INTEGER NOT NULL, person_id TEXT REFERENCES person,
  UNIQUE (book_job_id, version)
) STRICT;

CREATE TABLE job (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  work_order_id TEXT NOT NULL REFERENCES work_order,
  place INTEGER NOT NULL,
  title TEXT NOT NULL CHECK (title <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('charged', 'warranty', 'goodwill', 'internal')),
  fixed_price INTEGER CHECK (fixed_price >= 0),
  note TEXT NOT NULL,
  bearer TEXT NOT NULL,
  offered INTEGER NOT NULL CHECK (offered IN (0, 1)),
  given INTEGER NOT NULL CHECK (given IN (0, 1)),
  give_why TEXT NOT NULL,
  taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1)),
  book_job_version_id TEXT REFERENCES book_job_version,
  moved_to TEXT REFERENCES work_order
) STRICT;
CREATE INDEX job_order ON job (work_order_id, place);
CREATE INDEX job_version ON job (book_job_version_id) WHERE book_job_version_id IS NOT NULL;

CREATE TABLE line (
  id TEXT PRIMARY KEY,
  revision INTEGER NOT NULL,
  job_id TEXT NOT NULL REFERENCES job,
  place INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('labour', 'part', 'fluid', 'outside', 'supplies', 'fee', 'core')),
  words TEXT NOT NULL,
  part_number TEXT NOT NULL,
  part_id TEXT REFERENCES part,
  condition TEXT CHECK (condition IN ('new', 'used', 'rebuilt', 'reconditioned')),
  quantity INTEGER NOT NULL CHECK (quantity >= 0),
  unit TEXT NOT NULL,
  unit_price INTEGER NOT NULL CHECK (unit_price >= 0),
  discount TEXT CHECK (discount IS NULL OR json_valid(discount)),
  billing TEXT NOT NULL CHECK (billing IN ('book', 'clocked', 'typed')),
  book INTEGER NOT NULL CHECK (book >= 0),
  overlap INTEGER NOT NULL CHECK (overlap >= 0),
  overlap_job_id TEXT REFERENCES job,
  people TEXT NOT NULL CHECK (json_valid(people)),
  supplier TEXT NOT NULL,
  unit_cost INTEGER CHECK (unit_cost >= 0),
  given INTEGER NOT NULL CHECK (given IN (0, 1)),
  give_why TEXT NOT NULL,
  taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;
CREATE INDEX line_job ON line (job_id, place);

CREATE TABLE sheet_discount (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order,
  on_what TEXT NOT NULL CHECK (on_what IN ('labour', 'parts', 'all')),
  reduction TEXT NOT NULL CHECK (json_valid(reduction)), words TEXT NOT NULL,
  taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;
CREATE INDEX sheet_discount_order ON sheet_discount (work_order_id);

CREATE TABLE finding (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, work_order_id TEXT NOT NULL REFERENCES work_order, text TEXT NOT NULL,
  urgency TEXT NOT NULL CHECK (urgency IN ('unsafe', 'soon', 'watch')), job_id TEXT REFERENCES job,
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX finding_order ON finding (work_order_id);

-- append-only
CREATE TABLE paper (
  id TEXT PRIMARY KEY,
  work_order_id TEXT NOT NULL REFERENCES work_order,
  kind TEXT NOT NULL CHECK (kind IN ('quote', 'invoice', 'credit-note', 'receipt')),
  number INTEGER NOT NULL,
  version INTEGER,
  issued_at INTEGER NOT NULL,
  issued_on TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES person,
  customer_id TEXT NOT NULL REFERENCES customer,
  net INTEGER NOT NULL,
  tax INTEGER NOT NULL,
  gross INTEGER NOT NULL,
  due_on TEXT,
  valid_until TEXT,
  corrects TEXT REFERENCES paper,
  sheet TEXT NOT NULL CHECK (json_valid(sheet)),
  document TEXT NOT NULL CHECK (json_valid(document))
) STRICT;
CREATE UNIQUE INDEX paper_number ON paper (kind, number, coalesce(version, 0));
CREATE INDEX paper_order ON paper (work_order_id, issued_at);
CREATE INDEX paper_corrects ON paper (corrects) WHERE corrects IS NOT NULL;

-- append-only
CREATE TABLE paper_sent (
  id TEXT PRIMARY KEY, paper_id TEXT NOT NULL REFERENCES paper, at INTEGER NOT NULL, how TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES person
) STRICT;
CREATE INDEX paper_sent_paper ON paper_sent (paper_id);

-- append-only
CREATE TABLE decision (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, number INTEGER NOT NULL,
  at INTEGER NOT NULL, recorded_at INTEGER NOT NULL, ceiling INTEGER CHECK (ceiling >= 0),
  spoken_name TEXT NOT NULL, spoken_role TEXT NOT NULL CHECK (spoken_role IN ('customer', 'named', 'payer', 'owner')),
  way TEXT NOT NULL CHECK (way IN ('signed', 'phone', 'message', 'person')), reached TEXT NOT NULL, words TEXT NOT NULL,
  quote_paper_id TEXT REFERENCES paper, strokes TEXT CHECK (strokes IS NULL OR json_valid(strokes)),
  on_sheet INTEGER NOT NULL, person_id TEXT NOT NULL REFERENCES person, UNIQUE (work_order_id, number)
) STRICT;
-- append-only
CREATE TABLE decision_job (
  id TEXT PRIMARY KEY, decision_id TEXT NOT NULL REFERENCES decision, job_id TEXT NOT NULL REFERENCES job,
  answer TEXT NOT NULL CHECK (answer IN ('yes', 'no', 'later')), amount INTEGER NOT NULL, risk TEXT NOT NULL,
  unsafe INTEGER NOT NULL CHECK (unsafe IN (0, 1)), follow_up_on TEXT, follow_up_mileage INTEGER
) STRICT;
CREATE INDEX decision_job_decision ON decision_job (decision_id);
CREATE INDEX decision_job_job ON decision_job (job_id);

-- append-only
CREATE TABLE contact_try (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, at INTEGER NOT NULL, way TEXT NOT NULL,
  reached TEXT NOT NULL, words TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person
) STRICT;
CREATE INDEX contact_try_order ON contact_try (work_order_id);

-- the only clock row that changes: one open clock a person, by its key
CREATE TABLE clock_open (
  person_id TEXT PRIMARY KEY REFERENCES person, job_id TEXT REFERENCES job,
  kind TEXT NOT NULL CHECK (kind IN ('work', 'break')), on_at INTEGER NOT NULL
) STRICT;
-- append-only; off_at null = forgotten: counts nothing until a correction points at it
CREATE TABLE clock_entry (
  id TEXT PRIMARY KEY, person_id TEXT NOT NULL REFERENCES person, job_id TEXT REFERENCES job,
  kind TEXT NOT NULL CHECK (kind IN ('work', 'break')), on_at INTEGER NOT NULL, off_at INTEGER CHECK (off_at >= on_at),
  corrects TEXT REFERENCES clock_entry, why TEXT NOT NULL, recorded_by TEXT NOT NULL REFERENCES person, recorded_at INTEGER NOT NULL
) STRICT;
CREATE INDEX clock_entry_job ON clock_entry (job_id);
CREATE INDEX clock_entry_person ON clock_entry (person_id, on_at);
CREATE UNIQUE INDEX clock_entry_corrects ON clock_entry (corrects) WHERE corrects IS NOT NULL;
-- append-only
CREATE TABLE presence (
  id TEXT PRIMARY KEY, person_id TEXT NOT NULL REFERENCES person, what TEXT NOT NULL CHECK (what IN ('come', 'gone')), at INTEGER NOT NULL
) STRICT;

-- append-only
CREATE TABLE step_done (
  id TEXT PRIMARY KEY, job_id TEXT NOT NULL REFERENCES job, step INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('done', 'not-needed', 'failed', 'open')), why TEXT NOT NULL,
  entered INTEGER NOT NULL CHECK (entered >= 0), person_id TEXT NOT NULL REFERENCES person,
  second_id TEXT REFERENCES person CHECK (second_id <> person_id), at INTEGER NOT NULL, recorded_at INTEGER NOT NULL
) STRICT;
CREATE INDEX step_done_job ON step_done (job_id);

-- quantity on hand and its value are kept with every move and checked by their sum
CREATE TABLE part (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, number TEXT NOT NULL UNIQUE, words TEXT NOT NULL, unit TEXT NOT NULL,
  price INTEGER NOT NULL CHECK (price >= 0), bin TEXT NOT NULL, one_time INTEGER NOT NULL CHECK (one_time IN (0, 1)),
  keep_at_least INTEGER NOT NULL, on_hand INTEGER NOT NULL, value INTEGER NOT NULL, find_number TEXT NOT NULL
) STRICT;
-- append-only
CREATE TABLE part_move (
  id TEXT PRIMARY KEY, part_id TEXT NOT NULL REFERENCES part,
  what TEXT NOT NULL CHECK (what IN ('received', 'issued', 'put-back', 'waste')),
  quantity INTEGER NOT NULL, value INTEGER NOT NULL, job_id TEXT REFERENCES job, line_id TEXT REFERENCES line,
  undoes TEXT REFERENCES part_move, note TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX part_move_part ON part_move (part_id, at);
CREATE INDEX part_move_job ON part_move (job_id) WHERE job_id IS NOT NULL;

CREATE TABLE awaited (
  id TEXT PRIMARY KEY, line_id TEXT NOT NULL REFERENCES line, kind TEXT NOT NULL CHECK (kind IN ('part', 'outside')),
  supplier TEXT NOT NULL, reference TEXT NOT NULL, ordered_at INTEGER NOT NULL, due_on TEXT, arrived_at INTEGER,
  cost INTEGER CHECK (cost >= 0), person_id TEXT NOT NULL REFERENCES person
) STRICT;
CREATE INDEX awaited_line ON awaited (line_id);

-- append-only; amount is what it settles, positive towards the shop, negative back to the customer
CREATE TABLE payment (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order,
  kind TEXT NOT NULL CHECK (kind IN ('deposit', 'payment', 'refund', 'rounding')),
  way TEXT NOT NULL CHECK (way IN ('cash', 'card', 'transfer', '')), amount INTEGER NOT NULL,
  receipt_paper_id TEXT REFERENCES paper, note TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX payment_order ON payment (work_order_id);

-- append-only; double entry under the papers: every transaction's postings of one source add to zero
CREATE TABLE posting (
  id TEXT PRIMARY KEY, source TEXT NOT NULL, account TEXT NOT NULL, amount INTEGER NOT NULL, on_day TEXT NOT NULL, at INTEGER NOT NULL
) STRICT;
CREATE INDEX posting_source ON posting (source);
CREATE INDEX posting_account ON posting (account, on_day);

-- append-only
CREATE TABLE request (id TEXT PRIMARY KEY, operation TEXT NOT NULL, input_hash TEXT NOT NULL, answer TEXT NOT NULL, at INTEGER NOT NULL) STRICT;
-- append-only: a SHA-256 chain over what every do changed
CREATE TABLE trail (
  n INTEGER PRIMARY KEY, at INTEGER NOT NULL, person_id TEXT, device TEXT NOT NULL, operation TEXT NOT NULL,
  request TEXT NOT NULL, changes TEXT NOT NULL CHECK (json_valid(changes)), before TEXT NOT NULL, hash TEXT NOT NULL
) STRICT;
`;

/** Tables whose rows never change and never go: held by trigger as well as by code. */
export const APPEND_ONLY = [
  'odometer_reading',
  'book_job_version',
  'paper',
  'paper_sent',
  'decision',
  'decision_job',
  'contact_try',
  'clock_entry',
  'presence',
  'step_done',
  'part_move',
  'payment',
  'posting',
  'request',
  'trail',
] as const;

export const first = { version: 1, name: 'first', sql: tables + appendOnly(APPEND_ONLY) };
