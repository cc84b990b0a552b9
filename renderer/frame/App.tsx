import { Suspense, useEffect, useState } from 'react';
import type { OutputOf } from '../../core/contract/index.ts';
import { Loading } from '../parts/Loading.tsx';
import { Notice } from '../parts/Notice.tsx';
import { places, StartPlace } from '../places/index.ts';
import { startListening } from '../state/asks.ts';
import { act } from '../state/call.ts';
import { readSession, useSession } from '../state/session.ts';
import { startTaps } from '../state/taps.ts';
import type { CallError } from '../state/transport.ts';
import { useAsk } from '../state/use-ask.ts';
import { errorSentence } from '../words/error-sentence.ts';
import { t } from '../words/t.ts';
import { Enter } from './Enter.tsx';
import { Fault } from './Fault.tsx';
import { KeysSheet } from './KeysSheet.tsx';
import { PLACE_KEYS } from './key-map.ts';
import { listenToKeys, useKey } from './keys.ts';
import { Rail } from './Rail.tsx';
import { goTo, PLACES, type PlaceName, useRoute } from './router.ts';
import { Top } from './Top.tsx';
import { UnsavedLine } from './UnsavedLine.tsx';
import { Warnings } from './Warnings.tsx';
import { useLookOfMachine, useWidth } from './width.ts';

/** The whole window: first start, who is working, or the frame with its place. */
export function App() {
  useLookOfMachine();
  useEffect(listenToKeys, []);
  useEffect(startListening, []);
  useEffect(startTaps, []);
  useEffect(() => void readSession(), []);
  const { person, error } = useSession();
  const shop = useAsk('shop.get', {});
  const wrong = shop.data === undefined ? (shop.error ?? error) : null;
  if (wrong)
    return (
      <Message
        words={wrong.code === 'turned-away' && wrong.why === 'opening' ? t('frame.starting') : errorSentence(wrong)}
      />
    );
  if (shop.data === undefined) return shop.loading ? <Message words={t('frame.loading')} /> : null;
  if (!shop.data.isSetUp)
    return (
      <Suspense>
        <StartPlace />
      </Suspense>
    );
  if (person === undefined) return null;
  if (person === null) return <Enter />;
  return <Framed practice={shop.data.practice} warnings={shop.data.warnings} away={shop.error ?? error} />;
}

function Message({ words }: { readonly words: string }) {
  return (
    <main className="enter">
      <h1>{t('frame.program')}</h1>
      <p role="status">{words}</p>
    </main>
  );
}

interface FramedProps {
  readonly practice: boolean;
  readonly warnings: OutputOf<'shop.get'>['warnings'];
  readonly away: CallError | null;
}

function Framed({ practice, warnings, away }: FramedProps) {
  const route = useRoute();
  const tablet = useWidth().width === 'tablet';
  const [placesShown, showPlaces] = useState(false);
  const [keysShown, showKeys] = useState(false);
  useKey('?', () => showKeys(true));
  useKey('N', () => goTo('today', 'book'));
  useKey('Esc', () => showPlaces(false), placesShown);
  useKey('Alt+S', () => void act('clock.off', {}));
  const Place = places[route.place];
  return (
    <div className="app">
      {PLACES.map((place) => (
        <PlaceKey key={place} place={place} />
      ))}
      {!tablet || placesShown ? <Rail place={route.place} onGo={() => showPlaces(false)} /> : null}
      <Top placesShown={placesShown} onPlaces={() => showPlaces(!placesShown)} />
      <main className="main" aria-label={t(`frame.${route.place}`)}>
        {practice ? <p className="practice">{t('frame.practice')}</p> : null}
        <Warnings warnings={warnings} />
        {away === null ? null : <Notice>{errorSentence(away)}</Notice>}
        <Fault where={window.location.hash}>
          <Suspense fallback={<Loading rows={8} />}>
            <Place path={route.path} query={route.query} />
          </Suspense>
        </Fault>
        <UnsavedLine />
      </main>
      {keysShown ? <KeysSheet onClose={() => showKeys(false)} /> : null}
    </div>
  );
}

function PlaceKey({ place }: { readonly place: PlaceName }) {
  useKey(PLACE_KEYS[place], () => goTo(place));
  return null;
}
