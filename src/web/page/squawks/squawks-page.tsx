import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem } from '../api/client.js';
import type { Booking, Me } from '../api/types.js';
import { plusDays, instantIn, today } from '../parts/time.js';
import { all, names } from '../session/session.js';
import { ReportForm } from './report-form.js';
import { SquawkCard } from './squawk-card.js';
import './squawks.css';
import type { Aircraft, Equipment, Squawk } from './types.js';
import { isOpen } from './words.js';
import { Refusal } from '../parts/refusal.js';

/** Days back in which a flight can have shown what is reported now. */
const RECENT_DAYS = 7;

/** Report what is wrong; read what is open; for the coordinator, decide about it. */
export function SquawksPage({ me, open }: { me: Me; open: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [aircraft, setAircraft] = useState<Aircraft[] | null>(null);
  const [chosen, setChosen] = useState('');
  const [equipment, setEquipment] = useState<Equipment[]>([]);
  const [flights, setFlights] = useState<Booking[]>([]);
  const [squawks, setSquawks] = useState<Squawk[] | null>(null);
  const [closedToo, setClosedToo] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const tell = (error: unknown) => {
    if (!(error instanceof ApiProblem)) throw error;
    setProblem(error.problem.detail);
  };

  useEffect(() => {
    heading.current?.focus();
    all<Aircraft>('/aircraft').then((list) => {
      setAircraft(list);
      setChosen(list.find(({ registration }) => registration === open)?.id ?? list[0]?.id ?? '');
    }, tell);
    const zone = me.club.zone;
    const from = instantIn(zone, plusDays(today(zone), -RECENT_DAYS), '12:00');
    const to = instantIn(zone, plusDays(today(zone), 2), '12:00');
    all<Booking>(`/bookings?memberId=${me.memberId}&from=${from}&to=${to}`).then(setFlights, tell);
  }, []);

  const reload = () => {
    if (chosen === '') return;
    setProblem(null);
    all<Squawk>(`/aircraft/${chosen}/squawks`).then(setSquawks, tell);
  };
  useEffect(() => {
    setSquawks(null);
    reload();
    if (chosen !== '')
      all<Equipment>(`/aircraft/${chosen}/equipment`).then(
        (list) => setEquipment(list.filter(({ removedOn }) => removedOn === null)),
        tell,
      );
  }, [chosen]);

  const one = aircraft?.find(({ id }) => id === chosen);
  const mine = flights.filter(
    ({ kind, aircraftId, people }) =>
      kind === 'flight' && aircraftId === chosen && people.some(({ memberId }) => memberId === me.memberId),
  );
  const shown = squawks?.filter(({ state }) => closedToo || isOpen(state)) ?? [];
  return (
    <main class="page squawks">
      <h2 ref={heading} tabIndex={-1}>
        Squawks
      </h2>
      <label class="which">
        Aircraft
        <select value={chosen} onChange={(event) => setChosen(event.currentTarget.value)}>
          {aircraft?.map(({ id, registration, makeModel }) => (
            <option key={id} value={id}>
              {registration}, {makeModel}
            </option>
          ))}
        </select>
      </label>
      <Refusal problem={problem} />
      {aircraft?.length === 0 && <p class="hint">The club has no aircraft on record.</p>}
      {one && (
        <div class="two">
          <ReportForm
            key={one.id}
            me={me}
            aircraft={one}
            equipment={equipment}
            flights={mine}
            reported={reload}
          />
          <section aria-labelledby="open-squawks">
            <h3 id="open-squawks">On record for {one.registration}</h3>
            <label class="tick">
              <input
                type="checkbox"
                checked={closedToo}
                onChange={(event) => setClosedToo(event.currentTarget.checked)}
              />
              Closed ones too
            </label>
            {squawks === null && !problem && <p class="hint">Reading…</p>}
            {squawks !== null && shown.length === 0 && <p class="hint">Nothing is open.</p>}
            {shown.map((squawk) => (
              <SquawkCard
                key={squawk.id}
                squawk={squawk}
                others={(squawks ?? []).filter(({ id }) => id !== squawk.id)}
                equipment={equipment}
                reporter={names.value.find(({ id }) => id === squawk.reportedBy)?.name ?? 'a member'}
                me={me}
                changed={reload}
              />
            ))}
          </section>
        </div>
      )}
    </main>
  );
}
