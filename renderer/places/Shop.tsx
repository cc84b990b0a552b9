import { type ComponentType, lazy, Suspense } from 'react';
import { hrefOf } from '../frame/router.ts';
import { useSession } from '../state/session.ts';
import { useShop } from '../state/shop.ts';
import { t } from '../words/t.ts';
import type { PlaceProps } from './index.ts';
import { Bays } from './shop/Bays.tsx';
import { CheckLists } from './shop/CheckLists.tsx';
import { Copies } from './shop/Copies.tsx';
import { Fees } from './shop/Fees.tsx';
import { Garage } from './shop/Garage.tsx';
import { Machine, Program } from './shop/Machine.tsx';
import { Numbers } from './shop/Numbers.tsx';
import { People } from './shop/People.tsx';
import { Prices } from './shop/Prices.tsx';
import { Pumps } from './shop/Pumps.tsx';
import { Rates } from './shop/Rates.tsx';
import { Reminding } from './shop/Reminding.tsx';
import { Samples } from './shop/Samples.tsx';
import { ShopHere } from './shop/setting.tsx';
import { Taxes } from './shop/Taxes.tsx';
import { TheYes } from './shop/TheYes.tsx';
import { Wrenches } from './shop/Wrenches.tsx';
import './shop/shop.css';

interface ShopPart {
  readonly name:
    | 'garage'
    | 'tax'
    | 'fees'
    | 'prices'
    | 'in'
    | 'rates'
    | 'people'
    | 'bays'
    | 'wrenches'
    | 'pumps'
    | 'samples'
    | 'lists'
    | 'reminding'
    | 'yes'
    | 'numbers'
    | 'copies'
    | 'keys'
    | 'program';
  readonly page: ComponentType;
  /** Only the owner's code opens it. */
  readonly owner?: boolean;
}

const PAGES: readonly ShopPart[] = [
  { name: 'garage', page: Garage },
  { name: 'tax', page: Taxes },
  { name: 'fees', page: Fees },
  { name: 'prices', page: Prices },
  { name: 'rates', page: Rates },
  { name: 'people', page: People },
  { name: 'bays', page: Bays },
  { name: 'wrenches', page: Wrenches },
  { name: 'pumps', page: Pumps },
  { name: 'samples', page: Samples },
  { name: 'lists', page: CheckLists },
  { name: 'reminding', page: Reminding },
  { name: 'yes', page: TheYes },
  { name: 'numbers', page: Numbers },
  { name: 'in', page: lazy(() => import('./import/BringIn.tsx')) },
  { name: 'copies', page: Copies, owner: true },
  { name: 'keys', page: Machine },
  { name: 'program', page: Program },
];

/** The place Shop: its pages are words in a second column; every cell saves on leaving it. */
export default function Shop({ path }: PlaceProps) {
  const shop = useShop();
  const owner = useSession((session) => session.person?.role === 'owner');
  const part = PAGES.find((one) => one.name === path[0]) ?? PAGES[0];
  if (shop === undefined || shop.settings === null || part === undefined) return null;
  const { page: Part } = part;
  const closed = part.owner === true && !owner;
  const machine = ['keys', 'program', 'in', 'wrenches', 'pumps', 'lists'].includes(part.name) || closed;
  return (
    <div className="page shop-page">
      <nav aria-label={t('shop.pages')}>
        <h1>{t('shop.title')}</h1>
        <ul>
          {PAGES.map(({ name }) => (
            <li key={name}>
              <a href={hrefOf('shop', name)} aria-current={name === part.name ? 'page' : undefined}>
                {t(`shop.page-${name}`)}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <div className="shop-part" key={part.name}>
        <h2>{t(`shop.page-${part.name}`)}</h2>
        {owner || machine ? null : <p className="in-heed">{t('shop.ownerChanges')}</p>}
        {closed ? (
          <p>{t('shop.ownerOpens')}</p>
        ) : (
          <ShopHere value={{ shop, settings: shop.settings, mayChange: owner }}>
            <Suspense>
              <Part />
            </Suspense>
          </ShopHere>
        )}
      </div>
    </div>
  );
}
