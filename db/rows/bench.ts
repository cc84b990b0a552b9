/** What the bench writes down. Column for column with db/schema/2-bench.ts (a test compares the two). */
type Bit = 0 | 1;

export interface WrenchRow {
  id: string;
  revision: number;
  name: string;
  least: number;
  most: number;
  lever: number | null;
  due_on: string | null;
  taken_out: Bit;
}

export interface TorqueEntryRow {
  id: string;
  job_id: string;
  step: number;
  what: 'made' | 'back';
  touch: number;
  side: number;
  hole: number;
  stage: number;
  check_round: Bit;
  wrench_id: string | null;
  overdue: Bit;
  person_id: string;
  at: number;
  recorded_at: number;
}

export interface PhotoRow {
  id: string;
  work_order_id: string;
  hash: string;
  kind: 'jpeg' | 'png' | 'webp';
  size: number;
  of_what: 'car' | 'finding' | 'step' | 'order' | 'mark';
  of_id: string;
  step: number | null;
  words: string;
  person_id: string;
  at: number;
}

export interface PhotoUseRow {
  id: string;
  revision: number;
  printed: Bit;
  taken_out: Bit;
}

export interface PumpRow {
  id: string;
  revision: number;
  name: string;
  taken_out: Bit;
}

export interface PumpCalibrationRow {
  id: string;
  pump_id: string;
  strokes: number;
  quantity: number;
  person_id: string;
  at: number;
}

export interface FluidEntryRow {
  id: string;
  job_id: string;
  step: number | null;
  car_id: string;
  unit: string;
  serial: string;
  direction: 'in' | 'out';
  fluid: string;
  quantity: number;
  entered: string;
  strokes: number | null;
  pump_id: string | null;
  undoes: string | null;
  person_id: string;
  at: number;
}

export interface FluidSampleRow {
  id: string;
  revision: number;
  work_order_id: string;
  job_id: string | null;
  step: number | null;
  car_id: string;
  unit: string;
  serial: string;
  starts_history: Bit;
  label: string;
  fluid: string;
  distance: number | null;
  mileage: number | null;
  drawn_at: number;
  drawn_by: string;
  lab: string;
  sent_on: string | null;
  result_on: string | null;
  result: string | null;
  remark: string;
}

export interface TestDriveRow {
  id: string;
  work_order_id: string;
  job_id: string | null;
  person_id: string;
  out_reading: number;
  in_reading: number;
  purpose: 'confirm' | 'check';
  outcome: 'fine' | 'found' | 'not-released';
  words: string;
  at: number;
}

export interface CheckListRow {
  id: string;
  revision: number;
  title: string;
  kind: 'walk-round' | 'final';
  items: string;
  taken_out: Bit;
}

export interface CheckDoneRow {
  id: string;
  check_list_id: string;
  work_order_id: string;
  answers: string;
  person_id: string;
  at: number;
}

export interface QuarantineRow {
  id: string;
  revision: number;
  work_order_id: string;
  what: 'car' | 'part';
  part_id: string | null;
  words: string;
  person_id: string;
  at: number;
  lifted_at: number | null;
  lifted_by: string | null;
  lift_why: string;
}
