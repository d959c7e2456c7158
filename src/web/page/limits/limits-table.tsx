import { Day } from '../parts/said.js';
import type { Limits, LimitsSet, MemberLimits } from './types.js';
import { FIGURES, labelOf, valueSays } from './words.js';

const NAMES: readonly (keyof Limits)[] = [...FIGURES.map(({ name }) => name), 'night'];

/** What holds, and what holds later; a column each. */
export function LimitsTable({ limits, whose }: { limits: MemberLimits; whose: string }) {
  const { own, instructor } = limits;
  const columns: { set: LimitsSet; by: string; later: boolean }[] = [
    ...(own.inForce ? [{ set: own.inForce, by: whose, later: false }] : []),
    ...own.toCome.map((set) => ({ set, by: whose, later: true })),
    ...(instructor.inForce ? [{ set: instructor.inForce, by: 'Instructor’s', later: false }] : []),
    ...instructor.toCome.map((set) => ({ set, by: 'Instructor’s', later: true })),
  ];
  const shown = NAMES.filter((name) => columns.some(({ set }) => set[name] !== null));
  // A set that gets stricter now and looser later is two of one note.
  const notes = [
    ...new Set(
      columns.filter(({ set }) => set.note !== '').map(({ set }) => `${set.setBy.name}: ${set.note}`),
    ),
  ];
  return (
    <section aria-labelledby="in-force">
      <h3 id="in-force">What holds</h3>
      {columns.length === 0 ? (
        <p class="hint">No limits are set. The law and the club’s rules hold all the same.</p>
      ) : (
        <div class="across">
          <table>
            <thead>
              <tr>
                <th scope="col">Limit</th>
                {columns.map(({ set, by, later }) => (
                  <th scope="col" key={set.id}>
                    {by}, {later ? 'from' : 'since'} <Day date={set.validFrom} />
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map((name) => (
                <tr key={name}>
                  <th scope="row">{labelOf(name)}</th>
                  {columns.map(({ set }) => (
                    <td key={set.id}>
                      {valueSays(name, set[name]) || <span class="hint">not limited</span>}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {notes.map((note) => (
        <p class="note" key={note}>
          {note}
        </p>
      ))}
      {instructor.inForce && <Binding set={instructor.inForce} />}
    </section>
  );
}

/** Whom an instructor's limits bind. */
function Binding({ set }: { set: LimitsSet }) {
  return (
    <p class="hint">
      Set by {set.setBy.name}. They bind whoever flies on a student certificate, without an instructor aboard
      {set.bindsThrough !== null && (
        <>
          ; after that through <Day date={set.bindsThrough} />
        </>
      )}
      . Beyond them an officer is asked.
    </p>
  );
}
