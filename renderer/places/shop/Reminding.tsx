import { hrefOf } from '../../frame/router.ts';
import { t } from '../../words/t.ts';
import { Keeping } from './Keeping.tsx';
import { readWhole } from './read-whole.ts';
import { Storage } from './Storage.tsx';
import { Setting, SettingRow } from './setting.tsx';
import { Warranty } from './Warranty.tsx';
import { WholeSetting } from './WholeSetting.tsx';
import { Wording } from './Wording.tsx';

const DAYS = [
  ['labDays', 1],
  ['coreDays', 1],
] as const;

/** When customers, labs and old units are spoken of, how long repairs are warranted, what storage counts, and the texts. */
export function Reminding() {
  return (
    <>
      <section>
        <h3>{t('terms.reminding')}</h3>
        <WholeSetting
          label={t('terms.remindDays')}
          least={0}
          most={365}
          show={({ remindDays }) => remindDays}
          change={(remindDays) => ({ remindDays })}
          note={t('terms.remindDaysWords')}
        />
        <Setting
          label={t('terms.wheels')}
          show={({ wheelRecheckDistance }) => (wheelRecheckDistance === null ? '' : String(wheelRecheckDistance))}
          read={(text) => {
            if (text.trim() === '') return { wheelRecheckDistance: null };
            const wheelRecheckDistance = readWhole(text, 1, 10_000);
            return wheelRecheckDistance === null ? null : { wheelRecheckDistance };
          }}
          wrong={t('terms.wholeOrNone')}
          placeholder={t('shop.none')}
          note={t('terms.wheelsWords')}
        />
        {DAYS.map(([field, least]) => (
          <WholeSetting
            key={field}
            label={t(`terms.${field}`)}
            least={least}
            most={365}
            show={(settings) => settings[field]}
            change={(days) => ({ [field]: days })}
            note={t(`terms.note-${field}`)}
          />
        ))}
        <p className="small ink-2">
          {t('terms.followUp')} {t('terms.twoNoes')}
        </p>
      </section>
      <Lying />
      <Warranty />
      <Storage />
      <Keeping />
      <Wording />
    </>
  );
}

/** When a part counts as lying still; packs are said part by part, and the row leads there. */
function Lying() {
  return (
    <section>
      <h3>{t('terms.stock')}</h3>
      <WholeSetting
        label={t('terms.deadStockMonths')}
        least={1}
        most={120}
        show={({ deadStockMonths }) => deadStockMonths}
        change={(deadStockMonths) => ({ deadStockMonths })}
        note={t('terms.note-deadStockMonths')}
      />
      <SettingRow label={t('terms.packs')} note={t('terms.packsNote')}>
        <a href={hrefOf('stock')}>{t('terms.packsLink')}</a>
      </SettingRow>
    </section>
  );
}
