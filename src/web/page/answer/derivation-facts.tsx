import type { Derivation, WhyFact, WhyRecord } from '../api/why-types.js';
import { Said } from '../parts/said.js';
import { ONLY_THE_FLIGHT } from '../../../rules/explain/sentences.js';
import { capital } from '../../../rules/explain/words.js';
import { Step } from './derivation-step.js';

interface Props extends Pick<Derivation, 'facts' | 'unread'> {
  withheld: boolean;
  zone: string;
}

/** What was looked at, record by record; what was counted is marked by word and sign. */
export function Facts({ facts, unread, withheld, zone }: Props) {
  const others = unread.map(({ words }) => words).join(', ');
  return (
    <Step title="What was looked at">
      {facts.map((fact) => (
        <Fact key={fact.key} fact={fact} zone={zone} />
      ))}
      {others && (
        <p class="small">
          {withheld ? 'The rule looks at' : 'Not needed'}: {others}.
        </p>
      )}
      {facts.length === 0 && !others && <p class="small">{ONLY_THE_FLIGHT}</p>}
    </Step>
  );
}

function Fact({ fact, zone }: { fact: WhyFact; zone: string }) {
  return (
    <div class="fact" data-fact={fact.key}>
      <p>
        <strong>{capital(fact.words)}</strong>
        {fact.whose && ` (${fact.whose})`}
        {fact.known && (
          <span class="small">
            {' '}
            {fact.firmnessWord}
            {fact.lastKnownAt && (
              <>
                , last entry <Said text={fact.lastKnownAt} zone={zone} />
              </>
            )}
          </span>
        )}
      </p>
      {!fact.known && (
        <p class="missing">
          <span aria-hidden="true">? </span>Missing: <Said text={fact.because ?? ''} zone={zone} />.
        </p>
      )}
      {fact.nothing && <p class="small">{fact.nothing}</p>}
      {fact.records.length > 0 && (
        <ul class="records">
          {fact.records.map((record) => (
            <Line record={record} zone={zone} />
          ))}
          {fact.more > 0 && <li class="small">and {fact.more} more that did not count</li>}
        </ul>
      )}
    </div>
  );
}

function Line({ record, zone }: { record: WhyRecord; zone: string }) {
  if (record.counted === null) {
    return (
      <li class="looked">
        <Said text={record.says} zone={zone} />
      </li>
    );
  }
  return (
    <li class="counted">
      <Said text={record.says} zone={zone} />
      <span class="gave">
        {' '}
        counted: <Said text={record.counted} zone={zone} />
      </span>
    </li>
  );
}
