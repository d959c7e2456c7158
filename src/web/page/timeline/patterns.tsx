import type { Answer } from '../api/types.js';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { LOOKS } from '../answer/words.js';

const ORDER = Object.keys(LOOKS) as Answer[];

/** Fill of an answer: a pattern of its own each, so that none rests on colour. */
export const fillOf = (answer: Answer): string => `url(#when-${LOOKS[answer].tone})`;

/** The patterns, once for all drawings of the page. */
export function Patterns() {
  return (
    <svg class="when-patterns" width="0" height="0" aria-hidden="true">
      <defs>
        <pattern id="when-yes" width="8" height="8" patternUnits="userSpaceOnUse">
          <rect width="8" height="8" class="yes ink" />
        </pattern>
        <pattern id="when-if" width="7" height="7" patternUnits="userSpaceOnUse">
          <rect width="7" height="7" class="if ink" />
          <circle cx="3.5" cy="3.5" r="1.3" class="gap" />
        </pattern>
        <pattern
          id="when-dual"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="7" height="7" class="dual wash" />
          <rect width="2.4" height="7" class="dual ink" />
        </pattern>
        <pattern id="when-officer" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" class="officer wash" />
          <path d="M0 3h6M3 0v6" class="officer line" />
        </pattern>
        <pattern id="when-no" width="9" height="9" patternUnits="userSpaceOnUse">
          <rect width="9" height="9" class="no wash" />
          <circle cx="4.5" cy="4.5" r="0.8" class="no ink" />
        </pattern>
      </defs>
    </svg>
  );
}

/** What the patterns of the answers that occur mean. */
export function Legend({ answers }: { answers: ReadonlySet<Answer> }) {
  return (
    <ul class="legend" aria-label="Patterns">
      {ORDER.filter((answer) => answers.has(answer)).map((answer) => (
        <li key={answer}>
          <svg width="26" height="18" aria-hidden="true">
            <rect x="0.5" y="0.5" width="25" height="17" fill={fillOf(answer)} class="frame" />
          </svg>
          <span class={`shape ${LOOKS[answer].tone}`} aria-hidden="true">
            {LOOKS[answer].shape}
          </span>
          {ANSWER_WORD[answer]}
        </li>
      ))}
    </ul>
  );
}
