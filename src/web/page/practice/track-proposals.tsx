import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { spanIn } from '../parts/time.js';
import { all } from '../session/session.js';
import { EventDetail, eventSays, LogDetail, PracticeDetail } from './track-detail.js';
import { TrackPicture } from './track-picture.js';
import type { TrackReading } from './types.js';

/** What a track shows, and what of it is entered. */
export function TrackProposals({
  at,
  zone,
  reading,
  entered,
}: {
  at: string;
  zone: string;
  reading: TrackReading;
  entered: (words: string) => void;
}) {
  const [aircraft, setAircraft] = useState<{ id: string; registration: string }[]>([]);
  const [aircraftId, setAircraftId] = useState('');
  const [role, setRole] = useState('pilot-in-command');
  const valueOf = (field: string) => reading.log.find((one) => one.field === field)?.value ?? null;
  const whole = ['departedAt', 'arrivedAt', 'fromAirfield', 'toAirfield'].every(
    (one) => valueOf(one) !== null,
  );
  const [logged, setLogged] = useState(whole && reading.loggedAlready === null);
  const [chosen, setChosen] = useState<string[]>(
    reading.practice.filter(({ onRecord }) => !onRecord).map(({ event }) => event),
  );
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  // One key for each reading: sent again after a lost answer, it is not entered twice.
  const [key] = useState(() => crypto.getRandomValues(new Uint32Array(4)).join('-'));
  useEffect(() => {
    void all<{ id: string; registration: string }>('/aircraft').then(setAircraft);
  }, []);

  /** Events are named by their place in the list and on the picture. */
  const numberOf = (id: string): string => `no. ${reading.events.findIndex((event) => event.id === id) + 1}`;

  const confirm = async () => {
    setBusy(true);
    const tenths = (field: string) => Number(valueOf(field) ?? 0) / 10;
    const same = ['departedAt', 'arrivedAt', 'fromAirfield', 'toAirfield', 'takeoffs', 'landings'];
    const counted = [...same, 'fullStopLandings', 'nightTakeoffs', 'nightFullStopLandings'];
    const log = logged
      ? {
          ...Object.fromEntries(counted.map((field) => [field, valueOf(field)])),
          ...{ aircraftId, role, soleManipulator: role !== 'instructor' },
          ...{ totalH: tenths('totalTenths'), nightH: tenths('nightTenths') },
        }
      : null;
    const practice = reading.practice
      .filter(({ event }) => chosen.includes(event))
      .map(({ event, record }) => ({ event, ...record }));
    const body = {
      ...{ trackSha256: reading.trackSha256, log, practice },
      logEntryId: log === null ? reading.loggedAlready : null,
    };
    await attempt(setProblem, async () => {
      await call('POST', `${at}/track/confirm`, body, { 'Idempotency-Key': key });
      entered(`Entered: ${log ? 'the flight and ' : ''}${practice.length} practice records.`);
    });
    setBusy(false);
  };

  return (
    <div class="proposals">
      <TrackPicture reading={reading} />
      <p>{spanIn(zone, reading.from, reading.to)}</p>
      <ol class="events">
        {reading.events.map((event) => (
          <li key={event.id}>
            {eventSays(event, zone)}
            <EventDetail event={event} zone={zone} />
          </li>
        ))}
      </ol>
      {reading.unseen.map((text) => (
        <p key={text} class="hint">
          {text}
        </p>
      ))}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void confirm();
        }}
      >
        <fieldset>
          <legend>The flight, for the log</legend>
          {reading.loggedAlready !== null && <p>A flight of that time is in the log already.</p>}
          {!whole && reading.loggedAlready === null && (
            <p>The track does not show the whole flight, so log it by hand.</p>
          )}
          {whole && reading.loggedAlready === null && (
            <>
              <label class="tick">
                <input
                  type="checkbox"
                  checked={logged}
                  onChange={(event) => setLogged(event.currentTarget.checked)}
                />
                Log it: {String(valueOf('fromAirfield'))} to {String(valueOf('toAirfield'))},{' '}
                {Number(valueOf('totalTenths')) / 10} h ({Number(valueOf('nightTenths')) / 10} h at night),{' '}
                {String(valueOf('landings'))} landings, {String(valueOf('fullStopLandings'))} to a full stop
              </label>
              {logged && (
                <div class="row">
                  <label>
                    Aircraft
                    <select
                      required
                      value={aircraftId}
                      onChange={(event) => setAircraftId(event.currentTarget.value)}
                    >
                      <option value="">Choose the aircraft</option>
                      {aircraft.map(({ id, registration }) => (
                        <option key={id} value={id}>
                          {registration}
                        </option>
                      ))}
                    </select>
                  </label>
                  <label>
                    You were
                    <select value={role} onChange={(event) => setRole(event.currentTarget.value)}>
                      <option value="pilot-in-command">pilot in command</option>
                      <option value="dual-received">taught</option>
                      <option value="solo">a student alone</option>
                    </select>
                  </label>
                </div>
              )}
            </>
          )}
        </fieldset>
        <LogDetail log={reading.log} numberOf={numberOf} />
        <fieldset>
          <legend>Practice</legend>
          {reading.practice.length === 0 && <p class="hint">The track shows no manoeuvre to record.</p>}
          {reading.practice.map(({ event, title, record, caveats, onRecord, confidence }) => (
            <div key={event}>
              <label class="tick">
                <input
                  type="checkbox"
                  disabled={onRecord}
                  checked={chosen.includes(event)}
                  onChange={({ currentTarget: { checked } }) =>
                    setChosen(checked ? [...chosen, event] : chosen.filter((one) => one !== event))
                  }
                />
                {title}, {numberOf(event)} above{onRecord && ', on record already'}
              </label>
              <PracticeDetail {...{ record, confidence, caveats }} />
            </div>
          ))}
        </fieldset>
        <Refusal problem={problem} />
        <button class="main" disabled={busy || (!logged && chosen.length === 0)}>
          Enter what is chosen
        </button>
        <p class="caution">{reading.caution}</p>
      </form>
    </div>
  );
}
