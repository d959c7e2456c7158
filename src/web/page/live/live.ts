/**
 * Hears from the service what has changed while the page is open, over one stream however many parts listen. What is heard
 * is only what to read again. A stream that ends is opened anew, with what was missed told first.
 */
import { useEffect, useRef } from 'preact/hooks';
import { openStream } from '../api/client.js';

/** What there is to listen for. */
export type Topic = 'flights' | 'notices' | 'bookings' | 'standing' | 'fleet';

/** The service's word for all of them, after a long absence. */
const EVERYTHING = 'everything';
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 30_000;

const listeners = new Set<{ topics: readonly Topic[]; again: () => void }>();

/** Reads again whenever something of these topics has changed. The first reading is the caller's own. */
export function useLive(topics: readonly Topic[], again: () => void): void {
  const latest = useRef(again);
  latest.current = again;
  const named = topics.join(' ');
  useEffect(() => {
    const listener = { topics, again: () => latest.current() };
    listeners.add(listener);
    return () => void listeners.delete(listener);
  }, [named]);
}

function tell(changed: readonly string[]): void {
  const all = changed.includes(EVERYTHING);
  for (const { topics, again } of listeners)
    if (all || topics.some((topic) => changed.includes(topic))) again();
}

/** Listens until it is told to stop. */
export function listen(): () => void {
  const stop = new AbortController();
  void keepListening(stop.signal);
  return () => stop.abort();
}

async function keepListening(signal: AbortSignal): Promise<void> {
  let lastId: string | null = null;
  let wait = FIRST_WAIT_MS;
  while (!signal.aborted) {
    try {
      for await (const { id, data } of eventsOf(await openStream('/live', lastId, signal))) {
        lastId = id ?? lastId;
        wait = FIRST_WAIT_MS;
        tell((JSON.parse(data) as { topics: string[] }).topics);
      }
    } catch {
      // The service is away, or there are too many pages open: again later.
      wait = Math.min(2 * wait, LONGEST_WAIT_MS);
    }
    if (!signal.aborted) await pause(wait, signal);
  }
}

interface Event {
  id: string | null;
  data: string;
}

/** The events of a stream as the service writes them: a line of each field, an empty line behind. */
async function* eventsOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<Event> {
  const reader = stream.pipeThrough(new TextDecoderStream() as never).getReader() as unknown as {
    read(): Promise<{ done: boolean; value?: string }>;
  };
  let rest = '';
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const blocks = (rest + part.value!).split('\n\n');
    rest = blocks.pop()!;
    for (const block of blocks) {
      const field = (name: string) =>
        block
          .split('\n')
          .find((line) => line.startsWith(`${name}: `))
          ?.slice(name.length + 2);
      const data = field('data');
      if (data !== undefined) yield { id: field('id') ?? null, data };
    }
  }
}

const pause = (ms: number, signal: AbortSignal): Promise<void> =>
  new Promise((done) => {
    const timer = setTimeout(done, ms);
    signal.addEventListener('abort', () => {
      clearTimeout(timer);
      done();
    });
  });
