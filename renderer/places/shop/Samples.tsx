import { useWriting } from '../../state/shop.ts';
import { t } from '../../words/t.ts';
import { Setting, type Settings } from './setting.tsx';
import { WholeSetting } from './WholeSetting.tsx';

type Guards = Settings['fluidGuards'];
const WHOLE = [
  ['fewestSamples', 2, 50],
  ['fewestKm', 1, 100_000],
] as const;
const TENTHS = ['alertTenths', 'alarmTenths'] as const;
const MOST_TENTHS = 100;

/** "2.5" as 25; null where it is no figure of one decimal from 0.1 to 10. */
function readTenths(text: string): number | null {
  const match = /^(\d{1,2})(?:[.,](\d))?$/.exec(text.trim());
  const tenths = match === null ? 0 : Number(match[1]) * 10 + Number(match[2] ?? 0);
  return tenths < 1 || tenths > MOST_TENTHS ? null : tenths;
}

/** From when the history of a unit's oil samples says something, and how far out is an alert or an alarm. */
export function Samples() {
  const writing = useWriting();
  const change = (now: Settings, part: Partial<Guards>) => {
    const fluidGuards = { ...now.fluidGuards, ...part };
    return fluidGuards.alarmTenths > fluidGuards.alertTenths ? { fluidGuards } : null;
  };
  return (
    <section>
      <h3>{t('own.samples')}</h3>
      <p className="small ink-2">{t('own.samplesWords')}</p>
      {WHOLE.map(([field, least, most]) => (
        <WholeSetting
          key={field}
          label={t(`own.${field}`)}
          least={least}
          most={most}
          show={({ fluidGuards }) => fluidGuards[field]}
          change={(figure, now) => change(now, { [field]: figure })}
          note={t(`own.${field}Note`)}
        />
      ))}
      {TENTHS.map((field) => (
        <Setting
          key={field}
          label={t(`own.${field}`)}
          show={({ fluidGuards }) => String(fluidGuards[field] / 10).replace('.', writing.decimal)}
          read={(text, now) => {
            const tenths = readTenths(text);
            return tenths === null ? null : change(now, { [field]: tenths });
          }}
          wrong={t('own.deviationWrong')}
          note={t(`own.${field}Note`)}
        />
      ))}
    </section>
  );
}
