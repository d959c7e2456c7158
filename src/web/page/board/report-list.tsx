import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, LongText, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { Day } from '../parts/said.js';
import { plusDays, today } from '../parts/time.js';
import { names } from '../session/session.js';
import { Steps } from './steps.js';
import type { Paged, Report } from './types.js';

/** Reports, newest first: all for an officer, who follows them up; one's own for anybody else. */
export function ReportList({ me, officer }: { me: Me; officer: boolean }) {
  const [items, setItems] = useState<Report[] | null>(null);
  const [cursor, setCursor] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const read = (after: string | null) =>
    attempt(setProblem, async () => {
      const page = await call<Paged<Report>>(
        'GET',
        `/safety-reports?limit=20${after === null ? '' : `&cursor=${encodeURIComponent(after)}`}`,
      );
      setItems(after === null ? page.items : [...(items ?? []), ...page.items]);
      setCursor(page.nextCursor);
    });
  const again = (id: string) =>
    void attempt(setProblem, async () => {
      const after = await call<Report>('GET', `/safety-reports/${id}`);
      setItems((items ?? []).map((one) => (one.id === id ? after : one)));
    });

  useEffect(() => {
    void read(null);
  }, []);

  return (
    <section class="sheet" aria-labelledby="reports">
      <h3 id="reports">{officer ? 'Hazards and occurrences' : 'My reports'}</h3>
      <Refusal problem={problem} />
      {items?.length === 0 && <p class="hint">{officer ? 'None has been told.' : 'None under your name.'}</p>}
      <ul class="cards">
        {items?.map((one) => (
          <li key={one.id}>
            <p>
              <b>{one.title}</b> <span class="state">{one.state}</span>
            </p>
            <p class="hint">
              {one.kind}, <Day date={one.happenedOn} />
              {one.place && `, ${one.place}`}
              {one.registration && `, ${one.registration}`}, told{' '}
              {one.confidential ? 'in confidence' : `by ${one.reporterName ?? ''}`}
            </p>
            <p class="narrative">{one.narrative}</p>
            <Steps
              of={one.steps}
              finish={
                officer && one.state === 'open'
                  ? { at: `/safety-reports/${one.id}`, today: today(me.club.zone), done: () => again(one.id) }
                  : undefined
              }
            />
            {one.finding && <p>Closed: {one.finding}</p>}
            {officer && one.state === 'open' && <FollowUp of={one} me={me} done={() => again(one.id)} />}
          </li>
        ))}
      </ul>
      {cursor && (
        <button type="button" class="quiet" onClick={() => void read(cursor)}>
          Older reports
        </button>
      )}
    </section>
  );
}

function FollowUp({ of, me, done }: { of: Report; me: Me; done: () => void }) {
  const soon = plusDays(today(me.club.zone), 14);
  const [what, setWhat] = useState('');
  const [responsibleId, setResponsible] = useState(me.memberId);
  const [dueOn, setDue] = useState(soon);
  const [finding, setFinding] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const at = `/safety-reports/${of.id}`;
  const addStep = () =>
    attempt(setProblem, async () => {
      await call('POST', `${at}/steps`, { what, responsibleId, dueOn });
      setWhat('');
      setDue(soon);
      done();
    });
  const close = () =>
    attempt(setProblem, async () => {
      await call('POST', `${at}/close`, { finding });
      done();
    });
  return (
    <details>
      <summary>Follow up</summary>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void addStep();
        }}
      >
        <TextInput label="What is to be done" value={what} set={setWhat} required max={1000} />
        <Choice
          label="Who sees to it"
          value={responsibleId}
          set={setResponsible}
          of={names.value.map(({ id, name }) => [id, name] as const)}
        />
        <DayInput label="By" value={dueOn} set={setDue} required />
        <button class="main">Add the step</button>
      </form>
      <form
        class="fields"
        onSubmit={(event) => {
          event.preventDefault();
          void close();
        }}
      >
        <LongText label="Finding" value={finding} set={setFinding} required min={10} max={4000} rows={3} />
        <button class="main">Close with this finding</button>
      </form>
      <Refusal problem={problem} />
    </details>
  );
}
