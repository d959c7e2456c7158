import { useEffect, useRef, useState } from 'preact/hooks';
import { call, fetchFile } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { DayInput } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { go } from '../parts/route.js';
import { Said } from '../parts/said.js';
import { save } from '../parts/save.js';
import { plusDays, today } from '../parts/time.js';
import { names } from '../session/session.js';
import './account.css';
import { EnterForm } from './enter-form.js';
import { moneySays } from './money.js';
import { StatementTable } from './statement-table.js';
import type { Statement } from './types.js';
import { standsAt } from './words.js';

/** A member's account: how it stands and how it came to that. Administrators read everybody's and enter what was received. */
export function AccountPage({ me, memberId }: { me: Me; memberId: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { zone } = me.club;
  const [from, setFrom] = useState(plusDays(today(zone), -90));
  const [to, setTo] = useState(today(zone));
  const [statement, setStatement] = useState<Statement | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [told, setTold] = useState('');
  const whose = memberId ?? me.memberId;
  const own = whose === me.memberId;
  const treasurer = me.roles.includes('administrator');
  const query = `?from=${from}&to=${to}`;
  const read = () =>
    void attempt(setProblem, async () =>
      setStatement(await call<Statement>('GET', `/members/${whose}/statement${query}`)),
    );
  useEffect(() => {
    heading.current?.focus();
    read();
  }, []);
  const entered = (what: string) => {
    setTold(what);
    read();
  };
  const asTable = () =>
    void attempt(setProblem, async () =>
      save(await fetchFile(`/members/${whose}/statement.csv${query}`), `statement-${from}-${to}.csv`),
    );
  return (
    <main class="page account">
      <h2 ref={heading} tabIndex={-1}>
        Account{!own && statement && ` of ${statement.memberName}`}
      </h2>
      {treasurer && (
        <p class="unprinted">
          <Link to="/charges">All accounts, flights to charge and rates</Link>
        </p>
      )}
      {statement && <Standing statement={statement} zone={zone} />}
      <form
        class="finder unprinted"
        onSubmit={(event) => {
          event.preventDefault();
          read();
        }}
      >
        {treasurer && (
          <label>
            Whose
            <select value={whose} onChange={(event) => go(`/account#${event.currentTarget.value}`)}>
              {names.value.map(({ id, name }) => (
                <option key={id} value={id}>
                  {id === me.memberId ? `${name} (you)` : name}
                </option>
              ))}
            </select>
          </label>
        )}
        <DayInput label="From" value={from} set={setFrom} required max={to} />
        <DayInput label="Through" value={to} set={setTo} required min={from} />
        <button>Show</button>
        <button type="button" onClick={asTable}>
          Save as CSV
        </button>
        <button type="button" onClick={() => print()}>
          Print
        </button>
      </form>
      <Refusal problem={problem} />
      <p role="status">{told}</p>
      {statement ? (
        <>
          <StatementTable
            {...{ statement, zone, mayReverse: treasurer && !own, reversed: () => entered('Reversed.') }}
          />
          <p class="hint">{statement.rounding}</p>
        </>
      ) : (
        problem === null && <p class="hint">Reading…</p>
      )}
      {treasurer && !own && statement && (
        <EnterForm key={statement.memberId} {...{ memberId: whose, unit: statement, zone, entered }} />
      )}
    </main>
  );
}

/** The figure somebody came for. */
function Standing({ statement, zone }: { statement: Statement; zone: string }) {
  const { closingMinor, overdueMinor, dueThrough, to } = statement;
  return (
    <div class={`stands ${overdueMinor > 0 ? 'overdue' : ''}`}>
      <p>
        <strong>{standsAt(closingMinor, statement)}</strong> <Said text={`at the end of ${to}`} zone={zone} />
      </p>
      {overdueMinor > 0 && (
        <p>
          <Said
            text={`${moneySays(overdueMinor, statement)} is overdue; the oldest was to be paid through ${dueThrough ?? ''}.`}
            zone={zone}
          />
        </p>
      )}
      {overdueMinor === 0 && dueThrough !== null && (
        <p>
          <Said text={`The oldest unpaid charge is to be paid through ${dueThrough}.`} zone={zone} />
        </p>
      )}
    </div>
  );
}
