import { createContext, useContext, useMemo } from 'react';
import type { OpenHours } from '../../core/order/spread.ts';
import { PLAIN_WRITING, type Writing } from '../words/figures.ts';
import { useAsk } from './use-ask.ts';

/** The shop: settings, people, bays, rates. */
export function useShop() {
  return useAsk('shop.get', {}).data;
}

const Draft = createContext<Writing | null>(null);
/** Before there is a shop: how the one that is being set up writes. */
export const WritingDraft = Draft.Provider;

/** How this shop writes money, figures and times. */
export function useWriting(): Writing {
  const settings = useShop()?.settings;
  const draft = useContext(Draft);
  return useMemo(() => settings ?? draft ?? PLAIN_WRITING, [settings, draft]);
}

const SHUT: OpenHours = { opens: '00:00', closes: '00:00', weekdays: [] };

/** When the garage is open, as bookings are laid over its days. */
export function useOpenHours(): OpenHours {
  const settings = useShop()?.settings;
  if (!settings) return SHUT;
  return { opens: settings.planOpens, closes: settings.planCloses, weekdays: settings.workingWeekdays };
}
