import type { Body, Rule, RuleParameter } from '../api/why-types.js';
import { InForce } from '../answer/derivation-law.js';
import { Step } from '../answer/derivation-step.js';
import { Day, Said } from '../parts/said.js';
import { NO_VALUE } from '../../../rules/explain/words.js';

/** A whole rule: its text with dates and reading, the ways it comes out, its numbers, what it looks at, what cures it. */
export function RuleView({ rule, zone }: { rule: Rule; zone: string }) {
  // The day's own text first, then the others as they followed one another.
  const texts = [...rule.bodies].sort((a, b) => Number(b.inForce) - Number(a.inForce));
  return (
    <div class="derivation">
      <Step title="Where it is written">
        {texts.map((body, index) => (
          <BodyLine
            key={body.version}
            body={body}
            reading={body.citation.reading !== texts[index - 1]?.citation.reading}
            zone={zone}
          />
        ))}
      </Step>
      <Step title="How it can come out">
        <ul class="ways">
          {rule.branches.map((branch) => (
            <li key={branch.name}>
              <strong>{branch.statusWord}</strong> {branch.says}
            </li>
          ))}
          {rule.whenUnknown && (
            <li>
              <strong>not known yet</strong> Before departure: {rule.whenUnknown}
            </li>
          )}
        </ul>
      </Step>
      {rule.parameters.length > 0 && (
        <Step title="The numbers">
          <dl class="numbers">
            {rule.parameters.map((parameter) => (
              <Parameter key={parameter.id} parameter={parameter} zone={zone} />
            ))}
          </dl>
        </Step>
      )}
      {rule.cures.length > 0 && (
        <Step title="What can cure it, for example">
          <ul class="remedies">
            {rule.cures.map((cure) => (
              <li key={cure.act}>
                <Said text={cure.example} zone={zone} />
              </li>
            ))}
          </ul>
        </Step>
      )}
      {rule.reads.length > 0 && (
        <Step title="What it looks at">
          <p>{rule.reads.map(({ words }) => words).join(', ')}; and the flight as asked.</p>
        </Step>
      )}
      <p class="small">
        Binds {rule.bindsWord}. {rule.weightSays}
        <span class="id">{rule.id}</span>
      </p>
    </div>
  );
}

function BodyLine({ body, reading, zone }: { body: Body; reading: boolean; zone: string }) {
  return (
    <div class={body.inForce ? 'text now' : 'text'}>
      <p>
        <strong>{body.citation.text}</strong>{' '}
        <span class="small">
          <InForce body={body} />; {body.sourceWord}
        </span>
      </p>
      {reading && body.citation.reading && (
        <p class="reading">
          <Said text={body.citation.reading} zone={zone} />
        </p>
      )}
    </div>
  );
}

function Parameter({ parameter, zone }: { parameter: RuleParameter; zone: string }) {
  const { inForce, history } = parameter;
  return (
    <div>
      <dt>
        <Said text={inForce?.says ?? NO_VALUE} zone={zone} />
      </dt>
      <dd>
        {parameter.title} <span class="small">{inForce?.reference}</span>
        {parameter.checkedOn && (
          <span class="small">
            ; checked <Day date={parameter.checkedOn} />
          </span>
        )}
        {history.length > 1 && (
          <ul class="small history">
            {history.map((value) => (
              <li>
                {value.from ? (
                  <>
                    from <Day date={value.from} />
                  </>
                ) : (
                  'before'
                )}
                : <Said text={value.says} zone={zone} /> ({value.reference})
              </li>
            ))}
          </ul>
        )}
      </dd>
    </div>
  );
}
