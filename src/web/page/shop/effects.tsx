import { ChangedBookings } from '../parts/changed-bookings.js';
import { Said } from '../parts/said.js';
import { spanIn } from '../parts/time.js';
import type { StepEffects } from './types.js';

/** What a step does to members: flights that make room, and flights answered otherwise. */
export function Effects({ of, zone }: { of: StepEffects; zone: string }) {
  const { displaced, bookings, bookingsJudged, cautions = [] } = of;
  return (
    <div class="effects" role="status">
      {displaced.length > 0 && (
        <>
          <p>
            <strong>
              {displaced.length === 1 ? 'A flight makes' : `${displaced.length} flights make`} room, and
              everybody aboard is told:
            </strong>
          </p>
          <ul>
            {displaced.map((one) => (
              <li key={one.bookingId}>
                {one.memberName}, {spanIn(zone, one.departs, one.arrives)}
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        {displaced.length === 0 && 'No flight has to make room. '}
        {bookings.length === 0
          ? bookingsJudged === 0
            ? 'No flight is booked on the aircraft.'
            : `None of the ${bookingsJudged} flights booked is answered otherwise.`
          : `Of ${bookingsJudged} flights booked ${bookings.length} ${bookings.length === 1 ? 'is' : 'are'} answered otherwise:`}
      </p>
      <ChangedBookings bookings={bookings} zone={zone} />
      {cautions.map((says) => (
        <p key={says} class="warned">
          <Said text={says} zone={zone} />
        </p>
      ))}
      <p class="caution">{of.caution}</p>
    </div>
  );
}
