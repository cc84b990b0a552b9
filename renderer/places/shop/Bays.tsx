import { timeShown } from '../../../core/time/time-shown.ts';
import { hrefOf } from '../../frame/router.ts';
import { Cell } from '../../parts/Cell.tsx';
import { act } from '../../state/call.ts';
import { t } from '../../words/t.ts';
import { cellSaver } from './cell-saver.ts';
import { Hours } from './Hours.tsx';
import { saidOfList } from './list-error.ts';
import { readShop, Setting, type ShopRow, useShopPage } from './setting.tsx';

interface Bay {
  readonly id: string | null;
  readonly name: string;
  readonly words: string;
}

/** Where cars stand to be worked on, and when the shop is open. */
export function Bays() {
  const { shop, mayChange } = useShopPage();
  const saver = (
    show: (bays: readonly Bay[]) => string,
    read: (text: string, bays: readonly Bay[]) => readonly Bay[] | null,
  ) =>
    cellSaver<ShopRow, readonly Bay[]>({
      row: shop,
      show: (row) => show(row.bays),
      read: (text, row) => read(text, row.bays),
      wrong: t('shop.nameNeeded'),
      send: (row, bays) => act('shop.bays', { revision: row.revision, bays: [...bays] }),
      fresh: readShop,
      say: saidOfList,
    });
  return (
    <>
      <section>
        <h3>{t('shop.bays')}</h3>
        <div className="shop-table bays" role="list">
          {shop.bays.map((bay) => (
            <div key={bay.id} role="listitem">
              {(['name', 'words'] as const).map((field) => (
                <Cell
                  key={field}
                  label={t(`shop.bay-${field}`, { name: bay.name })}
                  placeholder={field === 'words' ? t('shop.bayWords') : ''}
                  value={bay[field]}
                  readOnly={!mayChange}
                  save={saver(
                    (bays) => bays.find((one) => one.id === bay.id)?.[field] ?? '',
                    (text, bays) =>
                      field === 'name' && text.trim() === ''
                        ? null
                        : bays.map((one) => (one.id === bay.id ? { ...one, [field]: text } : one)),
                  )}
                />
              ))}
            </div>
          ))}
          {mayChange && shop.bays.length < 12 ? (
            <div role="listitem">
              <Cell
                className="shop-open"
                label={t('shop.anotherBay')}
                placeholder={t('shop.anotherBay')}
                value=""
                save={saver(
                  () => '',
                  (name, bays) => (name.trim() === '' ? null : [...bays, { id: null, name, words: '' }]),
                )}
              />
            </div>
          ) : null}
        </div>
        <p className="small ink-2">{t('shop.stays')}</p>
      </section>
      <section>
        <h3>{t('shop.open')}</h3>
        {(['planOpens', 'planCloses'] as const).map((field) => (
          <Setting
            key={field}
            label={t(`shop.${field}`)}
            show={(settings) => timeShown(settings[field])}
            read={(text) => {
              const time = /^(\d{1,2}):?(\d\d)$/.exec(text.trim());
              if (time === null || Number(time[1]) > 23 || Number(time[2]) > 59) return null;
              return { [field]: `${(time[1] ?? '').padStart(2, '0')}:${time[2]}` };
            }}
            wrong={t('shop.timeWrong')}
          />
        ))}
        <Hours />
        <p className="small ink-2">
          {t('terms.absences')} <a href={hrefOf('today', 'week')}>{t('terms.absencesLink')}</a>
        </p>
      </section>
    </>
  );
}
