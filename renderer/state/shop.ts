import { useMemo } from 'react';
import { PLAIN_WRITING, type Writing } from '../words/figures.ts';
import { useAsk } from './use-ask.ts';

/** The shop: settings, people, bays, rates. */
export function useShop() {
  return useAsk('shop.get', {}).data;
}

/** How this shop writes money, figures and times. */
export function useWriting(): Writing {
  const settings = useShop()?.settings;
  return useMemo(() => settings ?? PLAIN_WRITING, [settings]);
}
