/** Words of the place Orders. */
export const orders = {
  title: 'Orders',
  which: 'Which orders',
  open: 'Open',
  unpaid: 'Not paid',
  all: 'All',
  text: 'Plate, name, number or words',
  none: 'No order here yet. Book a car in.',
  number: 'Order',
  plate: 'Plate',
  carAndCustomer: 'Car and customer',
  jobs: 'Jobs',
  next: 'Next',
  sum: 'On the sheet',
  book: 'Book a car in',
} as const;
