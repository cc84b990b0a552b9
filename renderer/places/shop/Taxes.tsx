import { LINE_KINDS } from '../../../core/money/line.ts';
import { Button } from '../../parts/Button.tsx';
import { Choices } from '../../parts/Choice.tsx';
import { act } from '../../state/call.ts';
import { useWriting } from '../../state/shop.ts';
import { rateText, readAmount } from '../../words/figures.ts';
import { listWords } from '../../words/list.ts';
import { t } from '../../words/t.ts';
import { readPercent } from '../set-up/percent.ts';
import { cellSaver } from './cell-saver.ts';
import { RuleHeading } from './RuleHeading.tsx';
import { Supplies } from './Supplies.tsx';
import {
  readShop,
  Setting,
  SettingChoice,
  SettingDay,
  SettingRow,
  type Settings,
  type ShopRow,
  useSaved,
  useShopPage,
} from './setting.tsx';

type Tax = Settings['taxes'][number];

/** Taxes by kind of line, each with where its rate was read and when; and how tax is reckoned. */
export function Taxes() {
  const { settings, mayChange } = useShopPage();
  const writing = useWriting();
  return (
    <>
      <section>
        <h3>{t('shop.whatFalls')}</h3>
        <dl className="shop-falls">
          {LINE_KINDS.map((kind) => {
            const free = kind === 'core' && settings.coreTax.way === 'none';
            const taxes = free ? [] : settings.taxes.filter((tax) => tax.kinds.includes(kind));
            return (
              <div key={kind}>
                <dt>{t(`start.${kind}`)}</dt>
                <dd>
                  {taxes.length === 0
                    ? t('shop.noTax')
                    : listWords(taxes.map((tax) => `${tax.name} ${rateText(tax.ratePpm, writing)}`))}
                </dd>
              </div>
            );
          })}
        </dl>
        <p className="small ink-2">{t('start.taxHint')}</p>
      </section>
      {settings.taxes.map((tax) => (
        <TaxPart key={tax.id} tax={tax} />
      ))}
      {mayChange && settings.taxes.length < 6 ? <NewTax /> : null}
      <Reckoning />
      <Supplies />
    </>
  );
}

const withTax = (settings: Settings, id: string, change: Partial<Tax>) => ({
  taxes: settings.taxes.map((tax) => (tax.id === id ? { ...tax, ...change } : tax)),
});

function TaxPart({ tax }: { readonly tax: Tax }) {
  const page = useShopPage();
  const writing = useWriting();
  const { id } = tax;
  const [wrong, say] = useSaved();
  const mine = (settings: Settings) => settings.taxes.find((one) => one.id === id);
  const save = async (change: (settings: Settings) => Pick<Settings, 'taxes'>) => {
    const saving = cellSaver<ShopRow, Pick<Settings, 'taxes'>>({
      row: page.shop,
      show: () => '',
      read: (_text, row) => change(row.settings ?? page.settings),
      wrong: '',
      send: (row, settings) => act('shop.change', { revision: row.revision, settings }),
      fresh: readShop,
    });
    say(await saving('', true));
  };
  return (
    <section aria-label={tax.name}>
      <RuleHeading name={tax.name} rule={tax} />
      <Setting
        label={t('start.taxName')}
        show={(settings) => mine(settings)?.name ?? ''}
        read={(text, settings) => (text.trim() === '' ? null : withTax(settings, id, { name: text }))}
        wrong={t('start.taxNameNeeded')}
      />
      <Setting
        label={t('start.taxRate')}
        show={(settings) => rateText(mine(settings)?.ratePpm ?? 0, writing)}
        read={(text, settings) => {
          const ratePpm = readPercent(text, 4);
          return ratePpm === null ? null : withTax(settings, id, { ratePpm });
        }}
        wrong={t('start.taxRateWrong')}
        note={t('own.taxRateNote')}
      />
      <SettingRow label={t('start.taxKinds')} note={t('own.taxKindsNote')}>
        <Choices
          label={t('start.taxKinds')}
          quiet
          values={tax.kinds}
          options={LINE_KINDS.map((kind) => ({ value: kind, words: t(`start.${kind}`), held: !page.mayChange }))}
          onChange={(kinds) => void save((settings) => withTax(settings, id, { kinds }))}
        />
        {wrong}
      </SettingRow>
      <Setting
        label={t('start.source')}
        show={(settings) => mine(settings)?.source ?? ''}
        read={(source, settings) => withTax(settings, id, { source })}
        wrong={t('shop.wordsWrong')}
        note={t('own.sourceNote')}
      />
      <SettingDay
        label={t('start.checkedOn')}
        show={(settings) => mine(settings)?.checkedOn ?? ''}
        read={(text, settings) => withTax(settings, id, { checkedOn: text === '' ? null : text })}
        note={t('own.checkedOnNote')}
      />
      {page.mayChange ? (
        <p>
          <Button
            small
            onClick={() => void save((settings) => ({ taxes: settings.taxes.filter((one) => one.id !== id) }))}
          >
            {t('shop.leaveOut', { name: tax.name })}
          </Button>
        </p>
      ) : null}
    </section>
  );
}

/** The open row at the end: a new tax begins with its name. */
function NewTax() {
  return (
    <section>
      <Setting
        label={t('start.anotherTax')}
        placeholder={t('start.taxName')}
        show={() => ''}
        read={(text, { taxes }) => {
          const free = [1, 2, 3, 4, 5, 6, 7].find((n) => !taxes.some((tax) => tax.id === `tax-${n}`)) ?? 8;
          const blank = { id: `tax-${free}`, name: text, ratePpm: 0, kinds: [], source: '', checkedOn: null };
          return text.trim() === '' ? null : { taxes: [...taxes, blank] };
        }}
        wrong={t('start.taxNameNeeded')}
      />
    </section>
  );
}

function Reckoning() {
  const { settings } = useShopPage();
  const writing = useWriting();
  return (
    <section>
      <h3>{t('shop.reckoning')}</h3>
      <SettingRow label={t('start.currency')} note={t('shop.currencyStays')}>
        <span className="setting-frozen">{settings.currency}</span>
      </SettingRow>
      <SettingChoice
        label={t('start.prices')}
        value={settings.prices}
        options={[
          { value: 'exclusive', words: t('start.exclusive') },
          { value: 'inclusive', words: t('start.inclusive') },
        ]}
        change={(prices) => ({ prices })}
        note={t('shop.pricesNote')}
      />
      <SettingChoice
        label={t('shop.taxRounding')}
        value={settings.taxRounding}
        options={[
          { value: 'document', words: t('shop.perDocument') },
          { value: 'line', words: t('shop.perLine') },
        ]}
        change={(taxRounding) => ({ taxRounding })}
        note={t('own.taxRoundingNote')}
      />
      <Setting
        label={t('shop.cashStep')}
        show={({ cashStep }) => String(cashStep)}
        read={(text) => (/^[1-9]\d{0,3}$/.test(text.trim()) ? { cashStep: Number(text) } : null)}
        wrong={t('shop.cashStepWrong')}
        note={t('shop.cashStepNote', { sum: readAmount('1', writing) ?? 100 })}
      />
    </section>
  );
}
