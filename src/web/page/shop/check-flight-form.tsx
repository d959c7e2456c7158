import { useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { clockIn, instantIn, now, today } from '../parts/time.js';
import { names } from '../session/session.js';
import type { WorkOrder } from './types.js';

/** The check flight after work, logged by who flew it or by the coordinator. */
export function CheckFlightForm({
  order,
  me,
  log,
}: {
  order: WorkOrder;
  me: Me;
  log: (body: object) => Promise<boolean>;
}) {
  const { zone } = me.club;
  const others = me.roles.includes('maintenance-coordinator') || me.roles.includes('administrator');
  const [pilotId, setPilot] = useState(me.memberId);
  const [on, setOn] = useState(today(zone));
  const [at, setAt] = useState(clockIn(zone, now()));
  const [entry, setEntry] = useState('');
  return (
    <form
      class="in-line"
      aria-label={`Check flight after ${order.title}`}
      onSubmit={(event) => {
        event.preventDefault();
        void log({ flownAt: instantIn(zone, on, at), entry, pilotId });
      }}
    >
      {others && (
        <label>
          Pilot in command
          <select value={pilotId} onChange={(event) => setPilot(event.currentTarget.value)}>
            {names.value.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        Over on
        <input
          type="date"
          required
          value={on}
          max={today(zone)}
          onChange={(event) => setOn(event.currentTarget.value)}
        />
      </label>
      <label>
        at
        <input type="time" required value={at} onChange={(event) => setAt(event.currentTarget.value)} />
      </label>
      <label>
        Entry in the aircraft’s records
        <input
          required
          maxLength={2000}
          value={entry}
          onInput={(event) => setEntry(event.currentTarget.value)}
        />
      </label>
      <button class="main">Log the check flight</button>
    </form>
  );
}
