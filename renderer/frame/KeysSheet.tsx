import { Dialog } from '../parts/Dialog.tsx';
import { useMachine } from '../state/machine.ts';
import { t } from '../words/t.ts';
import { PLACES } from './router.ts';

const KEYS = [
  ['/', 'keys.find'],
  ['Ctrl K', 'keys.find'],
  ['N', 'keys.book'],
  ['Enter', 'keys.openRow'],
  ['Up  Down', 'keys.rows'],
  ['Space', 'keys.tick'],
  ['F', 'keys.filter'],
  ['Page Down', 'keys.weekOn'],
  ['Tab', 'keys.nextCell'],
  ['Enter', 'keys.nextLine'],
  ['Shift Enter', 'keys.lineAbove'],
  ['Alt J', 'keys.newJob'],
  ['Alt Y', 'keys.recordYes'],
  ['Y  N  L', 'keys.answers'],
  ['Alt P', 'keys.print'],
  ['B', 'keys.bench'],
  ['Alt S', 'keys.myClock'],
  ['Alt Up  Alt Down', 'keys.moveStep'],
  ['Ctrl Z', 'keys.undo'],
  ['Ctrl Enter', 'keys.mainAction'],
  ['Esc', 'keys.leave'],
  ['?', 'keys.theseKeys'],
] as const;

/** Every key and what it does. */
export function KeysSheet({ onClose }: { readonly onClose: () => void }) {
  const letters = useMachine((machine) => machine.letters);
  return (
    <Dialog title={t('keys.title')} onClose={onClose}>
      {letters ? null : <p className="in-heed">{t('keys.lettersOff')}</p>}
      <dl className="keys-list">
        {PLACES.map((place, i) => (
          <div key={place}>
            <dt>
              <kbd>Alt {i + 1}</kbd>
            </dt>
            <dd>{t('keys.place', { place: t(`frame.${place}`) })}</dd>
          </div>
        ))}
        {KEYS.map(([key, words]) => (
          <div key={key + words}>
            <dt>
              {key.split('  ').map((one) => (
                <kbd key={one}>{one}</kbd>
              ))}
            </dt>
            <dd>{t(words)}</dd>
          </div>
        ))}
      </dl>
    </Dialog>
  );
}
