import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Decision } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { clockIn, momentIn, spanIn } from '../parts/time.js';
import './weather-work.css';
import { PHASE, type Field, type PhaseOf, type Weather, type WindOnRunways } from './weather-types.js';

/** The flight's weather, phase by phase and runway by runway, worked out when somebody opens it. */
export function WeatherWork({ decision, zone }: { decision: Decision; zone: string }) {
  const [work, setWork] = useState<Weather | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const open = () =>
    attempt(setProblem, async () => setWork(await call<Weather>('GET', `/decisions/${decision.id}/weather`)));
  return (
    <details class="weather" onToggle={(event) => event.currentTarget.open && work === null && void open()}>
      <summary>Weather for {decision.aircraft.registration}</summary>
      <Refusal problem={problem} />
      {work === null && problem === null && <p class="hint">Working it out…</p>}
      {work && (
        <>
          {work.reports.length > 0 && (
            <ul class="phases">
              {work.phases.map((phase) => (
                <Phase key={`${phase.phase} ${phase.airfield}`} of={phase} zone={zone} />
              ))}
            </ul>
          )}
          {work.fields.map((field) => (
            <Runways key={field.airfield} of={field} caption={reported(field)} where={field.airfield} />
          ))}
          {forecastWinds(work.phases).map(({ where, wind }) => (
            <Runways key={where} of={wind} caption={where} where={where} />
          ))}
          {work.reports.map((report) => (
            <figure key={report.id} class="report">
              <figcaption>
                {report.kind === 'metar' ? 'Report' : 'Forecast'} for {report.airfield} of{' '}
                {momentIn(zone, report.issuedAt)}, {report.source}
                {report.from && report.to && `, holds ${spanIn(zone, report.from, report.to)}`}
              </figcaption>
              <code>{report.text}</code>
            </figure>
          ))}
          {work.unknown.map((because) => (
            <p key={because} class="hint">
              Not known: {because}.
            </p>
          ))}
          <p class="caution">{work.caution}</p>
        </>
      )}
    </details>
  );
}

function Phase({ of, zone }: { of: PhaseOf; zone: string }) {
  const { phase, airfield, prevailing, passing, oldForecast } = of;
  return (
    <li>
      <strong>
        {PHASE[phase]}, {airfield}
      </strong>{' '}
      {prevailing.length === 0 ? (
        <span class="open">nothing at hand speaks of it: check before departure</span>
      ) : (
        prevailing.join(', becoming ')
      )}
      {passing.map((one) => (
        <span key={`${one.from} ${one.says}`} class="passing">
          {one.change === 'probable' ? `${one.probabilityPercent} percent probable` : 'For a time'}{' '}
          {clockIn(zone, one.from)} to {clockIn(zone, one.to)}: {one.says}
        </span>
      ))}
      {oldForecast && <span class="passing">a newer forecast is to come: look before departure</span>}
    </li>
  );
}

/** '67 min', '2 h 5 min' */
const age = (minutes: number): string =>
  minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;

const along = (kt: number): string => `${Math.abs(kt).toFixed(0)} kt ${kt < -0.05 ? 'tail' : 'head'}`;
const across = (kt: number): string =>
  Math.abs(kt) < 0.05 ? '0 kt' : `${Math.abs(kt).toFixed(0)} kt from the ${kt < 0 ? 'left' : 'right'}`;

/** Each wind that is forecast for an end of the flight; one that is the same at both ends is told once. */
function forecastWinds(phases: readonly PhaseOf[]): { where: string; wind: WindOnRunways }[] {
  const told = new Map<string, { airfield: string; when: string[]; wind: WindOnRunways }>();
  for (const { phase, airfield, winds } of phases)
    for (const wind of winds) {
      const key = JSON.stringify([airfield, wind]);
      const known = told.get(key) ?? { airfield, when: [], wind };
      told.set(key, { ...known, when: [...known.when, phase] });
    }
  const names = [...told.values()].map(
    ({ airfield, when }) => `${airfield}, forecast for the ${when.join(' and the ')}`,
  );
  // While one wind becomes another there are two of one name.
  const nth = (at: number): number => names.slice(0, at).filter((name) => name === names[at]).length;
  return [...told.values()].map(({ wind }, at) => ({
    where: `${names[at]}${nth(at) === 0 ? '' : ', becoming'.repeat(nth(at))}`,
    wind,
  }));
}

const reported = ({ airfield, ageMinutes, densityAltitudeFt }: Field): string =>
  `${airfield}, ${age(ageMinutes)} old when asked` +
  (densityAltitudeFt === null ? '' : `; density altitude ${densityAltitudeFt} ft`);

function Runways({ of, caption, where }: { of: WindOnRunways; caption: string; where: string }) {
  const most = Math.max(of.windKt ?? 0, of.gustKt ?? 0);
  const says = (steady: number | null, gust: number | null, words: (kt: number) => string): string => {
    if (of.windKt === null) return 'not told';
    if (steady === null) return `any, up to ${most} kt`;
    return gust === null ? words(steady) : `${words(steady)}, gusts ${Math.abs(gust).toFixed(0)} kt`;
  };
  return (
    <div class="scroll" tabIndex={0} role="group" aria-label={`Wind on the runways of ${where}`}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Runway</th>
            <th scope="col">Along</th>
            <th scope="col">Across</th>
          </tr>
        </thead>
        <tbody>
          {of.runways.map((runway) => (
            <tr key={runway.runway}>
              <th scope="row">{runway.runway}</th>
              <td>{says(runway.headwindKt, runway.gustHeadwindKt, along)}</td>
              <td>{says(runway.crosswindKt, runway.gustCrosswindKt, across)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
