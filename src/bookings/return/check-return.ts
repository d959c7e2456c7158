import { toSeconds } from '../../rules/index.js';
import type { BookingRow } from '../booking.entity.js';
import type { DispatchRow } from '../dispatch/dispatch.sql.js';
import { requireAll } from '../dispatch/meters-out.js';
import type { FlightFlownDto } from './return.dto.js';
import { refuse } from './return.problems.js';

/** The engine may run before somebody gets round to the phone (common practice, no source). */
const BEFORE_DISPATCH_SECONDS = 3600;

/**
 * Whether the flight fits its booking and its dispatch, before anything is written.
 * @throws ProblemException 422 naming the field
 */
export function checkReturn(
  body: FlightFlownDto,
  of: { booking: BookingRow; dispatch: DispatchRow; now: string },
): void {
  const { booking, dispatch, now } = of;
  if (body.arrivedAt > now)
    throw refuse('arrivedAt', `It is ${now} now. Give the time on blocks, which has been.`);
  if (body.arrivedAt <= body.departedAt)
    throw refuse('arrivedAt', 'The flight ends after it begins. Change one of the two times.');
  if (body.arrivedAt <= dispatch.dispatchedAt)
    throw refuse(
      'arrivedAt',
      `The aircraft was handed out at ${dispatch.dispatchedAt}; it came back after that.`,
    );
  if (toSeconds(body.departedAt) < toSeconds(dispatch.dispatchedAt) - BEFORE_DISPATCH_SECONDS)
    throw refuse(
      'departedAt',
      `The aircraft was handed out at ${dispatch.dispatchedAt}, an hour and more later.`,
    );
  requireAll(
    body.meters.map(({ kind }) => kind),
    dispatch.meters.map(({ kind }) => kind),
  );
  const crew = booking.people.map(({ memberId }) => memberId);
  if (body.payerId !== undefined && !crew.includes(body.payerId))
    throw refuse('payerId', 'Who pays is of the booking: pilot, instructor or second pilot.');
  checkEntries(body, booking);
}

function checkEntries({ entries }: FlightFlownDto, { people, memberId }: BookingRow): void {
  for (const [index, entry] of entries.entries()) {
    const at = (name: string): string => `entries[${index}].${name}`;
    const person = people.find((one) => one.memberId === entry.memberId);
    if (!person) throw refuse(at('memberId'), 'Only who is of the booking logs the flight with it.');
    if (entries.findIndex((one) => one.memberId === entry.memberId) !== index)
      throw refuse(at('memberId'), 'This person is named twice. Leave one out.');
    const teaches = person.role === 'instructor';
    if ((entry.role === 'instructor') !== teaches)
      throw refuse(at('role'), 'The instructor of the booking logs as instructor, and nobody else does.');
    if (!teaches && (entry.dualGivenH ?? 0) > 0)
      throw refuse(at('dualGivenH'), 'Instruction is given by the instructor of the booking.');
    if (entry.role === 'dual-received' && !people.some(({ role }) => role === 'instructor'))
      throw refuse(
        at('role'),
        'Instruction is received with an instructor aboard, and the booking has none.',
      );
  }
  if (!entries.some((entry) => entry.memberId === memberId))
    throw refuse('entries', 'The pilot logs the flight: put an entry in for them.');
}
