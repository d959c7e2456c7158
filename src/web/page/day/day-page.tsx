import { useEffect, useRef, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { Answer, Booking, Me } from '../api/types.js';
import { ownForm, startAsk } from '../ask/shared-form.js';
import { attempt } from '../parts/attempt.js';
import { Refusal } from '../parts/refusal.js';
import { go } from '../parts/route.js';
import { clockIn, dayIn, now, plusDays, today } from '../parts/time.js';
import { all } from '../session/session.js';
import { at, daysFrom, instantOf, type Day } from '../timeline/days.js';
import { Legend, Patterns } from '../timeline/patterns.js';
import { questionOf } from '../timeline/question.js';
import type { Step, Timelines } from '../timeline/types.js';
import '../timeline/when.css';
import { DayLane } from './day-lane.js';
import './day.css';

interface Aircraft {
  id: string;
  registration: string;
}
interface Shown {
  fleet: Aircraft[];
  bookings: Booking[];
  answers: Timelines | null;
}

/** The fleet over one day: what is booked, and beneath it one's own answer for the flight of the first page. */
export function DayPage({ me, part }: { me: Me; part: string }) {
  const { zone } = me.club;
  const heading = useRef<HTMLHeadingElement>(null);
  const date = /^\d{4}-\d{2}-\d{2}$/.test(part) ? part : today(zone);
  const [day] = daysFrom(zone, date, 1) as [Day];
  const [shown, setShown] = useState<Shown | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const form = ownForm(zone);
  const question = questionOf(form, zone);
  const minutes = 'message' in question ? 120 : question.durationMinutes;

  useEffect(() => {
    heading.current?.focus();
    let asked = true;
    void attempt(setProblem, async () => {
      const [fleet, bookings] = await Promise.all([
        all<Aircraft>('/aircraft'),
        all<Booking>(`/bookings?from=${instantOf(day.from)}&to=${instantOf(day.to)}`),
      ]);
      const occupied = bookings
        .filter(({ status }) => status === 'booked' || status === 'dispatched')
        .map((one) => untilNow(one));
      if (asked) setShown({ fleet, bookings: occupied, answers: null });
      const answers = await answersFor(day, question);
      if (asked && answers) setShown({ fleet, bookings: occupied, answers });
    });
    return () => {
      asked = false;
    };
  }, []);

  /** Puts a free time into the first page's form and goes there. */
  const ask = (aircraft: Aircraft, from: number, to: number) => {
    const ends = Math.min(to, from + minutes * 60_000, day.to - 60_000);
    const clock = (time: number) => clockIn(zone, instantOf(time));
    startAsk.value = { date, from: clock(from), to: clock(ends), aircraft };
    go('/');
  };
  const seen = new Set<Answer>(
    shown?.answers?.aircraft.flatMap(({ steps }) => steps.map(({ answer }) => answer)) ?? [],
  );
  const stepsOf = (id: string): Step[] =>
    shown?.answers?.aircraft.find(({ aircraft }) => aircraft.id === id)?.steps ?? [];
  return (
    <main class="page day">
      <section class="when">
        <div class="when-head">
          <h2 ref={heading} tabIndex={-1}>
            {dayIn(zone, instantOf(day.from + 43_200_000))}
          </h2>
          <div class="move">
            <button class="quiet" onClick={() => go(`/day#${plusDays(date, -1)}`)}>
              Day before
            </button>
            <button class="quiet" onClick={() => go(`/day#${today(zone)}`)}>
              Today
            </button>
            <button class="quiet" onClick={() => go(`/day#${plusDays(date, 1)}`)}>
              Day after
            </button>
            <label>
              Day{' '}
              <input
                type="date"
                value={date}
                onChange={(event) => event.currentTarget.value && go(`/day#${event.currentTarget.value}`)}
              />
            </label>
          </div>
        </div>
        <Refusal problem={problem} />
        {shown === null ? (
          problem === null && <p class="hint">Reading…</p>
        ) : (
          <>
            <Patterns />
            <Legend answers={seen} />
            <p class="hint small">
              Above, what is booked by the club’s clock. Beneath, your answer for leaving then, for the flight
              on the first page. Choose free time to ask for it, or a booking to wait for its slot.
            </p>
            <ul class="day-lanes">
              {shown.fleet.map((aircraft) => (
                <DayLane
                  key={aircraft.id}
                  {...{ aircraft, day, zone, steps: stepsOf(aircraft.id), me: me.memberId }}
                  bookings={shown.bookings.filter(({ aircraftId }) => aircraftId === aircraft.id)}
                  ask={(from, to) => ask(aircraft, from, to)}
                />
              ))}
            </ul>
            <p class="hint small" role="status">
              {shown.answers === null ? answerMissing(day, question) : shown.answers.caution}
            </p>
          </>
        )}
      </section>
    </main>
  );
}

/** One that is out and late takes its aircraft until it is back, which nobody knows; until now at the least. */
function untilNow(booking: Booking): Booking {
  const late = booking.status === 'dispatched' && booking.arrives < now();
  return late ? { ...booking, arrives: now() } : booking;
}

function answerMissing(day: Day, question: ReturnType<typeof questionOf>): string {
  if (day.to <= at(now())) return 'The day has passed; there is no answer for it.';
  return 'message' in question ? question.message : 'Asking for your answer…';
}

/** The answers for departures of the day that are still to come; null where none is. */
async function answersFor(day: Day, question: ReturnType<typeof questionOf>): Promise<Timelines | null> {
  const from = Math.max(day.from, at(now()));
  if ('message' in question || from >= day.to) return null;
  const { flight, durationMinutes } = question;
  return call<Timelines>('POST', '/decisions/timeline', {
    ...flight,
    ...{ from: instantOf(from), to: instantOf(day.to), durationMinutes, join: 'answer' },
  });
}
