import { BookIn } from './book-in/BookIn.tsx';
import type { PlaceProps } from './index.ts';
import { TodayList } from './today/TodayList.tsx';

/** Today: what waits on whom; `#/today/book` is booking a car in, `#/today/book/car/ID` one that is known. */
export default function Today({ path }: PlaceProps) {
  return path[0] === 'book' ? <BookIn key={path.join(' ')} with={path.slice(1)} /> : <TodayList />;
}
