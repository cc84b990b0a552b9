/** A visit and its sheet: jobs, lines, findings, the yes, clocks, steps. Column for column with db/schema/1-first.ts (a test compares the two). */
type Bit = 0 | 1;

export interface WorkOrderRow {
  id: string;
  revision: number;
  number: number;
  customer_id: string;
  payer_id: string | null;
  car_id: string;
  opened_at: number;
  opened_by: string;
  complaint: string;
  when_it_happens: string;
  door: string;
  mileage_in: number | null;
  mileage_out: number | null;
  arrived_at: number | null;
  handed_over_at: number | null;
  handed_over_to: string;
  cancelled_at: number | null;
  cancel_why: string;
  promise_at: number | null;
  promise_words: string;
  own_maximum: number | null;
  po_number: string;
  old_parts_answer: string;
  counter_sale: Bit | null;
  storage_agreed_at: number | null;
  /** The order whose car's storage this one charges; null for an order of its own. */
  storage_of: string | null;
}
export interface BookingRow {
  id: string;
  work_order_id: string | null;
  bay_id: string;
  day: string;
  from_time: string;
  hours: number;
  revision: number | null;
  words: string | null;
  person_id: string | null;
  no_show_at: number | null;
  taken_out: Bit | null;
}
export interface JobRow {
  id: string;
  revision: number;
  work_order_id: string;
  place: number;
  title: string;
  kind: 'charged' | 'warranty' | 'goodwill' | 'internal';
  fixed_price: number | null;
  note: string;
  bearer: string;
  offered: Bit;
  given: Bit;
  give_why: string;
  taken_out: Bit;
  book_job_version_id: string | null;
  moved_to: string | null;
  first_job_id: string | null;
  comeback_cause: 'part' | 'work' | 'other' | 'misdiagnosis' | null;
  /** A fee for storage: until which day it was worked out, and the last day that it charges. */
  storage_until: string | null;
  storage_last: string | null;
}
export interface LineRow {
  id: string;
  revision: number;
  job_id: string;
  place: number;
  kind: 'labour' | 'part' | 'fluid' | 'outside' | 'supplies' | 'fee' | 'core';
  words: string;
  part_number: string;
  part_id: string | null;
  condition: 'new' | 'used' | 'rebuilt' | 'reconditioned' | null;
  quantity: number;
  unit: string;
  unit_price: number;
  discount: string | null;
  billing: 'book' | 'clocked' | 'typed';
  book: number;
  overlap: number;
  overlap_job_id: string | null;
  people: string;
  supplier: string;
  unit_cost: number | null;
  given: Bit;
  give_why: string;
  taken_out: Bit;
}
export interface SheetDiscountRow {
  id: string;
  work_order_id: string;
  on_what: 'labour' | 'parts' | 'all';
  reduction: string;
  words: string;
  taken_out: Bit;
}
export interface FindingRow {
  id: string;
  revision: number;
  work_order_id: string;
  text: string;
  urgency: 'unsafe' | 'soon' | 'watch';
  job_id: string | null;
  person_id: string;
  at: number;
  measured: string | null;
  place: string | null;
  part: string | null;
  mend: string | null;
}
export interface DecisionRow {
  id: string;
  work_order_id: string;
  number: number;
  at: number;
  recorded_at: number;
  ceiling: number | null;
  spoken_name: string;
  spoken_role: 'customer' | 'named' | 'payer' | 'owner';
  way: 'signed' | 'phone' | 'message' | 'person';
  reached: string;
  words: string;
  quote_paper_id: string | null;
  strokes: string | null;
  on_sheet: number;
  person_id: string;
}
export interface DecisionJobRow {
  id: string;
  decision_id: string;
  job_id: string;
  answer: 'yes' | 'no' | 'later';
  amount: number;
  risk: string;
  unsafe: Bit;
  follow_up_on: string | null;
  follow_up_mileage: number | null;
}
export interface ContactTryRow {
  id: string;
  work_order_id: string;
  at: number;
  way: string;
  reached: string;
  words: string;
  person_id: string;
}
export interface ClockOpenRow {
  person_id: string;
  job_id: string | null;
  kind: 'work' | 'break';
  on_at: number;
}
export interface ClockEntryRow {
  id: string;
  person_id: string;
  job_id: string | null;
  kind: 'work' | 'break';
  on_at: number;
  off_at: number | null;
  corrects: string | null;
  why: string;
  recorded_by: string;
  recorded_at: number;
}
export interface PresenceRow {
  id: string;
  person_id: string;
  what: 'come' | 'gone';
  at: number;
}
export interface StepDoneRow {
  id: string;
  job_id: string;
  step: number;
  state: 'done' | 'not-needed' | 'failed' | 'open';
  why: string;
  entered: number;
  person_id: string;
  second_id: string | null;
  at: number;
  recorded_at: number;
  wrench_id: string | null;
  reading: string | null;
  late: Bit | null;
}
