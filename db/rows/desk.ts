/** The day at the desk. Column for column with db/schema/3-desk.ts (a test compares the two). */
type Bit = 0 | 1;

export interface AbsenceRow {
  id: string;
  person_id: string;
  day: string;
  hours: number;
  words: string;
  taken_out: Bit;
}

export interface CarMarkRow {
  id: string;
  revision: number;
  car_id: string;
  view: 'top' | 'left' | 'right' | 'front' | 'back';
  x: number;
  y: number;
  words: string;
  seen_order_id: string;
  gone_order_id: string | null;
}

export interface CarMarkSeenRow {
  id: string;
  car_mark_id: string;
  work_order_id: string;
  person_id: string;
  at: number;
}

export interface KeyOutRow {
  id: string;
  work_order_id: string;
  to_whom: string;
  words: string;
  person_id: string;
  at: number;
}

export interface MessageRow {
  id: string;
  customer_id: string;
  work_order_id: string | null;
  about: 'ready' | 'found' | 'part-late' | 'reminder' | 'other';
  way: 'phone' | 'message' | 'mail' | 'letter' | 'person';
  direction: 'out' | 'in';
  reached: Bit;
  words: string;
  person_id: string;
  at: number;
}

export interface ReminderRow {
  id: string;
  revision: number;
  car_id: string;
  source: 'service' | 'declined' | 'run-in' | 'warranty' | 'wheel-recheck' | 'own';
  source_id: string | null;
  words: string;
  due_on: string | null;
  due_mileage: number | null;
  look_on: string | null;
  made_at: number;
  made_by: string;
  closed_at: number | null;
  close_why: string;
}

export interface ReminderTryRow {
  id: string;
  reminder_id: string;
  outcome: 'booked' | 'later' | 'no' | 'nobody' | 'letter';
  ask_on: string | null;
  words: string;
  person_id: string;
  at: number;
}

/** What a customer said when they were asked whether something may be done; the last row of each holds. */
export interface ConsentRow {
  id: string;
  customer_id: string;
  what: 'reminders' | 'photos' | 'history';
  answer: 'yes' | 'no' | 'unasked';
  way: 'person' | 'signed' | 'phone' | 'message' | 'mail' | 'letter' | 'unsaid';
  /** The day on which they said it. */
  on_day: string;
  person_id: string;
  /** When it was written down. */
  at: number;
}
/** Somebody asked what is kept about them. */
export interface PrivacyRequestRow {
  id: string;
  revision: number;
  customer_id: string;
  asked_on: string;
  answer_by: string;
  way: 'phone' | 'message' | 'mail' | 'letter' | 'person';
  words: string;
  answered_at: number | null;
  answer: 'copy' | 'corrected' | 'taken-out' | 'refused' | null;
  answer_words: string;
  answered_by: string | null;
  person_id: string;
}
/** The owner let an account's order go on over its limit. Minor units. */
export interface CreditPassRow {
  id: string;
  work_order_id: string;
  /** The account. */
  customer_id: string;
  /** The yes that it was let pass with. */
  up_to: number;
  exposure: number;
  credit_limit: number;
  reason: string;
  person_id: string;
  at: number;
}
export interface CustomerJoinRow {
  id: string;
  from_id: string;
  into_id: string;
  what: 'joined' | 'parted';
  moved: string;
  person_id: string;
  at: number;
}

export interface ImportRunRow {
  id: string;
  revision: number;
  file_name: string;
  file_hash: string;
  mapping: string;
  counts: string;
  person_id: string;
  at: number;
  undone_at: number | null;
}

export interface ImportMadeRow {
  id: string;
  import_run_id: string;
  line: number;
  row_hash: string;
  made_table: 'customer' | 'car' | 'car_owner' | 'past_visit';
  made_id: string;
  file_key: string | null;
  was_here: Bit;
}

export interface PastVisitRow {
  id: string;
  car_id: string;
  on_day: string;
  mileage: number | null;
  words: string;
  amount: number | null;
}
