import { useState } from 'preact/hooks';
import { call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { Day, Said } from '../parts/said.js';
import type { LimitsSet, MemberLimits, Suggestions } from './types.js';
import { labelOf, limitsOf, valueSays } from './words.js';

/** What recent flying suggests; each taken with one tap, into the set that holds last. */
export function SuggestionList({
  at,
  suggestions,
  before,
  zone,
  mayTake,
  saved,
}: {
  at: string;
  suggestions: Suggestions;
  before: LimitsSet | null;
  zone: string;
  mayTake: boolean;
  saved: (limits: MemberLimits) => void;
}) {
  const [problem, setProblem] = useState<string | null>(null);
  const take = (limit: string, value: number | boolean) =>
    attempt(setProblem, async () => {
      const { bindsThrough = null, note = '' } = before ?? {};
      const bound = bindsThrough === null ? {} : { bindsThrough };
      const body = { ...limitsOf(before), [limit]: value === true ? null : value, note, ...bound };
      saved(await call<MemberLimits>('POST', at, body));
    });
  const found = suggestions.suggestions.filter(({ value }) => value !== null);
  const none = suggestions.suggestions.filter(({ value }) => value === null);
  return (
    <section aria-labelledby="suggested">
      <h3 id="suggested">From what was flown</h3>
      <p class="hint">
        <Day date={suggestions.from} /> to <Day date={suggestions.to} />, never more than was flown.
      </p>
      <Refusal problem={problem} />
      <ul class="records">
        {found.map(({ limit, value, says }) => {
          const taken = value === true ? before?.night !== false : before?.[limit] === value;
          return (
            <li key={limit} data-limit={limit}>
              <strong>
                {labelOf(limit)}: {valueSays(limit, value)}
              </strong>
              <p>
                <Said text={says} zone={zone} />
              </p>
              {taken ? (
                <span class="hint">As set.</span>
              ) : (
                mayTake && (
                  <button
                    class="quiet"
                    aria-label={`Take it: ${labelOf(limit)}, ${valueSays(limit, value)}`}
                    onClick={() => void take(limit, value!)}
                  >
                    Take it
                  </button>
                )
              )}
            </li>
          );
        })}
      </ul>
      {none.length > 0 && (
        <details>
          <summary>Nothing suggested for {none.length} others</summary>
          <ul>
            {none.map(({ limit, says }) => (
              <li key={limit}>
                {labelOf(limit)}: {says}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
