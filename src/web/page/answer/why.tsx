import { useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Finding } from '../api/types.js';
import type { Derivation } from '../api/why-types.js';
import { WEIGHT_WORD } from '../../../rules/explain/words.js';
import { DerivationView } from './derivation.js';

interface Props {
  decisionId: string;
  finding: Finding;
  zone: string;
}

/** Opens to the derivation of one finding; read from the service the first time it is opened. */
export function Why({ decisionId, finding, zone }: Props) {
  const [why, setWhy] = useState<Derivation | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const load = async () => {
    setProblem(null);
    try {
      const answer = await call<{ why: Derivation }>('GET', `/decisions/${decisionId}/why/${finding.rule}`);
      setWhy(answer.why);
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
  };

  return (
    <details
      class="why"
      onToggle={(event) => {
        if (event.currentTarget.open && why === null) void load();
      }}
    >
      <summary>
        <span class="ask-why">Why</span>{' '}
        <span class="source">
          {WEIGHT_WORD[finding.weight]}: {finding.citation.text}
        </span>
      </summary>
      {why ? (
        <DerivationView why={why} zone={zone} />
      ) : problem ? (
        <p class="problem" role="alert">
          {problem}{' '}
          <button class="quiet" onClick={() => void load()}>
            Try again
          </button>
        </p>
      ) : (
        <p class="hint" role="status">
          Looking it up…
        </p>
      )}
    </details>
  );
}
