import type { Finding } from '../api/types.js';
import type { Derivation } from '../api/why-types.js';
import { Said } from '../parts/said.js';
import { Step } from './derivation-step.js';

interface Props extends Pick<Derivation, 'branches'> {
  finding: Finding;
  zone: string;
}

/** The ways the rule can come out: the one it took with this flight's own sentence, the others as they would read. */
export function Branches({ branches, finding, zone }: Props) {
  const taken = branches.find((branch) => branch.taken);
  const others = branches.filter((branch) => !branch.taken);
  return (
    <Step title="Which way it went">
      {taken && (
        <p class="taken" data-status={finding.status}>
          <strong>{taken.statusWord}</strong> <Said text={finding.says} zone={zone} />
        </p>
      )}
      {others.length > 0 && (
        <details class="others">
          <summary>{taken ? 'The other ways it could have gone' : 'The ways it can go'}</summary>
          <ul>
            {others.map((branch) => (
              <li key={branch.name}>
                <strong>{branch.statusWord}</strong> {branch.says}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Step>
  );
}
