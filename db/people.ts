import type { Context, Settings, Who } from './context.ts';
import { notAllowed, Refusal } from './refusal.ts';

/** The person who asks. Throws not-allowed when nobody is signed in. */
export function signedIn(context: Context): Who {
  if (!context.who) throw notAllowed('sign-in');
  return context.who;
}

/** The shop's settings. Throws not-set-up before the shop has said who it is. */
export function settingsOf(context: Context): Settings {
  if (!context.settings) throw new Refusal({ code: 'not-set-up' });
  return context.settings;
}
