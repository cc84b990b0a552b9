import { z } from 'zod';
import { id, madeId, needed, words } from './scalars.ts';

/** Thousandths of a unit, either side of nothing: what a gauge reads. */
export const reading = z.int().min(-1_000_000_000).max(1_000_000_000);

/** A measured value against its limits, in thousandths of its unit; null: no limit on that side. */
export const measured = z.strictObject({
  what: needed(80),
  value: reading,
  unit: words(16),
  least: reading.nullable().default(null),
  most: reading.nullable().default(null),
  /** Where the limits come from: "maker's manual, page". */
  source: words(200).default(''),
});

/** What would mend a finding: in words, and the job of the book where there is one. Never a price. */
export const mend = z.strictObject({ words: needed(200), bookJobId: id.nullable().default(null) });

export const urgency = z.enum(['unsafe', 'soon', 'watch']);

/** What somebody at the bench says of a finding beside its words. */
export const findingFields = z.strictObject({
  text: needed(2000),
  urgency: urgency.default('soon'),
  /** Where on the car: "rear left". */
  place: words(60).default(''),
  /** Which part: "drop link". */
  part: words(80).default(''),
  measured: measured.nullable().default(null),
  mend: mend.nullable().default(null),
});

/**
 * An id that whoever asks has made, a UUIDv7, so that photos tapped after it can name it while the shop is out of reach.
 * null: the shop makes one.
 */
export const ownId = madeId.nullable().default(null);
