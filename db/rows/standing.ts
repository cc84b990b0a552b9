/** What stands whatever comes in: the shop, its people, customers, cars, the job book. Column for column with db/schema/1-first.ts (a test compares the two). */
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
  week: string | null;
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
  language: string | null;
  consents: string | null;
  joined_into: string | null;
  invoice_to: string | null;
  /** Minor units; null: no limit is set. */
  credit_limit: number | null;
  /** null: before the invoice, as it was before schema 7. */
  po_before: 'invoice' | 'work' | null;
  /** When they answer is drawn from then on; null: from the beginning. */
  answers_from: number | null;
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
  outline: 'coupe' | 'saloon' | 'estate' | 'van' | null;
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
