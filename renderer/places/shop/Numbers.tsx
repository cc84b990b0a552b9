import { t } from '../../words/t.ts';
import { civilText } from '../../words/times.ts';
import { Setting, SettingChoice, SettingRow, useShopPage } from './setting.tsx';

const DAYS = [
  ['quoteDays', 1, 365],
  ['payDays', 0, 365],
  ['followUpDays', 0, 3650],
  ['followUpDistance', 0, 1_000_000],
] as const;
/** A day whose parts cannot be taken for one another. */
const EXAMPLE_DAY = '2026-09-23';
const SERIES = ['order', 'quote', 'invoice', 'creditNote', 'receipt'] as const;
const DECIMALS = ['.', ','] as const;
const DATES = ['language', 'day-month', 'month-day', 'year-month'] as const;
const VOLUMES = ['L', 'US qt'] as const;
const GROUPS = [',', '.', ' ', ''] as const;

/** How figures are written and measured, how long things stand, and where the series of numbers began. */
export function Numbers() {
  const { settings, shop } = useShopPage();
  return (
    <>
      <section>
        <h3>{t('shop.written')}</h3>
        <SettingChoice
          label={t('shop.decimal')}
          value={settings.decimal}
          options={DECIMALS.map((value) => ({ value, words: `1${value}50` }))}
          change={(decimal) => ({ decimal })}
        />
        <SettingChoice
          label={t('shop.group')}
          value={settings.group}
          options={GROUPS.map((value) => ({ value, words: `1${value === ' ' ? '\u00a0' : value}000` }))}
          change={(group) => ({ group })}
        />
        <Setting
          label={t('start.zone')}
          show={({ zone }) => zone}
          read={(zone) => (zone.trim() === '' ? null : { zone })}
          wrong={t('start.zoneWrong')}
          note={t('own.zoneNote')}
        />
        <SettingChoice
          label={t('shop.language')}
          value={settings.language}
          options={[
            { value: 'en', words: 'English' },
            { value: 'de', words: 'Deutsch' },
          ]}
          change={(language) => ({ language })}
        />
        <SettingChoice
          label={t('start.paper')}
          value={settings.paper}
          options={[
            { value: 'A4', words: 'A4' },
            { value: 'Letter', words: 'Letter' },
          ]}
          change={(paper) => ({ paper })}
        />
        <SettingChoice
          label={t('own.dateForm')}
          value={settings.dateForm}
          options={DATES.map((value) => ({
            value,
            words:
              value === 'language' ? t('own.date-language') : civilText(EXAMPLE_DAY, { ...settings, dateForm: value }),
          }))}
          change={(dateForm) => ({ dateForm })}
          note={t('own.dateFormNote')}
        />
        <SettingChoice
          label={t('start.distance')}
          value={settings.distance}
          options={[
            { value: 'km', words: t('start.kilometres') },
            { value: 'mi', words: t('start.miles') },
          ]}
          change={(distance) => ({ distance })}
          note={t('own.distanceNote')}
        />
        <SettingChoice
          label={t('start.torque')}
          value={settings.torque}
          options={[
            { value: 'N·m', words: 'N·m' },
            { value: 'lbf·ft', words: 'lbf·ft' },
          ]}
          change={(torque) => ({ torque })}
          note={t('own.torqueNote')}
        />
        <SettingChoice
          label={t('own.volume')}
          value={settings.volume}
          options={VOLUMES.map((value) => ({ value, words: t(`own.volume-${value}`) }))}
          change={(volume) => ({ volume })}
          note={t('own.volumeNote')}
        />
      </section>
      <section>
        <h3>{t('shop.howLong')}</h3>
        {DAYS.map(([field, least, most]) => (
          <Setting
            key={field}
            label={t(`shop.${field}`)}
            show={(now) => String(now[field])}
            read={(text) => {
              const figure = /^\d{1,7}$/.test(text.trim()) ? Number(text) : -1;
              return figure < least || figure > most ? null : { [field]: figure };
            }}
            wrong={t('shop.wholeWrong', { least, most })}
            note={t(`terms.note-${field}`)}
          />
        ))}
      </section>
      <section>
        <h3>{t('shop.series')}</h3>
        {SERIES.map((series) => (
          <SettingRow key={series} label={t(`shop.series-${series}`)}>
            <span className="setting-frozen">
              {t('own.nextOf', { next: shop.nextNumbers?.[series] ?? '', n: settings.firstNumbers[series] })}
            </span>
          </SettingRow>
        ))}
        <p className="small ink-2">{t('shop.seriesWords')}</p>
      </section>
    </>
  );
}
