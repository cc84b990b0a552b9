import type { z } from 'zod';
import type { checkListFields } from '../contract/check.ts';

type List = z.input<typeof checkListFields>;

const item = (words: string, place = '') => ({ words, place });

/**
 * The lists that a new shop begins with; it writes its own over them (common practice, no source). They hold no limits:
 * those are the maker's and the local rule's, and the shop types them with their source.
 */
export const STARTING_CHECKS: readonly List[] = [
  {
    title: 'Walk-round',
    kind: 'walk-round',
    items: [
      item('Lights and indicators'),
      item('Horn, wipers, washers'),
      item('Glass and mirrors'),
      item('Seat belts'),
      item('Warning lamps', 'dash'),
      item('Tyre', 'front left'),
      item('Tyre', 'front right'),
      item('Tyre', 'rear left'),
      item('Tyre', 'rear right'),
      item('Brakes and hoses', 'front'),
      item('Brakes and hoses', 'rear'),
      item('Steering and its joints'),
      item('Suspension', 'front'),
      item('Suspension', 'rear'),
      item('Leaks', 'engine and gearbox'),
      item('Leaks', 'axles'),
      item('Exhaust and its hangers'),
      item('Battery and its clamp'),
    ],
  },
  {
    title: 'Before it leaves',
    kind: 'final',
    items: [
      item('Wheel bolts tightened and signed'),
      item('No tool, rag or bag of fasteners left behind'),
      item('Levels looked at on level ground'),
      item('No leak after the test drive'),
      item('Undertray and covers on'),
      item('Warning lamps out'),
      item('Wheel-lock key and papers back in the car'),
      item('Seat, wheel and carpet clean'),
    ],
  },
];
