import { randomBytes, timingSafeEqual } from 'node:crypto';

export interface Entered {
  readonly personId: string;
  readonly name: string;
  readonly role: string;
}

/** One window or one run of the command line. `entered` is who is working at it. */
export interface Session {
  readonly device: string;
  entered: Entered | null;
}

/** How long a launch key may wait to be used, in milliseconds. */
const KEY_LIFE = 10 * 60 * 1000;

export const newSecret = (): string => randomBytes(32).toString('base64url');

/** Compares two secrets in a time that does not depend on where they differ. */
export function sameSecret(given: string, kept: string): boolean {
  const a = Buffer.from(given);
  const b = Buffer.from(kept);
  return a.length === b.length && timingSafeEqual(a, b);
}

/** Launch keys, each good once, and the sessions that they were exchanged for. Kept in memory only. */
export class Sessions {
  readonly #keys = new Map<string, { device: string; until: number }>();
  readonly #sessions = new Map<string, Session>();
  readonly #now: () => number;

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** A key that lets one device in, once, within ten minutes. */
  newKey(device: string): string {
    const key = newSecret();
    this.#keys.set(key, { device, until: this.#now() + KEY_LIFE });
    return key;
  }

  /** Exchanges a launch key for a session token, or null where the key is unknown, used or too old. */
  exchange(key: string): string | null {
    const kept = this.#keys.get(key);
    this.#keys.delete(key);
    if (kept === undefined || kept.until < this.#now()) return null;
    const token = newSecret();
    this.#sessions.set(token, { device: kept.device, entered: null });
    return token;
  }

  find(token: string | undefined): Session | undefined {
    return token === undefined ? undefined : this.#sessions.get(token);
  }

  forget(token: string): void {
    this.#sessions.delete(token);
  }
}

/** One cookie's value out of a Cookie header. */
export function cookie(header: string | undefined, name: string): string | undefined {
  for (const part of (header ?? '').split(';')) {
    const [key, value] = part.trim().split('=');
    if (key === name) return value;
  }
  return undefined;
}
