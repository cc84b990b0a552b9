import { useState } from 'react';
import { KeysSheet } from '../../frame/KeysSheet.tsx';
import { Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { setMachine, useMachine } from '../../state/machine.ts';
import { t } from '../../words/t.ts';
import { SettingRow, useShopPage } from './setting.tsx';

const SIZES = ['100', '125', '150', '200'] as const;

/** Keys and light: of this machine alone. */
export function Machine() {
  const machine = useMachine();
  const [keys, setKeys] = useState(false);
  return (
    <section>
      <p className="small ink-2">{t('shop.machineWords')}</p>
      <SettingRow label={t('frame.bayLight')}>
        <Choice
          label={t('frame.bayLight')}
          quiet
          value={machine.light}
          options={[
            { value: 'day', words: t('frame.off') },
            { value: 'bay', words: t('frame.on') },
          ]}
          onChange={(light) => setMachine({ light })}
        />
      </SettingRow>
      <SettingRow label={t('shop.textSize')}>
        <Choice
          label={t('shop.textSize')}
          quiet
          value={SIZES.find((size) => Number(size) === machine.textSize) ?? null}
          options={SIZES.map((value) => ({ value, words: `${value}\u00a0%` }))}
          onChange={(size) => setMachine({ textSize: Number(size) })}
        />
      </SettingRow>
      <SettingRow label={t('shop.letters')} note={t('shop.lettersWords')}>
        <Tick ticked={machine.letters} onTick={(letters) => setMachine({ letters })}>
          {t('shop.lettersOn')}
        </Tick>
      </SettingRow>
      <p>
        <Button onClick={() => setKeys(true)}>{t('shop.allKeys')}</Button>
      </p>
      {keys ? <KeysSheet onClose={() => setKeys(false)} /> : null}
    </section>
  );
}

const LICENCES = [
  ['Crownwheel', 'MIT'],
  ['React, Zustand, zod, Kysely, better-sqlite3', 'MIT'],
  ['@cantoo/pdf-lib, @cantoo/fontkit', 'MIT'],
  ['SQLite', 'public domain'],
  ['Besley, Sofia Sans, Source Sans 3', 'SIL OFL 1.1'],
] as const;

/** Where the shop is kept, in what it runs, and what it is made of. */
export function Program() {
  const { shop } = useShopPage();
  return (
    <>
      <section>
        <SettingRow label={t('shop.folder')} note={t('shop.folderWords')}>
          <code>{shop.folder}</code>
        </SettingRow>
        {shop.warnings.map((warning) => (
          <p key={warning.what} className="in-heed semi">
            {t(`shop.warning-${warning.what}`, warning.with)}
          </p>
        ))}
        {shop.practice ? <p>{t('start.practice')}</p> : null}
        <SettingRow label={t('shop.window')} note={t('shop.electron')}>
          <span>{t(window.crownwheel === undefined ? 'shop.inBrowser' : 'shop.inDesktop')}</span>
        </SettingRow>
      </section>
      <section>
        <h3>{t('shop.licences')}</h3>
        <dl className="shop-falls wide">
          {LICENCES.map(([what, licence]) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{licence}</dd>
            </div>
          ))}
        </dl>
        <p className="small ink-2">{t('shop.care')}</p>
      </section>
    </>
  );
}
