import { useEffect, useState } from 'preact/hooks';
import { call, fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { today } from '../parts/time.js';
import { save } from '../parts/save.js';
import { Working } from '../parts/working.js';
import type { Refusals, Week } from './types.js';

/** Which rules stood in the way of what people asked, week by week. */
export function RefusalTrend({ me }: { me: Me }) {
  const [found, setFound] = useState<Refusals | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  useEffect(() => {
    void attempt(setProblem, async () => setFound(await call<Refusals>('GET', '/safety/refusals')));
  }, []);

  const top = Math.max(1, ...(found?.rules ?? []).flatMap(({ weeks }) => weeks.map((one) => one.decisions)));
  return (
    <section class="sheet" aria-labelledby="refusals">
      <h3 id="refusals">Refusals by rule</h3>
      <Refusal problem={problem} />
      {found === null && problem === null && <Working what="Counting refusals" />}
      {found && (
        <>
          <p class="hint">
            Answers other than yes since <Day date={found.from} />, of{' '}
            {found.asked.reduce((sum, { decisions }) => sum + decisions, 0)} decisions asked. One question is
            a decision for each aircraft.{' '}
            <button
              type="button"
              class="quiet"
              onClick={() =>
                void attempt(setProblem, async () =>
                  save(await fetchFile('/safety/refusals/csv'), `refusals-${today(me.club.zone)}.csv`),
                )
              }
            >
              CSV
            </button>
          </p>
          {found.rules.length === 0 && <p class="hint">Nothing was refused.</p>}
          {found.rules.length > 0 && (
            <div class="wide" tabIndex={0} role="region" aria-label="By rule and week">
              <table>
                <thead>
                  <tr>
                    <th scope="col">Rule</th>
                    <th scope="col">Decisions</th>
                    <th scope="col">Members</th>
                    <th scope="col">By week</th>
                  </tr>
                </thead>
                <tbody>
                  {found.rules.map((one) => (
                    <tr key={one.rule}>
                      <th scope="row">{one.title}</th>
                      <td>{one.decisions}</td>
                      <td>{one.members}</td>
                      <td>
                        <Bars weeks={one.weeks} top={top} />
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
        </>
      )}
    </section>
  );
}

const WIDE = 12;
const HIGH = 30;

function Bars({ weeks, top }: { weeks: Week[]; top: number }) {
  const words = weeks.map(({ decisions }) => decisions).join(', ');
  return (
    <svg width={weeks.length * WIDE} height={HIGH + 2} role="img" aria-label={`Week by week: ${words}`}>
      {weeks.map(({ week, decisions }, index) => (
        <rect
          key={week}
          class={decisions > 0 ? 'bar' : 'none'}
          x={index * WIDE}
          width={WIDE - 3}
          y={HIGH - Math.max(1, (decisions / top) * HIGH)}
          height={Math.max(1, (decisions / top) * HIGH)}
        >
          <title>{`Week of ${week}: ${decisions}`}</title>
        </rect>
      ))}
    </svg>
  );
}
