/** The rows as Kysely sees them. */

import type {
  CheckDoneRow,
  CheckListRow,
  FluidEntryRow,
  FluidSampleRow,
  PhotoRow,
  PhotoUseRow,
  PumpCalibrationRow,
  PumpRow,
  QuarantineRow,
  TestDriveRow,
  TorqueEntryRow,
  WrenchRow,
} from './rows/bench.ts';
import type {
  AbsenceRow,
  CarMarkRow,
  CarMarkSeenRow,
  ConsentRow,
  CreditPassRow,
  CustomerJoinRow,
  ImportMadeRow,
  ImportRunRow,
  KeyOutRow,
  MessageRow,
  PastVisitRow,
  PrivacyRequestRow,
  ReminderRow,
  ReminderTryRow,
} from './rows/desk.ts';
import type {
  BookingRow,
  ClockEntryRow,
  ClockOpenRow,
  ContactTryRow,
  DecisionJobRow,
  DecisionRow,
  FindingRow,
  JobRow,
  LineRow,
  PresenceRow,
  SheetDiscountRow,
  StepDoneRow,
  WorkOrderRow,
} from './rows/order.ts';
import type {
  AwaitedRow,
  OrderBalanceRow,
  PaperRow,
  PaperSentRow,
  PartMoveRow,
  PartRow,
  PaymentRow,
  PostingRow,
  RequestRow,
  StatementNotedRow,
  StatementRow,
  StatementSentRow,
  ToSendRow,
  TrailRow,
} from './rows/record.ts';
import type {
  BayRow,
  BookJobRow,
  BookJobVersionRow,
  CarOwnerRow,
  CarPlateRow,
  CarRow,
  CustomerRow,
  LabourRateRow,
  NumberSeriesRow,
  OdometerReadingRow,
  PersonRow,
  ShopRow,
} from './rows/standing.ts';

export type * from './rows/bench.ts';
export type * from './rows/desk.ts';
export type * from './rows/order.ts';
export type * from './rows/record.ts';
export type * from './rows/standing.ts';

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
  wrench: WrenchRow;
  torque_entry: TorqueEntryRow;
  photo: PhotoRow;
  photo_use: PhotoUseRow;
  pump: PumpRow;
  pump_calibration: PumpCalibrationRow;
  fluid_entry: FluidEntryRow;
  fluid_sample: FluidSampleRow;
  test_drive: TestDriveRow;
  check_list: CheckListRow;
  check_done: CheckDoneRow;
  quarantine: QuarantineRow;
  absence: AbsenceRow;
  car_mark: CarMarkRow;
  car_mark_seen: CarMarkSeenRow;
  key_out: KeyOutRow;
  message: MessageRow;
  reminder: ReminderRow;
  reminder_try: ReminderTryRow;
  customer_join: CustomerJoinRow;
  import_run: ImportRunRow;
  import_made: ImportMadeRow;
  past_visit: PastVisitRow;
  credit_pass: CreditPassRow;
  statement: StatementRow;
  statement_sent: StatementSentRow;
  statement_noted: StatementNotedRow;
  privacy_request: PrivacyRequestRow;
  consent: ConsentRow;
  order_balance: OrderBalanceRow;
  to_send: ToSendRow;
  request: RequestRow;
  trail: TrailRow;
}

/** Tables that the trail follows: every one but the trail itself and what is kept by triggers. */
export type Followed = Exclude<keyof Tables, 'trail' | 'order_balance' | 'to_send'>;
/** clock_open has the person as its key; all others have `id`. */
export const keyOf = (table: Followed): string => (table === 'clock_open' ? 'person_id' : 'id');
