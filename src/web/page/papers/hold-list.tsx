import { Day, Said } from '../parts/said.js';
import type { Hold } from './types.js';

/** What a paper is good for, each with its last day; a day that has passed says so. */
export function HoldList({ of, holds, on, zone }: { of: string; holds: Hold[]; on: string; zone: string }) {
  if (holds.length === 0) return null;
  return (
    <ul class="holds" aria-label={`Until when: ${of}`}>
      {holds.map(({ purpose, through, note }) => (
        <li key={purpose} class={through !== null && through < on ? 'over' : ''}>
          {purpose}
          {through !== null && (
            <>
              {through < on ? ': ended ' : ': through '}
              <strong>
                <Day date={through} />
              </strong>
            </>
          )}
          {note !== null && (
            <>
              {through === null ? ': ' : '. '}
              <Said text={note} zone={zone} />
            </>
          )}
        </li>
      ))}
    </ul>
  );
}
