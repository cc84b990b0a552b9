import { wallToInstant } from '../../core/time/instant.ts';
import type { Context } from '../context.ts';
import { settingsOf } from '../people.ts';
import type { Loaded } from './load.ts';

/** Where the car of an order stands while it is here or still to come; one that was called off is here until it is fetched. */
export function standsOf({ order, booking }: Loaded) {
  if (order.handed_over_at !== null || (order.cancelled_at !== null && order.arrived_at === null)) return null;
  const place = booking && { bay: booking.bay, day: booking.day, from: booking.from_time };
  return { arrivedAt: order.arrived_at, booking: place };
}

/** The place that they did not come to, while they have no other one. */
export function missedOf({ lastPlace }: Loaded) {
  if (lastPlace === null || lastPlace.no_show_at === null) return null;
  return { bay: lastPlace.bay, day: lastPlace.day, from: lastPlace.from_time };
}

/** The revision of an order whose car should be here by its booking and is not; null for any other. */
export function absentOf({ order, booking }: Loaded, context: Context): number | null {
  if (booking === null || order.arrived_at !== null || order.cancelled_at !== null) return null;
  const { zone } = settingsOf(context) ?? { zone: 'UTC' };
  return wallToInstant(`${booking.day}T${booking.from_time}`, zone) <= context.now ? order.revision : null;
}
