import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import type { PlaceName } from '../frame/router.ts';

/** What a place is told: the rest of the address. */
export interface PlaceProps {
  readonly path: readonly string[];
  readonly query: URLSearchParams;
}

/** Each place's page, loaded when it is first gone to. */
export const places: Readonly<Record<PlaceName, LazyExoticComponent<ComponentType<PlaceProps>>>> = {
  today: lazy(() => import('./Today.tsx')),
  orders: lazy(() => import('./Orders.tsx')),
  cars: lazy(() => import('./Cars.tsx')),
  customers: lazy(() => import('./Customers.tsx')),
  stock: lazy(() => import('./Stock.tsx')),
  'job-book': lazy(() => import('./JobBook.tsx')),
  money: lazy(() => import('./Money.tsx')),
  shop: lazy(() => import('./Shop.tsx')),
};

/** One page before there is a shop: first start. */
export const StartPlace = lazy(() => import('./Start.tsx'));
