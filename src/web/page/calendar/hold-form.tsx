import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { NO_SUCH_TIME, instantIn, plusDays, now, today } from '../parts/time.js';
import { all, names } from '../session/session.js';
import { ClockInput } from './change-form.js';

/** An instructor keeps a slot for a checkout until it is confirmed. */
export function HoldForm({ me, refresh }: { me: Me; refresh: () => Promise<void> }) {
  const { zone } = me.club;
  const [open, setOpen] = useState(false);
  const [fleet, setFleet] = useState<{ id: string; registration: string }[]>([]);
  const [aircraftId, setAircraftId] = useState('');
  const [memberId, setMemberId] = useState('');
  const [day, setDay] = useState(plusDays(today(zone), 3));
  const [leaving, setLeaving] = useState('10:00');
  const [back, setBack] = useState('12:00');
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    if (open) void attempt(setProblem, async () => setFleet(await all('/aircraft')));
  }, [open]);
  const send = () =>
    attempt(setProblem, async () => {
      const [departs, arrives] = [instantIn(zone, day, leaving), instantIn(zone, day, back)];
      if (!departs || !arrives) return setProblem(NO_SUCH_TIME);
      const body = { aircraftId, memberId, departs, arrives };
      await call('POST', '/bookings/holds', body, { 'Idempotency-Key': `hold-${me.memberId}-${now()}` });
      setOpen(false);
      await refresh();
    });
  const others = names.value.filter(({ id }) => id !== me.memberId);
  return (
    <details class="hold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Hold a slot for a checkout</summary>
      <form
        class="act"
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <div class="row">
          <Choice
            label="With"
            value={memberId}
            set={setMemberId}
            of={[['', 'choose a member'], ...others.map(({ id, name }) => [id, name] as const)]}
          />
          <Choice
            label="Aircraft"
            value={aircraftId}
            set={setAircraftId}
            of={[['', 'choose'], ...fleet.map(({ id, registration }) => [id, registration] as const)]}
          />
          <DayInput label="Day" value={day} set={setDay} required min={today(zone)} />
          <ClockInput label="From" value={leaving} set={setLeaving} />
          <ClockInput label="Until" value={back} set={setBack} />
        </div>
        <Refusal problem={problem} />
        <button class="main" disabled={memberId === '' || aircraftId === ''}>
          Hold it
        </button>
        <p class="hint">Not judged yet; either of you confirms it, and otherwise it ends by itself.</p>
      </form>
    </details>
  );
}
