import { CarList } from './cars/CarList.tsx';
import { CarPage } from './cars/CarPage.tsx';
import type { PlaceProps } from './index.ts';

/** The place Cars: the list, or one of them. */
export default function Cars({ path }: PlaceProps) {
  const [id] = path;
  return id === undefined ? <CarList /> : <CarPage id={id} />;
}
