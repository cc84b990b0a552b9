import { Dialog } from '../parts/Dialog.tsx';
import { useMachine } from '../state/machine.ts';
import { t } from '../words/t.ts';
import { type Combo, KEY_MAP, keyName, PLACE_KEYS } from './key-map.ts';
import { PLACES } from './router.ts';
import './keys-sheet.css';

/** Every key and what it does, by where it does it. */
export function KeysSheet({ onClose }: { readonly onClose: () => void }) {
  const letters = useMachine((machine) => machine.letters);
  return (
    <Dialog title={t('keys.title')} onClose={onClose}>
      {letters ? null : <p className="in-heed">{t('keys.lettersOff')}</p>}
      <div className="keys-list">
        {KEY_MAP.map(({ where, rows }) => (
          <section key={where} aria-label={t(`keys.where-${where}`)}>
            <h3>{t(`keys.where-${where}`)}</h3>
            <dl>
              {where === 'everywhere'
                ? PLACES.map((place) => (
                    <KeyRow
                      key={place}
                      keys={[PLACE_KEYS[place]]}
                      words={t('keys.place', { place: t(`frame.${place}`) })}
                    />
                  ))
                : null}
              {rows.map(({ keys, does }) => (
                <KeyRow key={does} keys={keys} words={t(`keys.${does}`)} />
              ))}
            </dl>
          </section>
        ))}
      </div>
    </Dialog>
  );
}

function KeyRow({ keys, words }: { readonly keys: readonly Combo[]; readonly words: string }) {
  return (
    <div>
      <dt>
        {keys.map((key) => (
          <kbd key={key}>{keyName(key)}</kbd>
        ))}
      </dt>
      <dd>{words}</dd>
    </div>
  );
}
