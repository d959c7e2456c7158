import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { go } from '../parts/route.js';
import { looksAfterOthers } from '../session/roles.js';
import { names } from '../session/session.js';
import '../practice/practice.css';
import { LimitsForm } from './limits-form.js';
import { LimitsTable } from './limits-table.js';
import './limits.css';
import { SuggestionList } from './suggestion-list.js';
import type { MemberLimits, Suggestions } from './types.js';
import { newest } from './words.js';

/** Limits for wind, weather, runways and the night: one's own, and those an instructor sets for a student. */
export function LimitsPage({ me, memberId }: { me: Me; memberId: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [limits, setLimits] = useState<MemberLimits | null>(null);
  const [suggestions, setSuggestions] = useState<Suggestions | null>(null);
  const [saved, setSaved] = useState(0);
  const [problem, setProblem] = useState<string | null>(null);
  const whose = memberId ?? me.memberId;
  const own = whose === me.memberId;
  const reads = looksAfterOthers(me.roles);
  const maySet = own || me.roles.includes('instructor');
  const at = `/members/${whose}/limits`;
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () => {
      setLimits(await call<MemberLimits>('GET', at));
      setSuggestions(await call<Suggestions>('GET', `${at}/suggestions`));
    });
  }, []);
  const took = (now: MemberLimits) => {
    setLimits(now);
    setSaved(saved + 1);
  };
  const before = limits && newest(own ? limits.own : limits.instructor);
  return (
    <main class="page practice limits">
      <h2 ref={heading} tabIndex={-1}>
        Limits beyond the law
      </h2>
      <p>
        <Link to="/practice">Back to practice</Link>
      </p>
      {reads && (
        <label class="whose">
          Whose
          <select value={whose} onChange={(event) => go(`/limits#${event.currentTarget.value}`)}>
            {names.value.map(({ id, name }) => (
              <option key={id} value={id}>
                {id === me.memberId ? `${name} (you)` : name}
              </option>
            ))}
          </select>
        </label>
      )}
      <Refusal problem={problem} />
      <p role="status">{saved > 0 && 'Set. What holds, and from when, stands below.'}</p>
      {limits ? (
        <div class="two">
          <div>
            <LimitsTable limits={limits} whose={own ? 'Your own' : 'Own'} />
            {suggestions && (
              <SuggestionList
                {...{ at, suggestions, before, zone: me.club.zone, mayTake: maySet, saved: took }}
              />
            )}
          </div>
          <div>
            {maySet && (
              <LimitsForm
                key={saved}
                {...{ at, before, forStudent: !own, looserFrom: limits.looserFrom, saved: took }}
              />
            )}
            <p class="hint">{limits.caution}</p>
          </div>
        </div>
      ) : (
        problem === null && <p class="hint">Reading…</p>
      )}
    </main>
  );
}
