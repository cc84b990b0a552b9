import { appendOnly } from './append-only.ts';

/**
 * Schema 2: what the bench writes down. Quantities of fluid and lengths of levers in thousandths (of a litre, of a
 * millimetre), torque in thousandths of a newton metre. A column added to an older table may be null, so that the
 * digests that the trail keeps of older rows stand.
 */
const tables = `
ALTER TABLE finding ADD COLUMN measured TEXT CHECK (measured IS NULL OR json_valid(measured));
ALTER TABLE finding ADD COLUMN place TEXT;
ALTER TABLE finding ADD COLUMN part TEXT;
ALTER TABLE finding ADD COLUMN mend TEXT CHECK (mend IS NULL OR json_valid(mend));
ALTER TABLE job ADD COLUMN first_job_id TEXT REFERENCES job;
ALTER TABLE job ADD COLUMN comeback_cause TEXT CHECK (comeback_cause IN ('part', 'work', 'other', 'misdiagnosis'));
ALTER TABLE step_done ADD COLUMN wrench_id TEXT REFERENCES wrench;
ALTER TABLE step_done ADD COLUMN reading TEXT CHECK (reading IS NULL OR json_valid(reading));
ALTER TABLE step_done ADD COLUMN late INTEGER CHECK (late IN (0, 1));

CREATE TABLE wrench (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, name TEXT NOT NULL CHECK (name <> ''),
  least INTEGER NOT NULL CHECK (least >= 0), most INTEGER NOT NULL CHECK (most > least),
  lever INTEGER CHECK (lever > 0), due_on TEXT, taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;

-- append-only; one touch of the wrench, or the taking back of the last one
CREATE TABLE torque_entry (
  id TEXT PRIMARY KEY, job_id TEXT NOT NULL REFERENCES job, step INTEGER NOT NULL,
  what TEXT NOT NULL CHECK (what IN ('made', 'back')),
  touch INTEGER NOT NULL CHECK (touch >= 0), side INTEGER NOT NULL CHECK (side >= 1), hole INTEGER NOT NULL CHECK (hole >= 1),
  stage INTEGER NOT NULL CHECK (stage >= 0), check_round INTEGER NOT NULL CHECK (check_round IN (0, 1)),
  wrench_id TEXT REFERENCES wrench, overdue INTEGER NOT NULL CHECK (overdue IN (0, 1)),
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL, recorded_at INTEGER NOT NULL
) STRICT;
CREATE INDEX torque_entry_job ON torque_entry (job_id, step);

-- append-only; the file stands in photos/ under its SHA-256
CREATE TABLE photo (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order,
  hash TEXT NOT NULL CHECK (length(hash) = 64), kind TEXT NOT NULL CHECK (kind IN ('jpeg', 'png', 'webp')),
  size INTEGER NOT NULL CHECK (size > 0), of_what TEXT NOT NULL CHECK (of_what IN ('car', 'finding', 'step', 'order', 'mark')),
  of_id TEXT NOT NULL, step INTEGER CHECK ((step IS NULL) = (of_what <> 'step')),
  words TEXT NOT NULL, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX photo_order ON photo (work_order_id);
CREATE INDEX photo_of ON photo (of_id);
-- what may change about a photo: whether it is printed, whether it is shown
CREATE TABLE photo_use (
  id TEXT PRIMARY KEY REFERENCES photo, revision INTEGER NOT NULL,
  printed INTEGER NOT NULL CHECK (printed IN (0, 1)), taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;

CREATE TABLE pump (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, name TEXT NOT NULL CHECK (name <> ''),
  taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;
-- append-only; so many strokes were measured to give so much
CREATE TABLE pump_calibration (
  id TEXT PRIMARY KEY, pump_id TEXT NOT NULL REFERENCES pump, strokes INTEGER NOT NULL CHECK (strokes > 0),
  quantity INTEGER NOT NULL CHECK (quantity > 0), person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX pump_calibration_pump ON pump_calibration (pump_id, at);

-- append-only; fluid that went in or came out of a unit, or the taking back of such an entry
CREATE TABLE fluid_entry (
  id TEXT PRIMARY KEY, job_id TEXT NOT NULL REFERENCES job, step INTEGER, car_id TEXT NOT NULL REFERENCES car,
  unit TEXT NOT NULL CHECK (unit <> ''), serial TEXT NOT NULL,
  direction TEXT NOT NULL CHECK (direction IN ('in', 'out')), fluid TEXT NOT NULL,
  quantity INTEGER NOT NULL CHECK (quantity > 0), entered TEXT NOT NULL CHECK (json_valid(entered)),
  strokes INTEGER CHECK (strokes > 0), pump_id TEXT REFERENCES pump,
  undoes TEXT REFERENCES fluid_entry, person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX fluid_entry_job ON fluid_entry (job_id);
CREATE INDEX fluid_entry_car ON fluid_entry (car_id, at);
CREATE INDEX fluid_entry_serial ON fluid_entry (serial, at) WHERE serial <> '';
CREATE INDEX fluid_entry_out ON fluid_entry (at) WHERE direction = 'out';
CREATE UNIQUE INDEX fluid_entry_undoes ON fluid_entry (undoes) WHERE undoes IS NOT NULL;

CREATE TABLE fluid_sample (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, work_order_id TEXT NOT NULL REFERENCES work_order,
  job_id TEXT REFERENCES job, step INTEGER, car_id TEXT NOT NULL REFERENCES car, unit TEXT NOT NULL CHECK (unit <> ''),
  serial TEXT NOT NULL, starts_history INTEGER NOT NULL CHECK (starts_history IN (0, 1)),
  label TEXT NOT NULL UNIQUE, fluid TEXT NOT NULL, distance INTEGER CHECK (distance > 0), mileage INTEGER,
  drawn_at INTEGER NOT NULL, drawn_by TEXT NOT NULL REFERENCES person,
  lab TEXT NOT NULL, sent_on TEXT, result_on TEXT,
  result TEXT CHECK (result IS NULL OR json_valid(result)), remark TEXT NOT NULL
) STRICT;
CREATE INDEX fluid_sample_serial ON fluid_sample (serial, drawn_at) WHERE serial <> '';
CREATE INDEX fluid_sample_car ON fluid_sample (car_id, drawn_at);
CREATE INDEX fluid_sample_order ON fluid_sample (work_order_id);
CREATE INDEX fluid_sample_open ON fluid_sample (drawn_at) WHERE result_on IS NULL;

-- append-only
CREATE TABLE test_drive (
  id TEXT PRIMARY KEY, work_order_id TEXT NOT NULL REFERENCES work_order, job_id TEXT REFERENCES job,
  person_id TEXT NOT NULL REFERENCES person, out_reading INTEGER NOT NULL, in_reading INTEGER NOT NULL CHECK (in_reading >= out_reading),
  purpose TEXT NOT NULL CHECK (purpose IN ('confirm', 'check')),
  outcome TEXT NOT NULL CHECK (outcome IN ('fine', 'found', 'not-released')), words TEXT NOT NULL, at INTEGER NOT NULL
) STRICT;
CREATE INDEX test_drive_order ON test_drive (work_order_id);

CREATE TABLE check_list (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, title TEXT NOT NULL CHECK (title <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('walk-round', 'final')), items TEXT NOT NULL CHECK (json_valid(items)),
  taken_out INTEGER NOT NULL CHECK (taken_out IN (0, 1))
) STRICT;
-- append-only; the list as it then was, with what was seen at each item
CREATE TABLE check_done (
  id TEXT PRIMARY KEY, check_list_id TEXT NOT NULL REFERENCES check_list, work_order_id TEXT NOT NULL REFERENCES work_order,
  answers TEXT NOT NULL CHECK (json_valid(answers)), person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL
) STRICT;
CREATE INDEX check_done_order ON check_done (work_order_id);

CREATE TABLE quarantine (
  id TEXT PRIMARY KEY, revision INTEGER NOT NULL, work_order_id TEXT NOT NULL REFERENCES work_order,
  what TEXT NOT NULL CHECK (what IN ('car', 'part')), part_id TEXT REFERENCES part, words TEXT NOT NULL CHECK (words <> ''),
  person_id TEXT NOT NULL REFERENCES person, at INTEGER NOT NULL,
  lifted_at INTEGER, lifted_by TEXT REFERENCES person, lift_why TEXT NOT NULL
) STRICT;
CREATE INDEX quarantine_order ON quarantine (work_order_id);
`;

export const BENCH_APPEND_ONLY = [
  'torque_entry',
  'photo',
  'pump_calibration',
  'fluid_entry',
  'test_drive',
  'check_done',
] as const;

export const bench = { version: 2, name: 'bench', sql: tables + appendOnly(BENCH_APPEND_ONLY) };
