import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { momentIn } from '../parts/time.js';
import { CheckoutHead } from './checkout-head.js';
import { SignItem } from './sign-item.js';
import { SignWhole } from './sign-whole.js';
import { SignedItems } from './signed-items.js';
import type { MemberProgress, Progress, Student } from './types.js';
import type { Done } from './undo-bar.js';
import { keyOf, stands } from './words.js';

/** One student; open, with what is left of each checkout. */
export function StudentCard({
  student,
  me,
  open,
  choose,
  signed,
}: {
  student: Student;
  me: Me;
  open: boolean;
  choose: (open: boolean) => void;
  signed: (done: Done | null) => Promise<unknown>;
}) {
  const { member, nextFlightAt, left } = student;
  const zone = me.club.zone;
  const ready = left.filter((one) => one.ready && one.youMaySign).length;
  return (
    <section class="student" aria-labelledby={`student-${member.id}`}>
      <h3 id={`student-${member.id}`}>
        <button aria-expanded={open} onClick={() => choose(!open)}>
          <span class="name">{member.name}</span>
          <small>
            {nextFlightAt ? `Flies with you ${momentIn(zone, nextFlightAt)}` : 'No flight booked with you'}
            {ready > 0 && ` · ${ready} ready to sign`}
          </small>
        </button>
      </h3>
      {open && left.map((one) => <StudentCheckout key={keyOf(one)} {...{ one, member, me, signed }} />)}
      {open && <Others {...{ student, me, signed }} />}
    </section>
  );
}

function StudentCheckout({
  one,
  member,
  me,
  signed,
}: {
  one: Progress;
  member: Student['member'];
  me: Me;
  signed: (done: Done | null) => Promise<unknown>;
}) {
  const open = one.items.filter(({ state }) => state !== 'signed');
  const first = open.filter(({ required }) => required);
  return (
    <article>
      <CheckoutHead of={one} zone={me.club.zone} />
      {!one.youMaySign && <p class="hint">Signed by the instructors the club names for it.</p>}
      <ul class="items">
        {[...first, ...open.filter(({ required }) => !required)].map((item) => (
          <SignItem
            key={item.itemId}
            {...{ item, member, signed }}
            differenceId={one.difference?.id ?? null}
            maySign={one.youMaySign}
          />
        ))}
      </ul>
      {one.ready && one.youMaySign && <SignWhole {...{ one, member, me, signed }} />}
      <SignedItems {...{ one, member, me, signed }} />
    </article>
  );
}

/** Checkouts that are not begun: read when asked for, or at once where there is nothing else. */
function Others({
  student,
  me,
  signed,
}: {
  student: Student;
  me: Me;
  signed: (done: Done | null) => Promise<unknown>;
}) {
  const { member, left } = student;
  const [all, setAll] = useState<Progress[] | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const read = () =>
    attempt(setProblem, async () => {
      const found = await call<MemberProgress>('GET', `/members/${member.id}/checkout-progress`);
      setAll(found.checkouts);
    });
  const nothing = left.length === 0;
  useEffect(() => {
    if (nothing) void read();
  }, [nothing]);
  const listed = left.map(keyOf);
  const others = (all ?? []).filter((one) => !stands(one) && !listed.includes(keyOf(one)));
  return (
    <div class="others">
      <Refusal problem={problem} />
      {all === null && !nothing && (
        <button class="quiet" onClick={() => void read()}>
          Begin another checkout
        </button>
      )}
      {all !== null && others.length === 0 && <p class="hint">The club asks for no other checkout.</p>}
      {others.map((one) => (
        <StudentCheckout
          key={keyOf(one)}
          {...{ one, member, me }}
          signed={async (done) => {
            await signed(done);
            await read();
          }}
        />
      ))}
    </div>
  );
}
