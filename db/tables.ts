/** The rows of schema 1 as Kysely sees them. Column for column with db/schema/1-first.ts (a test compares the two). */
type Bit = 0 | 1;

export interface ShopRow {
  id: 'shop';
  revision: number;
  settings: string;
  practice: Bit;
  made_at: number;
}
export interface PersonRow {
  id: string;
  revision: number;
  name: string;
  role: 'owner' | 'desk' | 'mechanic';
  code_hash: string;
  pay_rate: number;
  active: Bit;
}
export interface BayRow {
  id: string;
  name: string;
  words: string;
  place: number;
}
export interface LabourRateRow {
  id: string;
  name: string;
  price: number;
  usual: Bit;
  place: number;
}
export type Series = 'order' | 'quote' | 'invoice' | 'credit-note' | 'receipt';
export interface NumberSeriesRow {
  id: Series;
  next: number;
}
export interface CustomerRow {
  id: string;
  revision: number;
  name: string;
  phone: string;
  phone2: string;
  email: string;
  address: string;
  tell_by: string;
  tax_number: string;
  tax_exempt: string;
  po_required: Bit;
  may_yes: string;
  note: string;
  made_at: number;
  find_name: string;
  find_phone: string;
  find_phone2: string;
}
export interface CarRow {
  id: string;
  revision: number;
  plate: string;
  vin: string;
  words: string;
  year: number | null;
  unit: 'km' | 'mi';
  axle_code: string;
  note: string;
  made_at: number;
  find_plate: string;
  find_words: string;
}
export interface CarPlateRow {
  id: string;
  car_id: string;
  plate: string;
  find_plate: string;
  from_day: string;
  to_day: string | null;
}
export interface CarOwnerRow {
  id: string;
  car_id: string;
  customer_id: string;
  from_day: string;
  to_day: string | null;
}
export interface OdometerReadingRow {
  id: string;
  car_id: string;
  work_order_id: string | null;
  reading: number;
  on_day: string;
  at: number;
  event: 'read' | 'replaced' | 'owner-told';
  new_start: number | null;
  why: string;
  person_id: string;
}
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
}
export interface BookingRow {
  id: string;
  work_order_id: string;
  bay_id: string;
  day: string;
  from_time: string;
  hours: number;
}
export interface BookJobRow {
  id: string;
  title: string;
  version: number;
}
export interface BookJobVersionRow {
  id: string;
  book_job_id: string;
  version: number;
  content: string;
  at: number;
  person_id: string | null;
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
}
export interface PaperRow {
  id: string;
  work_order_id: string;
  kind: 'quote' | 'invoice' | 'credit-note' | 'receipt';
  number: number;
  version: number | null;
  issued_at: number;
  issued_on: string;
  person_id: string;
  customer_id: string;
  net: number;
  tax: number;
  gross: number;
  due_on: string | null;
  valid_until: string | null;
  corrects: string | null;
  sheet: string;
  document: string;
}
export interface PaperSentRow {
  id: string;
  paper_id: string;
  at: number;
  how: string;
  person_id: string;
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
}
export interface PartRow {
  id: string;
  revision: number;
  number: string;
  words: string;
  unit: string;
  price: number;
  bin: string;
  one_time: Bit;
  keep_at_least: number;
  on_hand: number;
  value: number;
  find_number: string;
}
export interface PartMoveRow {
  id: string;
  part_id: string;
  what: 'received' | 'issued' | 'put-back' | 'waste';
  quantity: number;
  value: number;
  job_id: string | null;
  line_id: string | null;
  undoes: string | null;
  note: string;
  person_id: string;
  at: number;
}
export interface AwaitedRow {
  id: string;
  line_id: string;
  kind: 'part' | 'outside';
  supplier: string;
  reference: string;
  ordered_at: number;
  due_on: string | null;
  arrived_at: number | null;
  cost: number | null;
  person_id: string;
}
export interface PaymentRow {
  id: string;
  work_order_id: string;
  kind: 'deposit' | 'payment' | 'refund' | 'rounding';
  way: 'cash' | 'card' | 'transfer' | '';
  amount: number;
  receipt_paper_id: string | null;
  note: string;
  person_id: string;
  at: number;
}
export interface PostingRow {
  id: string;
  source: string;
  account: string;
  amount: number;
  on_day: string;
  at: number;
}
export interface RequestRow {
  id: string;
  operation: string;
  input_hash: string;
  answer: string;
  at: number;
}
export interface TrailRow {
  n: number;
  at: number;
  person_id: string | null;
  device: string;
  operation: string;
  request: string;
  changes: string;
  before: string;
  hash: string;
}

export interface Tables {
  shop: ShopRow;
  person: PersonRow;
  bay: BayRow;
  labour_rate: LabourRateRow;
  number_series: NumberSeriesRow;
  customer: CustomerRow;
  car: CarRow;
  car_plate: CarPlateRow;
  car_owner: CarOwnerRow;
  odometer_reading: OdometerReadingRow;
  work_order: WorkOrderRow;
  booking: BookingRow;
  book_job: BookJobRow;
  book_job_version: BookJobVersionRow;
  job: JobRow;
  line: LineRow;
  sheet_discount: SheetDiscountRow;
  finding: FindingRow;
  paper: PaperRow;
  paper_sent: PaperSentRow;
  decision: DecisionRow;
  decision_job: DecisionJobRow;
  contact_try: ContactTryRow;
  clock_open: ClockOpenRow;
  clock_entry: ClockEntryRow;
  presence: PresenceRow;
  step_done: StepDoneRow;
  part: PartRow;
  part_move: PartMoveRow;
  awaited: AwaitedRow;
  payment: PaymentRow;
  posting: PostingRow;
  request: RequestRow;
  trail: TrailRow;
}

/** Tables that the trail follows: every one but the trail itself. */
export type Followed = Exclude<keyof Tables, 'trail'>;
/** clock_open has the person as its key; all others have `id`. */
export const keyOf = (table: Followed): string => (table === 'clock_open' ? 'person_id' : 'id');
