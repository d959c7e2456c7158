import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';

type State = Record<string, string | number | null>;

interface Changes {
  items: {
    id: string;
    act: string;
    at: string;
    byName: string | null;
    before: State;
    after: State;
    also: string[];
  }[];
  names: { id: string; name: string }[];
}

const ACTS: Record<string, string> = {
  edited: 'changed',
  'handed-over': 'handed over',
  cancelled: 'given back',
  displaced: 'made room',
  confirmed: 'confirmed',
  lapsed: 'not confirmed in time',
};
const FIELDS: Record<string, string> = {
  aircraftId: 'aircraft',
  memberId: 'flown by',
  instructorId: 'instructor',
  secondPilotId: 'second pilot',
  departs: 'leaving',
  arrives: 'back',
  dueBackAt: 'due back',
  purpose: 'kind of flight',
  personsOnBoard: 'aboard',
  plannedHours: 'planned hours',
};
const UNSAID = new Set(['status', 'kind']);

/** What was done to a booking, the first change first. */
export function History({ booking, zone }: { booking: Booking; zone: string }) {
  const [changes, setChanges] = useState<Changes | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () =>
      setChanges(await call<Changes>('GET', `/bookings/${booking.id}/changes`)),
    );
  }, [booking.id, booking.rowVersion]);
  if (changes === null) return <Refusal problem={problem} />;
  const said = (field: string, value: string | number | null): string => {
    if (value === null) return 'none';
    if (['departs', 'arrives', 'dueBackAt'].includes(field)) return momentIn(zone, String(value));
    return changes.names.find(({ id }) => id === value)?.name ?? String(value);
  };
  if (changes.items.length === 0) return <p class="hint">Nothing was changed since it was booked.</p>;
  return (
    <ol class="history">
      {changes.items.map(({ id, act, at, byName, before, after, also }) => (
        <li key={id}>
          {momentIn(zone, at)}: {ACTS[act] ?? act}
          {byName !== null && ` by ${byName}`}
          {Object.keys(after)
            .filter((field) => !UNSAID.has(field))
            .map((field) => (
              <span key={field} class="from-to">
                {FIELDS[field] ?? field}: {said(field, before[field] ?? null)} →{' '}
                {said(field, after[field] ?? null)}
              </span>
            ))}
          {also.length > 0 && (
            <span class="from-to">also: {also.map((one) => FIELDS[one] ?? one).join(', ')}</span>
          )}
        </li>
      ))}
    </ol>
  );
}
