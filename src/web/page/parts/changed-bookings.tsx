import { ANSWER_WORD } from '../../../rules/explain/words.js';
import { Said } from './said.js';
import { momentIn } from './time.js';

/** A booking that is answered otherwise after a change. */
export interface ChangedBooking {
  bookingId: string;
  memberName: string;
  departs: string;
  before: string;
  after: string;
  because: { title: string; says: string }[];
}

const word = (answer: string): string => (ANSWER_WORD as Record<string, string>)[answer] ?? answer;

/** Bookings answered otherwise, each with what the change put in its way. */
export function ChangedBookings({ bookings, zone }: { bookings: ChangedBooking[]; zone: string }) {
  return (
    <ul class="bookings">
      {bookings.map((one) => (
        <li key={one.bookingId}>
          {momentIn(zone, one.departs)}, {one.memberName}: {word(one.before)} becomes{' '}
          <strong>{word(one.after)}</strong>
          {one.because.map(({ title, says }) => (
            <span key={title} class="says">
              {' '}
              <Said text={says} zone={zone} />
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
}
