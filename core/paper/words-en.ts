import type { PaperWords } from './words.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

const WAY = { signed: 'signed', phone: 'by phone', message: 'by message', person: 'in person' };

export const ENGLISH: PaperWords = {
  title: { quote: 'Quote', invoice: 'Invoice', 'credit-note': 'Credit note', receipt: 'Receipt' },
  practice: 'Practice',
  practiceNote: 'Practice paper, not valid: nothing here was really done, sold or owed.',
  page: (page, of) => `page ${page} of ${of}`,
  continued: 'continued',
  date: (date, short) => {
    const [year = '', month = '', day = ''] = date.split('-');
    const start = `${Number(day)}\u00a0${MONTHS[Number(month) - 1] ?? month}`;
    return short ? start : `${start}\u00a0${year}`;
  },
  facts: { for: 'For', car: 'Car', mileage: 'Mileage', dates: 'Dates', order: 'Order', paper: 'Quote' },
  plate: (plate) => `plate ${plate}`,
  vin: (vin) => `VIN ${vin}`,
  taxNumber: (number) => `tax no. ${number}`,
  purchaseOrder: (number) => `your order ${number}`,
  orderNumber: (number) => `order ${number}`,
  mileageIn: (figure) => `${figure} in`,
  mileageOut: (figure) => `${figure} out`,
  dateIn: (date) => `in ${date}`,
  dateOut: (date) => `out ${date}`,
  issued: (date) => `issued ${date}`,
  validUntil: (date) => `holds until ${date}`,
  version: (version) => `version ${version}`,
  quotes: ['“', '”'],
  columns: { quantity: 'Quantity', each: 'Each' },
  lineKind: {
    labour: 'Labour',
    part: 'Part',
    fluid: 'Fluid',
    outside: 'Outside work',
    supplies: 'Supplies',
    fee: 'Fee',
    core: 'Core charge',
  },
  condition: { new: 'new', used: 'used', rebuilt: 'rebuilt', reconditioned: 'reconditioned' },
  outsideWork: 'outside work',
  given: 'no charge',
  estimated: 'estimated, the bill is still to come',
  lineDiscount: (amount) => `after a discount of ${amount}`,
  sum: {
    labour: 'Labour',
    'parts-and-fluids': 'Parts and fluids',
    outside: 'Outside work',
    supplies: 'Supplies',
    fees: 'Fees',
    core: 'Core charges',
  },
  hours: (hours) => `${hours} h`,
  discount: 'Discount',
  net: 'Before tax',
  taxAdded: (name, rate, base) => `${name} ${rate} on ${base}`,
  taxHeld: (name, rate, base) => `of it ${name} ${rate}, in ${base}`,
  taxOnOldUnits: (name, rate, base) => `${name} ${rate} on the old unit’s value of ${base}`,
  total: 'Total',
  taken: { deposit: 'Deposit', payment: 'Paid', refund: 'Paid back', credit: 'Credit' },
  method: { cash: 'cash', card: 'card', transfer: 'transfer', account: 'on account' },
  cashRounding: 'Cash rounding',
  toPay: 'To pay',
  toCredit: 'Credited',
  inYourFavour: 'In your favour',
  saidYes: (name) => (name === '' ? 'You said yes' : `You said yes, ${name}`),
  yes: (yes, when, upTo, named) =>
    `${when} ${WAY[yes.way]}${yes.reached === '' ? '' : ` ${yes.reached}`}, ${named ? `${yes.name}, ` : ''}` +
    `${yes.jobs.length > 0 ? `${yes.jobs.join(', ')}, ` : ''}up to ${upTo}`,
  saidNo: 'You said no',
  unsafe: 'Unsafe.',
  tightened: 'Tightened to',
  letPass: 'Let pass',
  letPassWhat: {
    'torque-missing': ({ letter = '', step = '' }) => `Torque entries missing, ${letter}, step ${step}`,
    'second-missing': ({ letter = '', step = '' }) => `Second signature missing, ${letter}, step ${step}`,
    'step-failed': ({ letter = '', step = '' }) => `Failed and not done since, ${letter}, step ${step}`,
    'step-not-needed': ({ letter = '', step = '' }) => `Left out as not needed, ${letter}, step ${step}`,
    'final-check-missing': ({ letter = '' }) => `Final list not gone through, ${letter}`,
    quarantine: ({ words = '' }) => `Marked not to be released: ${words}`,
    'mileage-out-missing': () => 'Mileage on leaving missing',
    'outside-bill-missing': ({ words = '' }) => `Bill not yet here, cost estimated: ${words}`,
    'old-parts-unanswered': () => 'What became of the old parts is not said',
  },
  letPassBy: (reason, by) => `${reason} (${by})`,
  oldParts: 'Old parts',
  oldPartsSaid: {
    show: 'Old parts are to be shown.',
    return: 'Old parts are to be handed over.',
    dispose: 'Old parts are not wanted back.',
    returned: 'Old parts were handed over.',
    shown: 'Old parts were shown.',
    core: 'The old unit went back as a core.',
    refused: 'Old parts were refused.',
    disposed: 'Old parts were disposed of.',
  },
  storage: (perDay, free, plusTax) =>
    `Once the car is done and you were told, leaving it here costs ${perDay} a day${plusTax ? ' plus tax' : ''}` +
    `${free === 0 ? '' : `; the first ${free === 1 ? 'working day costs' : `${free} working days cost`} nothing`}.`,
  storageTitle: 'Storage of the car',
  storageFee: (days, free, perDay) =>
    `${days === 1 ? '1 day' : `${days} days`}${free === 0 ? '' : ` after ${free} free`} at ${perDay}`,
  offered: 'Offered, not in the sum',
  offeredNote: 'Say yes to a job by its letter, and it is done too.',
  warranty: 'Warranty',
  nextDue: 'Next due',
  due: (what, date, mileage) => {
    const when = [date, mileage === '' ? '' : `at ${mileage}`].filter((part) => part !== '').join(' or ');
    return when === '' ? what : `${what}: ${when}`;
  },
  payBy: (date, number, ownTerms) => [
    date === '' ? 'Please pay' : `Pay by ${date}`,
    ownTerms === '' ? `at the desk, or by transfer with ${number} as the reference.` : ownTerms,
  ],
  paid: 'Paid in full. Thank you.',
  received: 'Received the car',
  sayYes: 'I say yes to this work, up to the total',
  corrects: (number, date) => `Corrects invoice ${number} of ${date}`,
  reason: 'Reason',
  receiptFor: { deposit: 'Deposit received', payment: 'Payment received', refund: 'Paid back' },
  forInvoice: (number, date, total) => `for invoice ${number} of ${date}, total ${total}`,
  forOrder: (number) => `for order ${number}`,
  cash: (handed, back) => `${handed} handed over, ${back} given back`,
  balance: 'Still to pay',
  takenBy: (name) => `taken by ${name}`,
};
