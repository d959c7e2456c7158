import { useEffect, useState } from 'preact/hooks';
import { call, fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput, Tick } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { plusDays, today } from '../parts/time.js';
import { save } from '../parts/save.js';
import { Working } from '../parts/working.js';
import { LapsePicture } from './lapse-picture.js';
import { LapseTable } from './lapse-table.js';
import type { Lapses, Paged } from './types.js';

const FLIGHTS = [
  ['day-passengers', 'by day with passengers'],
  ['day-solo', 'by day alone'],
  ['night-passengers', 'at night with passengers'],
  ['ifr', 'under IFR'],
] as const;
const DAYS = [30, 60, 90];

/** Who lapses next: the question, the picture, and the same as a table. */
export function LapseBoard({ me }: { me: Me }) {
  const start = today(me.club.zone);
  const [flight, setFlight] = useState<string>('day-passengers');
  const [through, setThrough] = useState(plusDays(start, 90));
  const [aircraftId, setAircraft] = useState('');
  const [rule, setRule] = useState('');
  const [name, setName] = useState('');
  const [costly, setCostly] = useState(false);
  const [fleet, setFleet] = useState<{ id: string; registration: string }[]>([]);
  const [found, setFound] = useState<Lapses | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const query = `?flight=${flight}&through=${through}${aircraftId && `&aircraftId=${aircraftId}`}`;

  useEffect(() => {
    void attempt(setProblem, async () => {
      setFleet((await call<Paged<{ id: string; registration: string }>>('GET', '/aircraft?limit=200')).items);
    });
  }, []);

  useEffect(() => {
    if (through === '') return undefined;
    let current = true;
    // Another question's answer must not stand under this one.
    setFound(null);
    void attempt(
      (text) => current && setProblem(text),
      async () => {
        const answer = await call<Lapses>('GET', `/safety/lapses${query}`);
        if (current) setFound(answer);
      },
    );
    return () => {
      current = false;
    };
  }, [query]);

  const rules = [...new Map((found?.lapses ?? []).map((one) => [one.rule, one.title]))].sort((a, b) =>
    a[1].localeCompare(b[1]),
  );
  // A rule that no longer occurs would leave an empty picture without a reason to be seen.
  const wanted = rules.some(([id]) => id === rule) ? rule : '';
  const shown = (found?.lapses ?? []).filter(
    (one) =>
      (wanted === '' || one.rule === wanted) &&
      (!costly || one.costs.length > 0) &&
      one.memberName.toLowerCase().includes(name.trim().toLowerCase()),
  );

  return (
    <section class="sheet" aria-labelledby="lapses">
      <h3 id="lapses">Who lapses next</h3>
      <form class="finder" onSubmit={(event) => event.preventDefault()}>
        <fieldset>
          <legend>Look ahead</legend>
          {DAYS.map((days) => (
            <button
              key={days}
              type="button"
              class="quiet"
              aria-pressed={through === plusDays(start, days)}
              onClick={() => setThrough(plusDays(start, days))}
            >
              {days} days
            </button>
          ))}
        </fieldset>
        <DayInput
          label="Through"
          value={through}
          set={setThrough}
          min={plusDays(start, 1)}
          max={plusDays(start, 366)}
          required
        />
        <Choice label="Flying" value={flight} set={setFlight} of={FLIGHTS} />
        <Choice
          label="Aircraft"
          value={aircraftId}
          set={setAircraft}
          of={[['', 'all'], ...fleet.map(({ id, registration }) => [id, registration] as const)]}
        />
        <Choice label="Requirement" value={wanted} set={setRule} of={[['', 'all'], ...rules]} />
        <TextInput label="Name, or a part of it" value={name} set={setName} max={80} />
        <Tick value={costly} set={setCostly}>
          only where booked flights are lost
        </Tick>
        <button
          type="button"
          class="quiet"
          disabled={found === null}
          onClick={() =>
            void attempt(setProblem, async () =>
              save(await fetchFile(`/safety/lapses/csv${query}`), `lapses-${start}.csv`),
            )
          }
        >
          CSV
        </button>
      </form>
      <Refusal problem={problem} />
      {found === null && !problem && (
        <Working key={query} what={`Judging everybody at every departure until ${through}`} />
      )}
      {found && (
        <>
          <p aria-live="polite">
            {new Set(shown.map(({ memberId }) => memberId)).size} of {found.members} members, {shown.length}{' '}
            lapses, {new Set(shown.flatMap(({ costs }) => costs.map((one) => one.bookingId))).size} booked
            flights lost.
          </p>
          {shown.length > 0 && (
            <>
              <LapsePicture key={query} found={found} lapses={shown} />
              <LapseTable key={`${query}${wanted}${costly}${name}`} lapses={shown} zone={me.club.zone} />
            </>
          )}
          {found.lacking.length > 0 && (
            <details>
              <summary>Not met today already, by requirement</summary>
              <ul class="lacking">
                {found.lacking.map((one) => (
                  <li key={one.rule}>
                    <b>{one.members}</b> {one.title}
                  </li>
                ))}
              </ul>
            </details>
          )}
          <p class="caution">{found.caution}</p>
        </>
      )}
    </section>
  );
}
