import type { Decision, Finding } from '../api/types.js';
import { CountedEntries } from '../log/counted-entries.js';
import { Said } from '../parts/said.js';
import { Why } from './why.js';

interface Props {
  decision: Decision;
  finding: Finding;
  zone: string;
}

/** One finding: what was counted, what is missing, what would cure it; and why, for whoever asks. */
export function FindingLine({ decision, finding, zone }: Props) {
  return (
    <li class={`finding ${finding.status}`} data-rule={finding.rule}>
      <p>
        <strong>{finding.title}.</strong> <Said text={finding.says} zone={zone} />
      </p>
      {finding.remedies.length > 0 && (
        <ul class="remedies" aria-label="What would cure it">
          {finding.remedies.map((remedy) => (
            <li>
              <Said text={remedy.title} zone={zone} />
            </li>
          ))}
        </ul>
      )}
      <CountedEntries decision={decision} finding={finding} />
      <Why decisionId={decision.id} finding={finding} zone={zone} />
    </li>
  );
}
