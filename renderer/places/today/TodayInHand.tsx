import { civilDateOf } from '../../../core/time/instant.ts';
import { useWriting } from '../../state/shop.ts';
import { useAsk } from '../../state/use-ask.ts';
import { useFocusOnMoved, useHandKeys } from '../bookings/hand-keys.ts';
import { InHand } from '../bookings/InHand.tsx';
import { plannedOf, stepped } from '../bookings/plan.ts';
import type { Plan } from '../bookings/use-plan.ts';

interface Props {
  readonly plan: Plan;
  readonly now: number;
}

/** The foot of Today while a booking of the strip is moved, or was just moved; the arrows move it within the day. */
export function TodayInHand({ plan, now }: Props) {
  const { zone } = useWriting();
  const today = civilDateOf(now, zone);
  const span = { from: today, to: today };
  const { hand } = plan;
  const wanted = hand !== null || plan.done !== null;
  const listed = useAsk('booking.list', wanted ? span : null).data;
  const load = useAsk('booking.capacity', wanted ? span : null).data?.days ?? [];
  const bays = listed?.bays ?? [];
  useHandKeys(
    hand,
    (step) => {
      if (hand === null) return;
      const bayIds = bays.map((bay) => bay.id);
      plan.put(stepped(hand.place, step, [hand.place.day], bayIds));
    },
    () => void plan.save(),
  );
  useFocusOnMoved(plan.done, listed);
  if (!wanted || listed === undefined) return null;
  const people = load[0]?.people ?? [];
  return <InHand plan={plan} booked={plannedOf(listed)} bays={bays} people={people} load={load} today={today} />;
}
