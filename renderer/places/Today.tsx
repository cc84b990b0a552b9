import { BookIn } from './book-in/BookIn.tsx';
import type { PlaceProps } from './index.ts';
import { TodayList } from './today/TodayList.tsx';

/** Today: what waits on whom; `#/today/book` is booking a car in. */
export default function Today({ path }: PlaceProps) {
  return path[0] === 'book' ? <BookIn /> : <TodayList />;
}
