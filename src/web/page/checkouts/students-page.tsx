import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { go } from '../parts/route.js';
import { names } from '../session/session.js';
import './checkouts.css';
import { StudentCard } from './student-card.js';
import type { Student, Students } from './types.js';
import { UndoBar, type Done } from './undo-bar.js';

/** For instructors, on a phone beside the aircraft: who is next, what is left, sign in two taps. */
export function StudentsPage({ me, open }: { me: Me; open: string | null }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [list, setList] = useState<Students | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const reload = () => attempt(setProblem, async () => setList(await call('GET', '/instructor/students')));
  useEffect(() => {
    heading.current?.focus();
    void reload();
  }, []);
  if (!me.roles.includes('instructor'))
    return (
      <main class="page checkouts">
        <h2>Students</h2>
        <p>This page is for instructors.</p>
      </main>
    );
  // The one with the next flight is the one beside you, unless another was opened.
  const shown = open ?? list?.students[0]?.member.id;
  const listed = list?.students ?? [];
  const unlisted = names.value.filter(
    ({ id }) => id !== me.memberId && !listed.some(({ member }) => member.id === id),
  );
  const guest = list && unlisted.find(({ id }) => id === open);
  const cards: Student[] = [
    ...(guest ? [{ member: guest, because: [], nextFlightAt: null, left: [] }] : []),
    ...listed,
  ];
  return (
    <main class="page checkouts students">
      <h2 ref={heading} tabIndex={-1}>
        Students
      </h2>
      <Refusal problem={problem} />
      {list && cards.length === 0 && (
        <p class="hint">
          Nobody yet: whoever books a flight with you, or works on a checkout that you may sign, is listed
          here.
        </p>
      )}
      {cards.map((student) => (
        <StudentCard
          key={student.member.id}
          {...{ student, me }}
          open={student.member.id === shown}
          choose={(chosen) => go(`/students#${chosen ? student.member.id : 'none'}`, 'stay')}
          signed={async (what) => {
            setDone(what);
            await reload();
          }}
        />
      ))}
      {list && unlisted.length > 0 && (
        <label class="whose">
          Another member
          <select
            value={guest?.id ?? ''}
            onChange={(event) => go(`/students#${event.currentTarget.value}`, 'stay')}
          >
            <option value="">Choose</option>
            {unlisted.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {list && <p class="caution">{list.caution}</p>}
      <UndoBar
        done={done}
        undone={async () => {
          setDone(null);
          await reload();
        }}
      />
    </main>
  );
}
