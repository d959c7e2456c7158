import { signal } from '@preact/signals';
import {
  call,
  forgetTokens,
  hasSession,
  keepTokens,
  onSignedOut,
  refreshToken,
  renew,
  type Tokens,
} from '../api/client.js';
import type { Airfield, Me, PersonName } from '../api/types.js';

/** Who is signed in; null: nobody; undefined: not known yet. */
export const me = signal<Me | null | undefined>(hasSession() ? undefined : null);
/** The club's airfields and the names of its people, read once after sign-in. */
export const airfields = signal<Airfield[]>([]);
export const names = signal<PersonName[]>([]);

onSignedOut.tell = () => {
  me.value = null;
};

/** Takes up a session left in this tab. */
export async function resume(): Promise<void> {
  if (!hasSession()) return;
  if (await renew()) await load();
  else {
    forgetTokens();
    me.value = null;
  }
}

export async function signIn(club: string, email: string, password: string): Promise<void> {
  keepTokens(await call<Tokens>('POST', '/auth/sign-in', { club, email, password }));
  await load();
}

export async function signOut(): Promise<void> {
  const token = refreshToken();
  await call('POST', '/auth/sign-out', { refreshToken: token }).catch(() => undefined);
  forgetTokens();
  me.value = null;
}

interface PageOf<T> {
  items: T[];
  nextCursor: string | null;
}

/** Reads every page of a list. */
export async function all<T>(path: string): Promise<T[]> {
  const items: T[] = [];
  let cursor: string | null = null;
  do {
    const join = path.includes('?') ? '&' : '?';
    const page: PageOf<T> = await call(
      'GET',
      `${path}${join}limit=200${cursor ? `&cursor=${encodeURIComponent(cursor)}` : ''}`,
    );
    items.push(...page.items);
    cursor = page.nextCursor;
  } while (cursor);
  return items;
}

async function load(): Promise<void> {
  const who = await call<Me>('GET', '/auth/me');
  [airfields.value, names.value] = await Promise.all([
    all<Airfield>('/airfields'),
    all<PersonName>('/members/names'),
  ]);
  me.value = who;
}
