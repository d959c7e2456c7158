/**
 * Returns that were put in and not answered yet. Each is kept in the browser under one key until an answer arrived, and sent
 * again and again with that key, so that nothing is lost and nothing is written twice, whatever happens to the network or page.
 */
import { signal } from '@preact/signals';
import { ApiProblem, call } from '../api/client.js';
import { newKey } from '../parts/key.js';
import type { Flight } from './types.js';

export interface KeptReturn {
  bookingId: string;
  /** Who put it in: it is sent while they are signed in. */
  memberId: string;
  registration: string;
  path: string;
  key: string;
  body: object;
  /** The form as it was filled in, to go on with where the service refuses it. */
  texts: unknown;
  tries: number;
  /** Why it was refused: it is not sent again, and stays to be put right. */
  problem: string | null;
}

const STORE = 'bellcrank.returns';
const FIRST_WAIT_MS = 1500;
const LONGEST_WAIT_MS = 30_000;

export const kept = signal<KeptReturn[]>(stored());
/** Being sent now, by booking. */
export const sending = signal<string | null>(null);
/** Flights as they came back, by booking. */
export const answered = signal<Record<string, Flight>>({});

let timer: ReturnType<typeof setTimeout> | undefined;
let who: string | null = null;

function stored(): KeptReturn[] {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? '[]') as KeptReturn[];
  } catch {
    return [];
  }
}

function write(list: KeptReturn[]): void {
  kept.value = list;
  try {
    localStorage.setItem(STORE, JSON.stringify(list));
  } catch {
    // A browser that keeps nothing: it is held here until the page is closed.
  }
}

/** Keeps a return, and sends it until it is answered. */
export function keepReturn(of: Omit<KeptReturn, 'key' | 'tries' | 'problem'>): void {
  write([
    ...kept.value.filter(({ bookingId }) => bookingId !== of.bookingId),
    { ...of, key: newKey(), tries: 0, problem: null },
  ]);
  sendKept(of.memberId);
}

/** What is still to be answered of this person's. */
const open = (): KeptReturn[] =>
  kept.value.filter(({ memberId, problem }) => memberId === who && problem === null);

/** Sends what this person put in; called whenever somebody is signed in, and by itself from then on. */
export function sendKept(memberId: string): void {
  who = memberId;
  clearTimeout(timer);
  if (sending.value === null) void sendAll();
}

window.addEventListener('online', () => {
  if (who !== null) sendKept(who);
});

async function sendAll(): Promise<void> {
  for (const one of open()) {
    sending.value = one.bookingId;
    await send(one);
    sending.value = null;
  }
  const left = open();
  if (left.length === 0) return;
  const tries = Math.min(...left.map((one) => one.tries));
  timer = setTimeout(() => void sendAll(), Math.min(FIRST_WAIT_MS * 2 ** (tries - 1), LONGEST_WAIT_MS));
}

async function send(one: KeptReturn): Promise<void> {
  const becomes = (change: Partial<KeptReturn>) =>
    write(kept.value.map((each) => (each.key === one.key ? { ...each, ...change } : each)));
  try {
    const flight = await call<Flight | undefined>('POST', one.path, one.body, { 'Idempotency-Key': one.key });
    // A browser takes a head that was cut off for an answer without a body.
    if (!flight?.booking) throw new Error('half an answer');
    write(kept.value.filter(({ key }) => key !== one.key));
    answered.value = { ...answered.value, [one.bookingId]: flight };
  } catch (error) {
    if (error instanceof ApiProblem && refused(error.problem.status)) {
      const { detail, errors } = error.problem;
      const [first] = errors ?? [];
      becomes({ problem: first?.field ? `${first.field}: ${first.message}` : detail });
      return;
    }
    // No answer, or half of one, which is none: nobody knows yet whether it was written.
    becomes({ tries: one.tries + 1 });
  }
}

/** A refusal that sending again would not change. */
const refused = (status: number): boolean =>
  status >= 400 && status < 500 && ![401, 408, 425, 429].includes(status);
