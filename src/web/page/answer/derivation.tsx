import type { Derivation } from '../api/why-types.js';
import { Link } from '../parts/link.js';
import { Said } from '../parts/said.js';
import { Branches } from './derivation-branches.js';
import { Facts } from './derivation-facts.js';
import { Numbers, Text } from './derivation-law.js';
import { Step } from './derivation-step.js';

/** Why a finding came out as it did: what was looked at, the numbers, the text, the way it went, what time changes. */
export function DerivationView({ why, zone }: { why: Derivation; zone: string }) {
  const { change } = why;
  return (
    <div class="derivation">
      {why.withheld && (
        <p class="note">
          <Said text={why.withheld} zone={zone} />
        </p>
      )}
      {why.note && <p class="note">{why.note}</p>}
      <Facts facts={why.facts} unread={why.unread} withheld={why.withheld !== null} zone={zone} />
      {why.request.length > 0 && (
        <Step title="From the flight as asked">
          <ul class="chips">
            {why.request.map((said) => (
              <li>
                <Said text={said} zone={zone} />
              </li>
            ))}
          </ul>
        </Step>
      )}
      {why.sun.length > 0 && (
        <Step title="The sun that day">
          {why.sun.map(({ field, says }) => (
            <p key={field}>
              <strong>{field}</strong> {says.join(', ')}
            </p>
          ))}
        </Step>
      )}
      <Numbers numbers={why.numbers} zone={zone} />
      <Branches branches={why.branches} finding={why.finding} zone={zone} />
      {change && (
        <Step title="With time">
          <p>
            <Said text={change.says} zone={zone} />
          </p>
          {change.then && (
            <p>
              Then <strong>{change.then.statusWord}</strong>: <Said text={change.then.says} zone={zone} />{' '}
              {change.then.conditions.map((condition) => (
                <Said text={`${condition} `} zone={zone} />
              ))}
            </p>
          )}
        </Step>
      )}
      <Text why={why} zone={zone} />
      <p class="small">
        Binds {why.bindsWord}. {why.weightSays}{' '}
        <Link to={`/rules#${why.finding.rule}`}>This rule in the rule book</Link>
        <span class="id">
          {why.finding.rule}, version {why.finding.version}
        </span>
      </p>
    </div>
  );
}
