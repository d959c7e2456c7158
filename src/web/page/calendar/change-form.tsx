import { Temporal } from 'temporal-polyfill';
import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Booking, Me, Series } from '../api/types.js';
import { attempt } from '../parts/attempt.js';
import { Choice, DayInput, TextInput } from '../parts/fields.js';
import { Refusal } from '../parts/refusal.js';
import { overrideOf, SetAside } from '../parts/set-aside.js';
import { NO_SUCH_TIME, clockIn, dateIn, instantIn, now } from '../parts/time.js';
import { isOfficer } from '../session/roles.js';
import { all } from '../session/session.js';
import { OccurrenceList } from './occurrence-list.js';

interface Aircraft {
  id: string;
  registration: string;
}

/** Another end, other times, another aircraft, another note. The service judges it as the flight it becomes. */
export function ChangeForm({ booking, me, done }: { booking: Booking; me: Me; done: () => Promise<void> }) {
  const { zone } = me.club;
  const [day, setDay] = useState(dateIn(zone, booking.departs));
  const [leaving, setLeaving] = useState(clockIn(zone, booking.departs));
  const [backDay, setBackDay] = useState(dateIn(zone, booking.arrives));
  const [back, setBack] = useState(clockIn(zone, booking.arrives));
  const [aircraftId, setAircraftId] = useState(booking.aircraftId);
  const [note, setNote] = useState(booking.note);
  const [reason, setReason] = useState('');
  const officer = isOfficer(me.roles);
  const [fleet, setFleet] = useState<Aircraft[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [left, setLeft] = useState<Series['occurrences'] | null>(null);
  useEffect(() => {
    void attempt(setProblem, async () => setFleet(await all<Aircraft>('/aircraft')));
  }, []);
  const begun = booking.departs <= now();

  const key = (): string => `change-${booking.id}-${booking.rowVersion}-${now()}`;
  const run = async (work: () => Promise<void>) => {
    setBusy(true);
    await attempt(setProblem, work);
    setBusy(false);
  };
  const send = (body: object) =>
    run(async () => {
      await call(
        'PATCH',
        `/bookings/${booking.id}`,
        { ...body, ...overrideOf(reason) },
        {
          'If-Match': `"${booking.rowVersion}"`,
          'Idempotency-Key': key(),
        },
      );
      await done();
    });
  const endsBy = (minutes: number) =>
    send({
      arrives: Temporal.Instant.from(booking.arrives).add({ minutes }).toString({ smallestUnit: 'second' }),
    });
  const others = {
    ...(aircraftId === booking.aircraftId ? {} : { aircraftId }),
    ...(note === booking.note ? {} : { note }),
  };
  const times = (): { departs: string; arrives: string } | null => {
    const departs = begun ? booking.departs : instantIn(zone, day, leaving);
    const arrives = instantIn(zone, backDay < day ? day : backDay, back);
    if (departs && arrives) return { departs, arrives };
    setProblem(NO_SUCH_TIME);
    return null;
  };
  const change = () => {
    const to = times();
    if (!to) return;
    const { departs, arrives } = to;
    const moved = {
      ...(departs === booking.departs ? {} : { departs }),
      ...(arrives === booking.arrives ? {} : { arrives }),
    };
    return send({ ...moved, ...others });
  };
  const following = () => {
    const to = times();
    if (!to) return;
    const lasts = Temporal.Instant.from(to.departs).until(Temporal.Instant.from(to.arrives), {
      largestUnit: 'minutes',
    });
    const departsAt = leaving === clockIn(zone, booking.departs) ? {} : { departsAt: leaving };
    return run(async () => {
      const body = { ...others, ...departsAt, lastsMinutes: lasts.minutes, fromBookingId: booking.id };
      const answer = await call<Series>('POST', `/booking-series/${booking.seriesId}/edit`, body, {
        'Idempotency-Key': key(),
      });
      if (answer.occurrences.some((one) => one.problem !== null)) return setLeft(answer.occurrences);
      await done();
    });
  };

  return (
    <form
      class="act"
      onSubmit={(event) => {
        event.preventDefault();
        void change();
      }}
    >
      <p class="steps">
        <button type="button" disabled={busy} onClick={() => void endsBy(-30)}>
          30 min shorter
        </button>
        <button type="button" disabled={busy} onClick={() => void endsBy(30)}>
          30 min longer
        </button>
      </p>
      <div class="row">
        {!begun && <DayInput label="Day" value={day} set={setDay} required />}
        {!begun && <ClockInput label="Leaving at" value={leaving} set={setLeaving} />}
        <DayInput label="Back on" value={backDay < day ? day : backDay} set={setBackDay} required min={day} />
        <ClockInput label="Back at" value={back} set={setBack} />
        {!begun && (
          <Choice
            label="Aircraft"
            value={aircraftId}
            set={setAircraftId}
            of={
              fleet.length === 0
                ? [[booking.aircraftId, booking.registration]]
                : fleet.map(({ id, registration }) => [id, registration] as const)
            }
          />
        )}
      </div>
      <TextInput label="Note" value={note} set={setNote} max={500} />
      {officer && <SetAside value={reason} set={setReason} />}
      <Refusal problem={problem} />
      {left && <OccurrenceList of={left} zone={zone} done="changed" />}
      <button class="main" disabled={busy}>
        {busy ? 'Asking…' : 'Change it'}
      </button>
      {booking.seriesId !== null && !begun && (
        <button type="button" class="quiet" disabled={busy} onClick={() => void following()}>
          This and all after it, each on its day
        </button>
      )}
      <p class="hint">It is judged anew. Only an earlier end needs no yes.</p>
    </form>
  );
}

/** A time of day. */
export function ClockInput({
  label,
  value,
  set,
}: {
  label: string;
  value: string;
  set: (value: string) => void;
}) {
  return (
    <label>
      {label}
      <input type="time" required value={value} onInput={(event) => set(event.currentTarget.value)} />
    </label>
  );
}
