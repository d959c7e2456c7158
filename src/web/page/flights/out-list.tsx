import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, FigureInput } from '../parts/fields.js';
import { Link } from '../parts/link.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import { isOfficer } from '../session/roles.js';
import { names } from '../session/session.js';
import type { FlightOut } from './types.js';

interface Contact {
  memberId: string;
  name: string;
  afterMinutes: number;
}

/** Which aircraft are out, and who is told when one is not back. */
export function FlightsOutList({ me }: { me: Me }) {
  const [out, setOut] = useState<{ items: FlightOut[]; caution: string } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, async () => setOut(await call('GET', '/flights/out')));
  }, []);
  return (
    <main class="page flight-page">
      <h1 ref={heading} tabIndex={-1}>
        Out now
      </h1>
      <Refusal problem={problem} />
      {out === null && problem === null && <p class="hint">Reading…</p>}
      {out?.items.length === 0 && <p>Every aircraft is in.</p>}
      <ul class="out-list">
        {out?.items.map((one) => (
          <li key={one.bookingId} class={one.overdue ? 'late' : ''}>
            <strong>{one.registration}</strong> {one.memberName}, due back{' '}
            {momentIn(me.club.zone, one.dueBackAt)}
            {one.overdue && <strong class="overdue"> overdue</strong>}{' '}
            {one.mine && <Link to={`/flights#${one.bookingId}`}>Return it</Link>}
          </li>
        ))}
      </ul>
      {out && <p class="caution">{out.caution}</p>}
      <Contacts mayEdit={isOfficer(me.roles)} />
    </main>
  );
}

/** The people told besides crew and safety officers; officers name them. */
function Contacts({ mayEdit }: { mayEdit: boolean }) {
  const [contacts, setContacts] = useState<Contact[]>([]);
  const [memberId, setMember] = useState('');
  const [minutes, setMinutes] = useState('45');
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () =>
      setContacts((await call<{ items: Contact[] }>('GET', '/overdue/contacts')).items),
    );
  }, []);
  const save = (next: Pick<Contact, 'memberId' | 'afterMinutes'>[]) =>
    attempt(setProblem, async () => {
      const body = {
        contacts: next.map(({ memberId: id, afterMinutes }) => ({ memberId: id, afterMinutes })),
      };
      setContacts((await call<{ items: Contact[] }>('PUT', '/overdue/contacts', body)).items);
      setMember('');
    });
  return (
    <section aria-labelledby="contacts">
      <h2 id="contacts">Told when one is overdue</h2>
      <p>Its crew and the safety officers, at the times of the club’s policy, and:</p>
      <ul class="out-list">
        {contacts.length === 0 && <li>nobody else.</li>}
        {contacts.map((one) => (
          <li key={one.memberId}>
            {one.name}, {one.afterMinutes} minutes after it was due
            {mayEdit && (
              <button
                class="quiet danger"
                aria-label={`Leave out ${one.name}`}
                onClick={() => void save(contacts.filter((other) => other !== one))}
              >
                Leave out
              </button>
            )}
          </li>
        ))}
      </ul>
      <Refusal problem={problem} />
      {mayEdit && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (memberId) void save([...contacts, { memberId, afterMinutes: Number(minutes) }]);
          }}
        >
          <div class="row">
            <Choice
              label="Also tell"
              value={memberId}
              set={setMember}
              of={[['', 'choose'], ...names.value.map(({ id, name }) => [id, name] as const)]}
            />
            <FigureInput
              label="after, minutes"
              {...{ value: minutes, set: setMinutes, required: true, min: 0, max: 1440, step: '1' }}
            />
          </div>
          <button class="quiet">Add</button>
        </form>
      )}
    </section>
  );
}
