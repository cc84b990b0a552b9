import { z } from 'zod';
import { MAY_GO, STAY_WHYS, STAYS } from '../customer/take-out.ts';
import { messageWay } from './message.ts';
import { act, ask } from './operation.ts';
import { civilDate, done, id, instant, revision, words } from './scalars.ts';

/** What came of a request. */
export const privacyAnswer = z.enum(['copy', 'corrected', 'taken-out', 'refused']);

const request = z.strictObject({
  id,
  revision,
  askedOn: civilDate,
  /** The last day to answer, by the shop's own setting. */
  answerBy: civilDate,
  way: messageWay,
  words: z.string(),
  answeredAt: instant.nullable(),
  answer: privacyAnswer.nullable(),
  answerWords: z.string(),
  by: z.string(),
});

export const privacyRoom = {
  /** Somebody asks what is kept about them, to put it right, or to take it out: written down with its last day. */
  'privacy.ask': act(
    'desk',
    z.strictObject({ customerId: id, askedOn: civilDate, way: messageWay, words: words(1000).default('') }),
    z.strictObject({ id, revision, answerBy: civilDate }),
  ),
  'privacy.list': ask('desk', z.strictObject({ customerId: id }), z.strictObject({ rows: z.array(request) })),
  'privacy.answer': act(
    'desk',
    z.strictObject({ id, revision, answer: privacyAnswer, words: words(1000).default('') }),
    done,
  ),
  /** Everything that is kept about a customer, to read and as data. Nobody else's name but those who speak for them. */
  'privacy.copy': ask(
    'desk',
    z.strictObject({ customerId: id }),
    z.strictObject({ name: z.string(), text: z.string(), json: z.string() }),
  ),
  /** What may go and what must stay, before anything goes. */
  'privacy.look': ask(
    'desk',
    z.strictObject({ customerId: id }),
    z.strictObject({
      revision,
      goes: z.array(z.strictObject({ what: z.enum(MAY_GO), n: z.int() })),
      stays: z.array(
        z.strictObject({ what: z.enum(STAYS), why: z.enum(STAY_WHYS), n: z.int(), until: civilDate.nullable() }),
      ),
    }),
  ),
  /** Takes out what was ticked of what may go, from the rows and from what the trail noted of them. It cannot be undone. */
  'privacy.takeOut': act(
    'owner',
    z.strictObject({ customerId: id, revision, goes: z.array(z.enum(MAY_GO)).min(1).max(MAY_GO.length) }),
    z.strictObject({ id, revision, trailRows: z.int() }),
  ),
};
