/** What a flight becomes by an edit: pure, so that it can be looked at without a database. */
import type { FlightRequestDto } from '../../decisions/flight-request.dto.js';
import { toInstant, toSeconds } from '../../rules/index.js';
import type { OpenBooking, BookingState } from './changes.sql.js';
import type { EditBookingDto } from './changes.dto.js';

/** A flight as it is to be, and how it differs. */
export interface ChangedFlight {
  aircraftId: string;
  note: string;
  request: FlightRequestDto;
  before: BookingState;
  after: BookingState;
  /** Names of fields outside the state that are others now. */
  also: string[];
  /** Nothing but an earlier end: time is given back, and nothing is asked for. */
  givesBack: boolean;
  /** Whether the flight itself is another one; a note alone does not make it so. */
  judged: boolean;
}

/** Fields that tell the same thing in two ways: the one given replaces the other. */
const INSTEAD: Record<string, keyof FlightRequestDto> = { route: 'landings', landings: 'route' };
const IN_STATE = [
  ...['departs', 'arrives', 'purpose', 'personsOnBoard', 'memberId', 'instructorId', 'secondPilotId'],
];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
const inUtc = (time: string): string => toInstant(toSeconds(time));

/** The flight with an edit applied. What the edit leaves out stays. */
export function changedFlight(
  { row, request }: OpenBooking,
  { aircraftId = row.aircraftId, note = row.note, override: _override, ...edit }: EditBookingDto,
): ChangedFlight {
  const merged: Record<string, unknown> = { ...request };
  for (const [field, value] of Object.entries(edit)) {
    if (value === undefined) continue;
    if (value === null) delete merged[field];
    else merged[field] = field === 'departs' || field === 'arrives' ? inUtc(value as string) : value;
    if (INSTEAD[field]) delete merged[INSTEAD[field]];
  }
  const next = merged as unknown as FlightRequestDto;
  const lasts = (of: { departs: string; arrives: string }): number =>
    toSeconds(of.arrives) - toSeconds(of.departs);
  // Hours told for a flight of another length say nothing of this one.
  if (edit.plannedHours === undefined && lasts(next) !== lasts(row)) delete merged['plannedHours'];
  const stateOf = (of: FlightRequestDto, aircraft: string): BookingState => ({
    ...{ aircraftId: aircraft, memberId: row.memberId, kind: row.kind, status: row.status },
    ...{ instructorId: of.instructorId ?? null, secondPilotId: of.secondPilotId ?? null },
    ...{ departs: inUtc(of.departs), arrives: inUtc(of.arrives), purpose: of.purpose },
    personsOnBoard: of.personsOnBoard,
  });
  const before = { ...stateOf(request, row.aircraftId), departs: row.departs, arrives: row.arrives };
  const after = stateOf(next, aircraftId);
  const fields = [...new Set([...Object.keys(request), ...Object.keys(merged)])];
  const details = fields.filter(
    (field) =>
      !IN_STATE.includes(field) &&
      !same((request as unknown as Record<string, unknown>)[field], merged[field]),
  );
  const moved = (Object.keys(after) as (keyof BookingState)[]).filter(
    (field) => before[field] !== after[field],
  );
  const told = details.filter((field) => field !== 'plannedHours');
  return {
    ...{ aircraftId, note, request: next, before, after },
    also: [...details, ...(note === row.note ? [] : ['note'])].sort(),
    givesBack: same(moved, ['arrives']) && told.length === 0 && after.arrives < before.arrives,
    judged: moved.length > 0 || details.length > 0,
  };
}
