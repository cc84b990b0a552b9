/** Papers, parts, money and the trail. Column for column with db/schema/1-first.ts (a test compares the two). */
type Bit = 0 | 1;

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
  keep_at_most: number | null;
  pack: number | null;
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
export interface StatementRow {
  id: string;
  run_id: string | null;
  joined: Bit;
  customer_id: string;
  from_day: string;
  until_day: string;
  as_of: number;
  closing: number;
  person_id: string;
  at: number;
}
export interface StatementSentRow {
  id: string;
  statement_id: string;
  how: string;
  person_id: string;
  at: number;
}
/** What was done with a statement before it was sent: made as a PDF, or its mail opened. */
export interface StatementNotedRow {
  id: string;
  statement_id: string;
  what: 'made' | 'mail';
  person_id: string;
  at: number;
}
/** A paper that waits to be sent. Kept by triggers (schema 13), outside the trail. */
export interface ToSendRow {
  paper_id: string;
  issued_at: number;
}
/** Kept by triggers (schema 5), outside the trail. */
export interface OrderBalanceRow {
  work_order_id: string;
  owed: number;
  invoiced: Bit;
  /** When its car was handed over, as the order says. */
  gone_at: number | null;
}
