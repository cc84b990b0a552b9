/** Words of work on account. */
export const account = {
  title: 'On account',
  over: '{name} would owe {over} more than the limit allows.',
  beyond: '{name} is over the limit of the account.',
  waits: 'The yes stands; the work waits until the owner lets it pass, once, by name.',
  yesStands: 'The yes can be recorded; the work waits until the owner lets it pass, once, by name.',
  letPass: 'Let it pass, once',
  ownerOnly: 'only the owner lets it pass, with a reason',
  reason: 'Why it may pass',
  reasonNeeded: 'A few words: the reason is kept.',
  passed: 'Over the limit and let pass by {by}, {when}: {reason}',
} as const;
