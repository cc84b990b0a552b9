import type { CarShape } from '../../../core/car/outline-shapes.ts';
import type { InputOf, OutputOf } from '../../../core/contract/index.ts';

type Walk = InputOf<'mark.walkRound'>;
type View = OutputOf<'mark.list'>['rows'][number]['view'];

/** A mark that was drawn in this talk; photos as data addresses. */
export interface DrawnMark {
  readonly key: string;
  readonly view: View;
  /** Thousandths of the drawing's width and height. */
  readonly x: number;
  readonly y: number;
  readonly words: string;
  readonly photos: readonly string[];
}

/** A mark of an earlier visit, as it was looked at now. */
export interface SeenMark {
  readonly id: string;
  readonly words: string;
  readonly now: 'still' | 'gone';
}

/** The walk round the car, as far as it has come. */
export interface WalkDraft {
  /** null: as the car was drawn before. */
  readonly shape: CarShape | null;
  readonly drawn: readonly DrawnMark[];
  readonly seen: readonly SeenMark[];
  /** Photos taken now of marks of earlier visits. */
  readonly again: Readonly<Record<string, readonly string[]>>;
  /** Of the car as it came. */
  readonly whole: readonly string[];
}

export const EMPTY_WALK: WalkDraft = { shape: null, drawn: [], seen: [], again: {}, whole: [] };

/** What stands in words under a signature: marks that are still so, then the new ones. */
export const walkWords = ({ drawn, seen }: WalkDraft): string[] => [
  ...seen.filter((mark) => mark.now === 'still').map((mark) => mark.words),
  ...drawn.map((mark) => mark.words.trim()),
];

/** The walk as the shop takes it; null where nobody walked round. */
export function walkOf({ shape, drawn, seen }: WalkDraft, orderId: string): Walk | null {
  if (shape === null && drawn.length === 0 && seen.length === 0) return null;
  const ids = (now: SeenMark['now']) => seen.filter((mark) => mark.now === now).map((mark) => mark.id);
  return {
    ...{ orderId, outline: shape, still: ids('still'), gone: ids('gone') },
    add: drawn.map(({ view, x, y, words }) => ({ view, x, y, words: words.trim() })),
  };
}

/** The photos of a walk with what each is of, once the new marks have their ids. */
export function photosOf(
  { drawn, again, whole }: WalkDraft,
  ids: readonly string[],
  carId: string,
): {
  readonly of: { readonly what: 'mark' | 'car'; readonly id: string };
  readonly words: string;
  readonly address: string;
}[] {
  const ofMark = (id: string, words: string) => (address: string) => ({
    ...{ of: { what: 'mark' as const, id }, words, address },
  });
  return [
    ...drawn.flatMap((mark, at) => mark.photos.map(ofMark(ids[at] ?? '', mark.words.trim()))),
    ...Object.entries(again).flatMap(([id, addresses]) => addresses.map(ofMark(id, ''))),
    ...whole.map((address) => ({ of: { what: 'car' as const, id: carId }, words: '', address })),
  ];
}
