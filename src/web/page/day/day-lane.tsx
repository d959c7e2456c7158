import { useEffect, useRef } from 'preact/hooks';
import type { Booking } from '../api/types.js';
import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { LOOKS } from '../answer/words.js';
import { go } from '../parts/route.js';
import { clockIn, now } from '../parts/time.js';
import { at, instantOf, partOf, type Day } from '../timeline/days.js';
import { fillOf } from '../timeline/patterns.js';
import { byDay } from '../timeline/stretches.js';
import type { Step } from '../timeline/types.js';
import { partsOf, type Part } from './lanes.js';

interface Props {
  aircraft: { id: string; registration: string };
  day: Day;
  zone: string;
  bookings: Booking[];
  steps: Step[];
  /** Who reads. */
  me: string;
  ask(from: number, to: number): void;
}

/** A tap falls on a quarter of an hour. */
const QUARTER = 15 * 60_000;
const HOURS = [0, 6, 12, 18];

/** One aircraft over the day: bookings and free time, the answer beneath, and the same as a list. */
export function DayLane({ aircraft, day, zone, bookings, steps, me, ask }: Props) {
  const { registration } = aircraft;
  const parts = partsOf(day, bookings, at(now()));
  const clock = (time: number) => (time >= day.to ? '24:00' : clockIn(zone, instantOf(time)));
  const span = ({ from, to }: { from: number; to: number }) => `${clock(from)} to ${clock(to)}`;
  const own = (booking: Booking) => booking.people.some(({ memberId }) => memberId === me);
  const wait = ({ departs, arrives }: Booking) => go(`/standby#${aircraft.id}~${departs}~${arrives}`);
  const tapped = (event: MouseEvent, part: Part) => {
    const { left, width } = (event.currentTarget as HTMLElement).getBoundingClientRect();
    // A key has no place: it takes the whole stretch from its beginning.
    const share = event.detail === 0 || width === 0 ? 0 : (event.clientX - left) / width;
    const wish = part.from + share * (part.to - part.from);
    ask(Math.max(part.from, Math.floor(wish / QUARTER) * QUARTER), part.to);
  };
  const across = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // On a phone a part of the day is in sight: what is to come, or the morning of another day.
    const { scrollWidth } = across.current!;
    const begin = at(now()) > day.from && at(now()) < day.to ? at(now()) - 3_600_000 : day.from + 21_600_000;
    across.current!.scrollLeft = partOf(day, begin) * scrollWidth;
  }, []);
  const pieces = byDay([day], steps)[0]?.parts ?? [];
  return (
    <li class="day-lane" data-registration={registration}>
      <h3>{registration}</h3>
      <div
        ref={across}
        class="across"
        role="group"
        aria-label={`${registration}, midnight to midnight`}
        tabIndex={0}
      >
        <div class="track">
          {HOURS.map((hour) => (
            <span key={hour} class="hour" style={{ left: `${(100 * hour) / 24}%` }} aria-hidden="true">
              {String(hour).padStart(2, '0')}
            </span>
          ))}
          {parts.map((part) => {
            const style = { left: `${part.left}%`, width: `${part.width}%` };
            const { booking } = part;
            if (!booking)
              return (
                <button
                  key={part.from}
                  class="free"
                  style={style}
                  aria-label={`${registration} is free from ${span(part)}: ask for it`}
                  onClick={(event) => tapped(event, part)}
                />
              );
            const words = `${whose(booking)}, ${span(part)}`;
            const past = at(booking.departs) <= at(now());
            return booking.kind === 'flight' && !own(booking) && !past ? (
              <button
                key={booking.id}
                class="taken"
                style={style}
                aria-label={`${registration}: ${words}. Wait for this slot`}
                onClick={() => wait(booking)}
              >
                {whose(booking)}
              </button>
            ) : (
              <span
                key={booking.id}
                class={`taken ${own(booking) ? 'own' : booking.kind}`}
                style={style}
                title={words}
              >
                {whose(booking)}
              </span>
            );
          })}
        </div>
        <svg class="answers" width="100%" height="18" aria-hidden="true">
          {pieces.map(({ from, to, answer }) => (
            <rect
              key={from}
              x={`${100 * partOf(day, from)}%`}
              width={`${100 * (partOf(day, to) - partOf(day, from))}%`}
              height="18"
              fill={fillOf(answer)}
            />
          ))}
        </svg>
      </div>
      <details class="in-words">
        <summary>{registration} in words</summary>
        <ul>
          {parts.map((part) => (
            <li key={`${part.from}`}>
              {span(part)}: {part.booking ? whose(part.booking) : 'free'}
            </li>
          ))}
          {pieces.map(({ from, to, answer }) => (
            <li key={`answer ${from}`}>
              Leaving {span({ from, to })}:{' '}
              <span class={`shape ${LOOKS[answer].tone}`} aria-hidden="true">
                {LOOKS[answer].shape}
              </span>{' '}
              {ANSWER_WORD[answer]}
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

function whose({ kind, memberName, status, arrives }: Booking): string {
  if (status === 'dispatched' && arrives <= now()) return `${memberName}, not back`;
  if (kind === 'flight') return memberName;
  return kind === 'maintenance' ? 'Maintenance' : 'The club';
}
