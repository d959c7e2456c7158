import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { Said } from '../parts/said.js';
import { AircraftLeft } from './aircraft-left.js';
import './maintenance.css';
import { SeasonPlan } from './season.js';
import type { Forecast } from './types.js';
import { Refusal } from '../parts/refusal.js';

const SPANS = [
  { weeks: 6, words: '6 weeks' },
  { weeks: 13, words: '3 months' },
  { weeks: 26, words: '6 months' },
  { weeks: 52, words: '1 year' },
];

const PLANNERS = ['maintenance-coordinator', 'safety-officer', 'administrator'];

/** Hours and days left of everything that falls due, aircraft by aircraft, soonest first. */
export function MaintenancePage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [weeks, setWeeks] = useState(13);
  const [forecast, setForecast] = useState<Forecast | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  useEffect(() => {
    heading.current?.focus();
  }, []);

  useEffect(() => {
    let current = true;
    setProblem(null);
    call<Forecast>('POST', '/maintenance/forecast', { weeks }).then(
      (answer) => current && setForecast(answer),
      (error: unknown) => {
        if (!(error instanceof ApiProblem)) throw error;
        if (current) setProblem(error.problem.detail);
      },
    );
    return () => {
      current = false;
    };
  }, [weeks]);

  return (
    <main class="page due">
      <h2 ref={heading} tabIndex={-1}>
        Hours and days left
      </h2>
      <form class="finder" onSubmit={(event) => event.preventDefault()}>
        <label>
          Look ahead
          <select value={weeks} onChange={(event) => setWeeks(Number(event.currentTarget.value))}>
            {SPANS.map((span) => (
              <option key={span.weeks} value={span.weeks}>
                {span.words}
              </option>
            ))}
          </select>
        </label>
      </form>
      <Refusal problem={problem} />
      {forecast === null && !problem && <p class="hint">Reading…</p>}
      {forecast && (
        <>
          <Legend />
          {forecast.aircraft.map((one) => (
            <AircraftLeft key={one.aircraftId} of={one} today={forecast.today} me={me} />
          ))}
          {forecast.aircraft.length === 0 && <p class="hint">The club has no aircraft on record.</p>}
          <p class="hint">
            <Said text={forecast.tested} zone={me.club.zone} />
          </p>
          <p class="caution">{forecast.caution}</p>
        </>
      )}
      {me.roles.some((role) => PLANNERS.includes(role)) && <SeasonPlan me={me} />}
    </main>
  );
}

function Legend() {
  return (
    <p class="legend">
      <span>
        <i class="key run" aria-hidden="true" /> good until it is likely due
      </span>
      <span>
        <i class="key band" aria-hidden="true" /> may fall due, four times in five
      </span>
      <span>
        <i class="key slot" aria-hidden="true" /> shop visit booked
      </span>
    </p>
  );
}
