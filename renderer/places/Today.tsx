import { BookIn } from './book-in/BookIn.tsx';
import { TakeIn } from './book-in/TakeIn.tsx';
import { WeekPage } from './bookings/WeekPage.tsx';
import type { PlaceProps } from './index.ts';
import { TodayList } from './today/TodayList.tsx';

/**
 * Today: what waits on whom; `#/today/book` is booking a car in, `#/today/take-in/ID` taking
 * in one that was booked before, `#/today/week/2026-11-23` the plan of a week.
 */
export default function Today({ path }: PlaceProps) {
  if (path[0] === 'book') return <BookIn key={path.join(' ')} with={path.slice(1)} />;
  if (path[0] === 'take-in' && path[1] !== undefined) return <TakeIn key={path[1]} orderId={path[1]} />;
  if (path[0] === 'week') return <WeekPage day={/^\d{4}-\d\d-\d\d$/.exec(path[1] ?? '')?.[0]} />;
  return <TodayList />;
}
