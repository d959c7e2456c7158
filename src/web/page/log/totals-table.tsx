import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { DayInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import type { Sums, Totals } from './types.js';
import { kindSays, roleSays } from './words.js';

const COLUMNS: readonly (readonly [keyof Sums, string])[] = [
  ['flights', 'Flights'],
  ['totalH', 'Total, h'],
  ['nightH', 'Night, h'],
  ['crossCountryH', 'Cross-country, h'],
  ['actualInstrumentH', 'Instruments actual, h'],
  ['simulatedInstrumentH', 'Instruments simulated, h'],
  ['commandH', 'In command, h'],
  ['soloH', 'Solo, h'],
  ['dualReceivedH', 'Being taught, h'],
  ['dualGivenH', 'Teaching, h'],
  ['landings', 'Landings'],
  ['nightFullStopLandings', 'Full stops by night'],
  ['approaches', 'Approaches'],
];

/** Sums up to any day: all, by kind of aircraft, model and role, each by condition. */
export function TotalsTable({ at, zone, changes }: { at: string; zone: string; changes: number }) {
  const [on, setOn] = useState(today(zone));
  const [totals, setTotals] = useState<Totals | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (on === '') return;
    void attempt(setProblem, async () => setTotals(await call<Totals>('GET', `${at}/totals?on=${on}`)));
  }, [on, changes]);
  return (
    <section aria-labelledby="totals">
      <h3 id="totals">Totals</h3>
      <DayInput label="Up to and with" value={on} set={setOn} />
      <Refusal problem={problem} />
      {totals && (
        <>
          <div class="wide" tabIndex={0} role="region" aria-label="Totals by aircraft, role and condition">
            <table>
              <thead>
                <tr>
                  <td />
                  {COLUMNS.map(([field, words]) => (
                    <th key={field} scope="col">
                      {words}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                <Row name="All in aircraft" sums={totals} />
                <Row name="Last 90 days and the day" sums={totals.last90Days} />
                {totals.byCategory.length > 1 &&
                  totals.byCategory.map((one) => (
                    <Row key={one.category} name={`All of ${one.category}`} sums={one} />
                  ))}
                {totals.byClass.map((one) => (
                  <Row key={one.category + one.class} name={kindSays(one.category, one.class)} sums={one} />
                ))}
                {totals.byModel.map((one) => (
                  <Row key={one.model} name={one.model} sums={one} />
                ))}
                {totals.byRole.map((one) => (
                  <Row key={one.role} name={roleSays(one.role)} sums={one} />
                ))}
              </tbody>
            </table>
          </div>
          <p class="small">
            Up to <Day date={totals.on} />. In training devices besides: {hours(totals.deviceH)} h, of which{' '}
            {hours(totals.deviceInstrumentH)} h by instruments.
          </p>
        </>
      )}
    </section>
  );
}

function Row({ name, sums }: { name: string; sums: Sums }) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {COLUMNS.map(([field]) => (
        <td key={field}>{field.endsWith('H') ? hours(sums[field]) : sums[field]}</td>
      ))}
    </tr>
  );
}

const hours = (value: number): string => value.toFixed(1);
