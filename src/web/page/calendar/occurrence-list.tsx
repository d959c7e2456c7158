import type { Series } from '../api/types.js';
import { Said } from '../parts/said.js';
import { spanIn } from '../parts/time.js';

/** The flights of a series, each with what became of it or what stands in its way. */
export function OccurrenceList({
  of,
  zone,
  done,
}: {
  of: Series['occurrences'];
  zone: string;
  done: string;
}) {
  return (
    <ol class="occurrences">
      {of.map(({ departs, arrives, problem }) => (
        <li key={departs} data-refused={problem !== null}>
          <strong>{spanIn(zone, departs, arrives)}</strong>{' '}
          {problem === null ? (
            <span class="fine">✓ {done}</span>
          ) : (
            <span>
              ✕ {problem.title}. <Said text={problem.detail} zone={zone} />
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}
