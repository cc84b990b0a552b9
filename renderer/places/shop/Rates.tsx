import { hrefOf } from '../../frame/router.ts';
import { Cell } from '../../parts/Cell.tsx';
import { act } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { amountText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { Billing } from './Billing.tsx';
import { cellSaver } from './cell-saver.ts';
import { saidOfList } from './list-error.ts';
import { readShop, SettingRow, type ShopRow, useSaved, useShopPage } from './setting.tsx';

interface Rate {
  readonly id: string | null;
  readonly name: string;
  readonly price: number;
  readonly usual: boolean;
}

/** What an hour of work costs, and how clocked time becomes hours on the bill. */
export function Rates() {
  return (
    <>
      <RateList />
      <Billing />
      <SoldTogether />
    </>
  );
}

/** Overlaps of labour and jobs at one price are no settings: they stand with their jobs, and the row leads there. */
function SoldTogether() {
  return (
    <section>
      <h3>{t('own.together')}</h3>
      {(['overlaps', 'menu'] as const).map((list) => (
        <SettingRow key={list} label={t(`own.${list}`)} note={t(`own.${list}Note`)}>
          <a href={hrefOf('job-book')} aria-label={t('own.togetherLink', { what: t(`own.${list}`) })}>
            {t('own.inTheJobBook')}
          </a>
        </SettingRow>
      ))}
    </section>
  );
}

/** Prices of an hour of work; one of them is the usual one. */
function RateList() {
  const page = useShopPage();
  const writing = useWriting();
  const [wrong, say] = useSaved();
  const saver = (how: {
    readonly show: (row: ShopRow) => string;
    readonly read: (text: string, rates: readonly Rate[]) => readonly Rate[] | null;
    readonly wrong: string;
  }) =>
    cellSaver<ShopRow, readonly Rate[]>({
      row: page.shop,
      show: how.show,
      read: (text, row) => how.read(text, row.rates),
      wrong: how.wrong,
      send: (row, rates) => act('shop.rates', { revision: row.revision, rates: [...rates] }),
      fresh: readShop,
      say: saidOfList,
    });
  const of = (id: string, rates: readonly Rate[], change: Partial<Rate>) =>
    rates.map((rate) => (rate.id === id ? { ...rate, ...change } : rate));
  const makeUsual = async (id: string) =>
    say(
      await saver({
        show: () => '',
        read: (_text, rates) => rates.map((rate) => ({ ...rate, usual: rate.id === id })),
        wrong: '',
      })('', true),
    );
  return (
    <section>
      <h3>{t('shop.rates')}</h3>
      <p className="small ink-2">{t('shop.ratesWords')}</p>
      <div className="shop-table rates" role="list">
        {page.shop.rates.map((rate) => (
          <div key={rate.id} role="listitem">
            <Cell
              label={t('shop.rateName', { name: rate.name })}
              value={rate.name}
              readOnly={!page.mayChange}
              save={saver({
                show: (row) => row.rates.find((one) => one.id === rate.id)?.name ?? '',
                read: (name, rates) => (name.trim() === '' ? null : of(rate.id, rates, { name })),
                wrong: t('shop.nameNeeded'),
              })}
            />
            <Cell
              label={t('shop.ratePrice', { name: rate.name })}
              value={amountText(rate.price, writing)}
              figure
              readOnly={!page.mayChange}
              save={saver({
                show: (row) => amountText(row.rates.find((one) => one.id === rate.id)?.price ?? 0, writing),
                read: (text, rates) => {
                  const price = readAmount(text, writing);
                  return price === null || price < 0 ? null : of(rate.id, rates, { price });
                },
                wrong: t('start.hourWrong'),
              })}
            />
            <label className="shop-usual">
              <input
                type="radio"
                name="usual-rate"
                checked={rate.usual}
                disabled={!page.mayChange}
                onChange={() => void makeUsual(rate.id)}
              />{' '}
              {t('shop.usual')}
            </label>
          </div>
        ))}
        {page.mayChange && page.shop.rates.length < 12 ? (
          <div role="listitem">
            <Cell
              className="shop-open"
              label={t('shop.anotherRate')}
              placeholder={t('shop.anotherRate')}
              value=""
              save={saver({
                show: () => '',
                read: (name, rates) =>
                  name.trim() === '' ? null : [...rates, { id: null, name, price: 0, usual: rates.length === 0 }],
                wrong: t('shop.nameNeeded'),
              })}
            />
          </div>
        ) : null}
      </div>
      {wrong}
    </section>
  );
}
