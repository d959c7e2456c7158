import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { refreshFlights } from '../calendar/my-flights.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { all } from '../session/session.js';
import { EntryItem } from './entry-item.js';
import './standby.css';
import { StandbyForm } from './standby-form.js';
import type { Entry } from './types.js';

/** How often the list is read again while it is open: offers come and go. */
const AGAIN_MS = 15_000;

/** Waiting for a slot to come free, and what is offered. `part` is an aircraft and two times to wait for. */
export function StandbyPage({ me, part }: { me: Me; part: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [entries, setEntries] = useState<Entry[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const read = async () => setEntries(await all<Entry>('/standby'));
  useEffect(() => {
    heading.current?.focus();
    void attempt(setProblem, read);
    const again = setInterval(() => void attempt(setProblem, read), AGAIN_MS);
    return () => clearInterval(again);
  }, []);
  const answer = (path: string, words: string, headers?: Record<string, string>) =>
    attempt(setProblem, async () => {
      await call('POST', path, undefined, headers);
      setSaid(words);
      await read();
      await refreshFlights(me.memberId);
    });
  return (
    <main class="page standby">
      <h2 ref={heading} tabIndex={-1}>
        Standby
      </h2>
      <p class="hint">
        Wait for an aircraft to come free. When one does, it is offered to the first who waits and for whom
        the answer is yes; the offer is theirs for a time, then it goes on to the next.
      </p>
      <Refusal problem={problem} />
      <p role="status">{said}</p>
      <StandbyForm
        me={me}
        part={part}
        added={() => {
          setSaid('You are on standby.');
          return read();
        }}
      />
      <h3>You wait for</h3>
      {entries === null ? (
        problem === null && <p class="hint">Reading…</p>
      ) : entries.length === 0 ? (
        <p class="hint">Nothing.</p>
      ) : (
        <ul class="entries">
          {entries.map((entry) => (
            <EntryItem key={entry.id} entry={entry} zone={me.club.zone} answer={answer} />
          ))}
        </ul>
      )}
    </main>
  );
}
