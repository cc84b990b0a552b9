import { markupsOf, offeredPrice } from '../../../core/money/offered-price.ts';
import { Button } from '../../parts/Button.tsx';
import { useWriting } from '../../state/shop.ts';
import { amountText, rateText, readAmount } from '../../words/figures.ts';
import { t } from '../../words/t.ts';
import { readPercent } from '../set-up/percent.ts';
import { Setting, SettingChoice, type Settings, saveSetting, useSaved, useShopPage } from './setting.tsx';

type Parts = NonNullable<Settings['partsMarkup']>;
type Band = Parts['bands'][number];

/** Only to begin with: one band without a markup, until the owner has put their own. */
const BEGIN: Parts = { bands: [{ upTo: null, bp: 0 }], guard: true };
const partsOf = ({ partsMarkup }: Settings): Parts => partsMarkup ?? BEGIN;
const withBand = (settings: Settings, at: number, part: Partial<Band>) => ({
  partsMarkup: {
    ...partsOf(settings),
    bands: partsOf(settings).bands.map((band, place) => (place === at ? { ...band, ...part } : band)),
  },
});

/** Bands of cost, each with what goes on top of it. */
export function PartsMarkup() {
  const page = useShopPage();
  const { settings, mayChange } = page;
  const [wrong, say] = useSaved();
  const { partsMarkup } = settings;
  const leaveOut = async (at: number) => {
    const without = (now: Settings) => ({
      partsMarkup: { ...partsOf(now), bands: partsOf(now).bands.filter((_, place) => place !== at) },
    });
    say(await saveSetting(page, { show: () => '', read: (_text, now) => without(now) })('', true));
  };
  return (
    <section aria-label={t('rules.markup')}>
      <h3>{t('rules.markup')}</h3>
      <SettingChoice
        label={t('rules.markup')}
        value={partsMarkup === null ? 'none' : 'some'}
        options={[
          { value: 'none', words: t('rules.markupNone') },
          { value: 'some', words: t('rules.markupSome') },
        ]}
        change={(mode, now) => ({ partsMarkup: mode === 'none' ? null : partsOf(now) })}
        note={t('rules.markupSays')}
      />
      {partsMarkup?.bands.map((band, at) => (
        <div key={band.upTo ?? 'rest'}>
          <BandRows at={at} last={band.upTo === null} />
          {mayChange && band.upTo !== null ? (
            <p>
              <Button small onClick={() => void leaveOut(at)}>
                {t('rules.markupLess', { n: at + 1 })}
              </Button>
            </p>
          ) : null}
        </div>
      ))}
      {wrong}
      {partsMarkup === null ? null : <Ends parts={partsMarkup} />}
    </section>
  );
}

function BandRows({ at, last }: { readonly at: number; readonly last: boolean }) {
  const writing = useWriting();
  return (
    <>
      {last ? null : (
        <Setting
          label={t('rules.markupUpTo', { n: at + 1 })}
          show={(now) => amountText(partsOf(now).bands[at]?.upTo ?? null, writing)}
          read={(text, now) => {
            const upTo = readAmount(text, writing);
            return upTo === null || upTo < 0 ? null : withBand(now, at, { upTo });
          }}
          wrong={t('rules.markupBandWrong')}
          note={t('rules.markupUpToSays')}
        />
      )}
      <Setting
        label={t('rules.markupOn', { n: at + 1 })}
        show={(now) => rateText((partsOf(now).bands[at]?.bp ?? 0) * 100, writing)}
        read={(text, now) => {
          const bp = readPercent(text, 2, 1000);
          return bp === null ? null : withBand(now, at, { bp });
        }}
        wrong={t('rules.markupPercentWrong')}
        note={t(last && at > 0 ? 'rules.markupRest' : 'rules.markupOnSays')}
      />
    </>
  );
}

/** Another band, what happens where one ends, and an example at the first end. */
function Ends({ parts }: { readonly parts: Parts }) {
  const { settings, mayChange } = useShopPage();
  const writing = useWriting();
  const end = parts.bands[0]?.upTo ?? null;
  const at = (cost: number) => amountText(offeredPrice('part', cost, markupsOf(settings)), writing);
  const example = (cost: number) => ({
    ...{ a: amountText(cost, writing), atA: at(cost) },
    ...{ b: amountText(cost + 1, writing), atB: at(cost + 1) },
  });
  return (
    <>
      {mayChange && parts.bands.length < 12 ? (
        <Setting
          label={t('rules.markupMore')}
          show={() => ''}
          read={(text, now) => {
            const upTo = readAmount(text, writing);
            const { bands } = partsOf(now);
            if (upTo === null || upTo < 0 || bands.some((band) => band.upTo === upTo)) return null;
            const after = bands.findIndex((band) => band.upTo === null || band.upTo > upTo);
            const bp = bands[after]?.bp ?? 0;
            return { partsMarkup: { ...partsOf(now), bands: bands.toSpliced(after, 0, { upTo, bp }) } };
          }}
          wrong={t('rules.markupBandWrong')}
        />
      ) : null}
      <SettingChoice
        label={t('rules.markupGuard')}
        value={parts.guard ? 'on' : 'off'}
        options={[
          { value: 'on', words: t('rules.markupGuard-on') },
          { value: 'off', words: t('rules.markupGuard-off') },
        ]}
        change={(guard, now) => ({ partsMarkup: { ...partsOf(now), guard: guard === 'on' } })}
        note={end === null ? undefined : t('rules.markupExample', example(end))}
      />
    </>
  );
}
