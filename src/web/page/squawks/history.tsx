import { useEffect, useState } from 'preact/hooks';
import { momentIn } from '../parts/time.js';
import { all } from '../session/session.js';
import type { Event, Squawk } from './types.js';
import { EVENT_WORDS } from './words.js';

/** Who did what, read when it is opened. */
export function History({ of, zone }: { of: Squawk; zone: string }) {
  const [open, setOpen] = useState(false);
  const [events, setEvents] = useState<Event[] | null>(null);
  useEffect(() => {
    if (!open) return;
    all<Event>(`/aircraft/${of.aircraftId}/squawks/${of.id}/history`).then(setEvents, () => setEvents([]));
  }, [open, of]);
  return (
    <details class="history" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>History</summary>
      {events === null ? (
        <p class="hint">Reading…</p>
      ) : (
        <ol>
          {events.map((one, index) => (
            <li key={index}>
              {momentIn(zone, one.at)}: {one.byName ?? 'The club’s records'}{' '}
              {EVENT_WORDS[one.what] ?? one.what}
            </li>
          ))}
        </ol>
      )}
    </details>
  );
}
