import type { Finding } from '../api/types.js';
import { momentIn } from '../parts/time.js';
import { WEIGHTS } from './words.js';

/** One finding: what was counted, where it is written, what would cure it, until when it stands. */
export function FindingLine({ finding, zone }: { finding: Finding; zone: string }) {
  return (
    <li class={`finding ${finding.status}`} data-rule={finding.rule}>
      <p>
        <strong>{finding.title}.</strong> {finding.says}
      </p>
      {finding.remedies.length > 0 && (
        <ul class="remedies" aria-label="What would cure it">
          {finding.remedies.map((remedy) => (
            <li>{remedy.title}</li>
          ))}
        </ul>
      )}
      <details class="source">
        <summary>
          {WEIGHTS[finding.weight]}: {finding.citation.text}
        </summary>
        {finding.citation.reading && <p>{finding.citation.reading}</p>}
        {finding.counted.length > 0 && (
          <ul>
            {finding.counted.map((counted) => (
              <li>
                {counted.on ? `${counted.on}: ` : ''}
                {counted.what}
              </li>
            ))}
          </ul>
        )}
        {finding.until && <p>Changes for a departure from {momentIn(zone, finding.until)}.</p>}
        <p class="small">
          {finding.rule}, version {finding.version}; source {finding.citation.status}
        </p>
      </details>
    </li>
  );
}
