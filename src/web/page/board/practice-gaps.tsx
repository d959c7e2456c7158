import { useEffect, useState } from 'preact/hooks';
import { call, fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { save } from '../parts/save.js';
import { today } from '../parts/time.js';
import { Working } from '../parts/working.js';
import type { PracticeGap, PracticeGaps } from './types.js';

/** Which manoeuvres are rusty across the club; in numbers alone, since nobody is named. */
export function PracticeGapsBoard({ me }: { me: Me }) {
  const [found, setFound] = useState<PracticeGaps | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () => setFound(await call<PracticeGaps>('GET', '/safety/practice-gaps')));
  }, []);
  const told = found?.gaps.filter(isTold) ?? [];
  const some = told.filter(({ rusty, fresh }) => rusty + fresh > 0);
  const none = told.filter(({ rusty, fresh }) => rusty + fresh === 0);
  const few = (found?.gaps.length ?? 0) - told.length;
  return (
    <section class="sheet" aria-labelledby="gaps">
      <h3 id="gaps">Practice gaps</h3>
      <Refusal problem={problem} />
      {found === null && !problem && <Working what="Reading who practised what" />}
      {found && (
        <>
          <p class="hint">
            How many of {found.members} pilots have which manoeuvre on record as done to standard, and how
            rusty it is by the club’s model. Nobody is named: who is rusty in what is between the member and
            who teaches them. Of fewer than {found.fewestTold} nothing is told.{' '}
            <button
              type="button"
              class="quiet"
              onClick={() =>
                void attempt(setProblem, async () =>
                  save(
                    await fetchFile('/safety/practice-gaps/csv'),
                    `practice-gaps-${today(me.club.zone)}.csv`,
                  ),
                )
              }
            >
              CSV
            </button>
          </p>
          <ul class="legend" aria-hidden="true">
            {PARTS.map(({ part, words }) => (
              <li key={part}>
                <svg width="18" height="14">
                  <Part part={part} x={0} width={18} />
                </svg>
                {words}
              </li>
            ))}
          </ul>
          {told.length === 0 && <p class="hint">Too few pilots to tell of.</p>}
          {some.length > 0 && (
            <table class="gaps">
              <thead>
                <tr>
                  <th scope="col">Manoeuvre</th>
                  <th scope="col">Not on record</th>
                  <th scope="col">Rusty</th>
                  <th scope="col">Fresh</th>
                  <th scope="col">Last, in the middle</th>
                  <td />
                </tr>
              </thead>
              <tbody>
                {some.map((one) => (
                  <Row key={one.key} one={one} />
                ))}
              </tbody>
            </table>
          )}
          {none.length > 0 && (
            <details open={some.length === 0}>
              <summary>Not on record for anybody: {none.length}</summary>
              <ul>
                {none.map((one) => (
                  <li key={one.key}>
                    {one.title} {one.condition}, of {one.members} pilots
                  </li>
                ))}
              </ul>
            </details>
          )}
          {few > 0 && <p class="hint">Not told, of too few: {few}.</p>}
          <p class="caution">{found.caution}</p>
        </>
      )}
    </section>
  );
}

type ToldGap = PracticeGap & { never: number; rusty: number; fresh: number };
const isTold = (one: PracticeGap): one is ToldGap => one.never !== null;

const PARTS = [
  { part: 'never', words: 'not on record' },
  { part: 'rusty', words: 'rusty' },
  { part: 'fresh', words: 'fresh' },
] as const;
const WIDE = 150;

function Row({ one }: { one: ToldGap }) {
  let x = 0;
  return (
    <tr>
      <th scope="row">
        {one.title} <small>{one.condition}</small>
      </th>
      <td data-heading="Not on record">{one.never}</td>
      <td data-heading="Rusty">{one.rusty}</td>
      <td data-heading="Fresh">{one.fresh}</td>
      <td data-heading="Last, in the middle">
        {one.middleDays === null ? 'not told' : `${one.middleDays} days ago`}
      </td>
      <td>
        <svg width={WIDE} height="14" aria-hidden="true">
          {PARTS.map(({ part }) => {
            const width = (one[part] / one.members) * WIDE;
            x += width;
            return <Part key={part} part={part} x={x - width} width={width} />;
          })}
        </svg>
      </td>
    </tr>
  );
}

/** Never: full; rusty: half as high; fresh: a line; so that they differ without colour. */
function Part({ part, x, width }: { part: string; x: number; width: number }) {
  const height = part === 'never' ? 14 : part === 'rusty' ? 8 : 3;
  return <rect class={`gap-${part}`} x={x} y={14 - height} width={Math.max(0, width)} height={height} />;
}
