import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { isOfficer, looksAfterOthers } from '../session/roles.js';
import { all, names } from '../session/session.js';
import { PlanForm } from './plan-form.js';
import './practice.css';
import { RecordForm } from './record-form.js';
import { RecordList } from './record-list.js';
import { RustListing } from './rust-list.js';
import { TrackForm } from './track-form.js';
import type { PracticeRecord, RustList } from './types.js';

/** What was practised, what is rusty, what to fly next. */
export function PracticePage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [whose, setWhose] = useState(me.memberId);
  const [rust, setRust] = useState<RustList | null>(null);
  const [records, setRecords] = useState<PracticeRecord[] | null>(null);
  const [gone, setGone] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const tell = (error: unknown) => {
    if (!(error instanceof ApiProblem)) throw error;
    setProblem(error.problem.detail);
  };
  const at = `/members/${whose}/practice`;
  const own = whose === me.memberId;
  const reads = looksAfterOthers(me.roles);
  const teaches = me.roles.includes('instructor');
  const reload = () => {
    setProblem(null);
    if (own || teaches) call<RustList>('GET', `${at}/rust`).then(setRust, tell);
    all<PracticeRecord>(gone ? `${at}?corrected=true` : at).then(setRecords, tell);
  };
  useEffect(() => heading.current?.focus(), []);
  useEffect(reload, [whose, gone]);
  const zone = me.club.zone;
  const officer = isOfficer(me.roles);
  const may = ({ seenBy, instructor }: PracticeRecord) => ({
    correct: seenBy === 'self' ? own : !own && teaches,
    withdraw: seenBy === 'self' ? own : !own && (officer || instructor?.id === me.memberId),
  });
  return (
    <main class="page practice">
      <h2 ref={heading} tabIndex={-1}>
        Practice
      </h2>
      {reads && (
        <label class="whose">
          Whose
          <select
            value={whose}
            onChange={(event) => {
              setRust(null);
              setRecords(null);
              setWhose(event.currentTarget.value);
            }}
          >
            {names.value.map(({ id, name }) => (
              <option key={id} value={id}>
                {id === me.memberId ? `${name} (you)` : name}
              </option>
            ))}
          </select>
        </label>
      )}
      <p>
        <Link to={own ? '/limits' : `/limits#${whose}`}>Limits for wind, weather, runways and the night</Link>
      </p>
      <Refusal problem={problem} />
      <div class="two" key={whose}>
        <div>
          {own || teaches ? (
            <>
              {rust ? (
                <RustListing list={rust} zone={zone} />
              ) : (
                problem === null && <p class="hint">Reading…</p>
              )}
              <PlanForm at={at} zone={zone} />
            </>
          ) : (
            <p class="hint">
              What a member is rusty in is between them and who teaches them. Officers see here what an
              instructor signed, and the club’s numbers on the board.
            </p>
          )}
        </div>
        <div>
          {own && <TrackForm at={at} zone={zone} entered={reload} />}
          {(own || teaches) && <RecordForm at={at} zone={zone} signs={!own} recorded={reload} />}
          {records && (
            <RecordList {...{ records, at, zone, may, all: gone, setAll: setGone }} changed={reload} />
          )}
        </div>
      </div>
    </main>
  );
}
