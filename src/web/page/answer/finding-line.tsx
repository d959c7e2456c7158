import type { Finding } from '../api/types.js';
import { Said } from '../parts/said.js';
import { Why } from './why.js';

interface Props {
  decisionId: string;
  finding: Finding;
  zone: string;
}

/** One finding: what was counted, what is missing, what would cure it; and why, for whoever asks. */
export function FindingLine({ decisionId, finding, zone }: Props) {
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
      <Why decisionId={decisionId} finding={finding} zone={zone} />
    </li>
  );
}
