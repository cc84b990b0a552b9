/** Words of the owner's own rules in Shop: who sees what, written estimates, storage, notices, samples, dates. */
export const own = {
  // who sees what
  sees: 'Who sees prices and cost',
  seesWords:
    'The owner sees everything. The desk always sees prices, since it writes the papers and takes the money. What somebody may not see never leaves the shop’s file for their window.',
  'sees-mechanicPrices': 'Mechanics and prices',
  'sees-deskCost': 'The desk and cost',
  'sees-mechanicCost': 'Mechanics and cost',
  'sees-mechanicPrices-note':
    'What the customer pays, on the sheet and in the job book. Without it the bench says “inside the yes”.',
  'sees-deskCost-note': 'What parts and hours cost us, and what is left of an order.',
  'sees-mechanicCost-note': 'The same for mechanics: what a part cost, and what a colleague’s hour costs.',
  see: 'they see them',
  seeNot: 'they do not',
  // written estimates
  estimate: 'An estimate in writing',
  estimateWords:
    'Some places want one on paper above a sum, before the yes. Yours is not known here: check your local rule.',
  estimateNo: 'no rule of ours',
  estimateAbove: 'Above, tax in',
  estimateAboveNote:
    'Exactly this sum does not need one yet. The desk is told, beside the yes and on the order, what is still missing; nothing is held by it.',
  estimateMissing: 'Above {sum} an estimate in writing is wanted.',
  'estimate-no-quote': 'No quote was issued that holds {letters}: issue one, and let the yes answer it.',
  'estimate-by-word':
    'A quote was issued, but the yes was spoken and answers none: have it signed or written, or say which quote it answers.',
  estimateSource: 'By {source}, checked on {day}.',
  estimateOwn: 'your own setting',
  estimateUnchecked: 'Your own setting, not checked yet.',
  sourceNote: 'The page or the paragraph, so that somebody can look again.',
  checkedOnNote: 'The day you looked last. Rules move: check your local rule now and then.',
  // the customer's own most
  ownMost: 'The customer’s own most',
  ownMostWords:
    'What a customer will not go above is typed order by order, at booking in or at the head of the sheet. No yes and no invoice goes over it.',
  // storage
  storageNo: 'nothing is charged',
  storagePerDay: 'A day costs',
  storagePerDayNote:
    'Each calendar day after the free ones, taxed as a fee. Booking in fills it in where somebody ticks that it was told; what was told at the door counts for that order.',
  storageFree: 'Free working days',
  storageFreeNote: 'Counted from the day after the customer was told that the car is ready.',
  storageWrong: 'A sum above nothing, such as 15.00.',
  // printed notices
  notices: 'Printed where a rule wants it',
  noticesWords: 'Each stands where it belongs. Left empty, nothing is printed. Your own words: check your local rule.',
  'notice-oldParts': 'Old parts',
  'notice-labourBasis': 'What labour is charged by',
  'notice-storage': 'Storage',
  'notice-testDrive': 'Test drive',
  'notice-oldParts-note': 'On quotes and invoices: that old parts may be had back, and which not.',
  'notice-labourBasis-note': 'On quotes and invoices: by the clock, by book hours, or by fixed prices.',
  'notice-storage-note': 'On quotes and the drop-off slip, beside what a day costs.',
  'notice-testDrive-note': 'On the drop-off slip, above the name: that the car may be driven, and how far.',
  exclusions: 'The warranty leaves out',
  exclusionsNote: 'Printed behind the warranty: wear, track use, customers’ own parts.',
  warrantyNote: 'Printed under quotes and invoices.',
  noticeNote: 'Printed under quotes and invoices, in this order.',
  // samples
  samples: 'When a history of samples says something',
  samplesWords:
    'A new sample is held against earlier ones of the same unit, each brought to 1,000 km. What these begin with is common practice, no source; a hint, never a verdict. The lab’s word comes first.',
  fewestSamples: 'Earlier samples, at least',
  fewestSamplesNote: 'With fewer, nothing is said of a unit’s own run.',
  fewestKm: 'Distance on the fluid, at least, km',
  fewestKmNote: 'A sample after less is shown, but is not judged and makes no limit.',
  alertTenths: 'Worth a look past',
  alertTenthsNote: 'So many standard deviations above the unit’s own mean.',
  alarmTenths: 'Alarm past',
  alarmTenthsNote: 'The same, further out. Exactly at a limit is inside it.',
  deviationWrong: 'From 0.1 to 10, with one decimal; the alarm further out than the alert.',
  // tax and supplies
  taxRateNote:
    'What it takes of the lines it falls on. No rate is shipped; a changed one counts for papers issued from then on.',
  taxKindsNote: 'Lines of a kind that is not ticked bear nothing of it, as labour in some places.',
  taxRoundingNote:
    'Line by line can differ from once a paper by a few of the smallest coin: a local rule may name one.',
  suppliesNote: 'Rags, cleaner, grease: each typed as its own line, or one sum an order, reckoned.',
  suppliesShareNote: 'Once an order, at the prices of its lines.',
  suppliesBaseNote:
    'Of what an order charges of it; never of what is given or stands inside a fixed price. Nothing is asked for parts sold over the counter.',
  'supplies-floor-note': 'Where the share comes to less, this is taken. Empty: the share alone.',
  'supplies-cap-note': 'Where the share comes to more, this is taken. A local rule may set it.',
  suppliesSentenceNote: 'Printed under quotes and invoices where supplies are charged.',
  zoneNote: 'Clocks, days and due dates are told in this zone.',
  distanceNote: 'What a new car’s clock counts in; each car may have its own.',
  torqueNote: 'What the bench shows first; the other stands beside it.',
  // what is kept in the job book
  together: 'Work that is sold together',
  overlaps: 'Hours that two jobs share',
  overlapsNote:
    'Kept with each job under “goes with”: where both are on a sheet, the second one’s labour takes so much less.',
  menu: 'Jobs with their lines ready',
  menuNote: 'Their hours, parts and fluids are kept there. One price for all of it is typed at the job, on its sheet.',
  inTheJobBook: 'in the job book',
  togetherLink: '{what}: in the job book',
  // dates, volumes, numbers
  dateForm: 'Dates',
  dateFormNote: 'On papers and in the window. Days are typed and shown in this order; 2026-09-23 is read in any.',
  'date-language': 'as the language writes them',
  volume: 'Fluids',
  'volume-L': 'litres first',
  'volume-US qt': 'US quarts first',
  volumeNote: 'What the bench asks for first, and shows beside litres. Litres are kept.',
  nextOf: 'next is {next}; they began with {n}',
} as const;
