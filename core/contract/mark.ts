import { z } from 'zod';
import { CAR_SHAPES } from '../car/outline-shapes.ts';
import { act, ask } from './operation.ts';
import { changeOf, done, id, instant, needed, revision } from './scalars.ts';

/** The drawings of a car that there are, and the sides of it that are drawn. */
export const carOutline = z.enum(CAR_SHAPES);
export const carView = z.enum(['top', 'left', 'right', 'front', 'back']);

/** Where a mark is on the drawing, in thousandths of its width and height, and what it is. */
const markFields = z.strictObject({
  view: carView,
  x: z.int().min(0).max(1000),
  y: z.int().min(0).max(1000),
  words: needed(160),
});

const visit = z.strictObject({ orderId: id, number: z.int(), at: instant });

/** Marks on a car's outline: written down at one visit, looked at again at the next. */
export const markRoom = {
  'mark.list': ask(
    'crew',
    z.strictObject({ carId: id }),
    z.strictObject({
      /** null: nobody has said yet what shape the car has. */
      outline: carOutline.nullable(),
      rows: z.array(
        markFields.extend({
          id,
          revision,
          /** The visit at which it was first written down, and the last one at which it was seen. */
          first: visit,
          last: visit,
          /** The visit at which it was no longer there. */
          gone: visit.nullable(),
        }),
      ),
    }),
  ),
  /**
   * A walk round the car at a visit, in one step: marks that are new, still so, or gone. A mark that was seen at the visit
   * already, or is gone already, stays as it is.
   */
  'mark.walkRound': act(
    'crew',
    z.strictObject({
      orderId: id,
      outline: carOutline.nullable().default(null),
      add: z.array(markFields).max(30).default([]),
      still: z.array(id).max(60).default([]),
      gone: z.array(id).max(60).default([]),
    }),
    /** Of the new ones, in their order. */
    z.strictObject({ ids: z.array(id) }),
  ),
  /** A slip of the pen is put right. `goneOrderId` null: it is there after all. */
  'mark.change': act(
    'crew',
    z.strictObject({ id, revision, change: changeOf(markFields.extend({ goneOrderId: id.nullable() })) }),
    done,
  ),
};
