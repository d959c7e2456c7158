import { Shown } from '../../platform/http/fields.js';
import { BookingDto } from '../booking.dto.js';
import { DispatchView } from '../dispatch/dispatch.dto.js';
import { ReturnView } from '../return/return.dto.js';

/** What the flight was booked as, for forms to begin with. */
export class PlannedView {
  @Shown({ type: 'string', description: 'Code; the home of the aircraft unless a route was given' })
  fromAirfield: string;
  @Shown({ type: 'string' })
  toAirfield: string;
  @Shown({ type: 'integer' })
  personsOnBoard: number;
}

/** A booked flight with what became of it. */
export class FlightView {
  @Shown({ type: () => BookingDto })
  booking: BookingDto;
  @Shown({ type: () => PlannedView, nullable: true, description: 'null for a block' })
  planned: PlannedView | null;
  @Shown({ type: () => DispatchView, nullable: true, description: 'The last one' })
  dispatch: DispatchView | null;
  @Shown({ type: () => ReturnView, nullable: true, description: 'As it stands, corrections made' })
  return: ReturnView | null;
  @Shown({ type: 'string', format: 'date-time', nullable: true, description: 'null: it is not out' })
  dueBackAt: string | null;
  @Shown({ type: 'boolean', description: 'Out, and the time it is due back has passed' })
  overdue: boolean;
  @Shown({ type: 'string' })
  caution: string;
}

/** A flight that is out. */
export class FlightOut {
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;
  @Shown({ type: 'string', format: 'uuid' })
  aircraftId: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string' })
  memberName: string;
  @Shown({ type: 'string', format: 'date-time' })
  dueBackAt: string;
  @Shown({ type: 'boolean' })
  overdue: boolean;
  @Shown({ type: 'boolean', description: 'The reader is of its crew' })
  mine: boolean;
}

/** Every flight that is out, soonest due first. */
export class FlightsOut {
  @Shown({ type: () => FlightOut, isArray: true })
  items: FlightOut[];
  @Shown({ type: 'string' })
  caution: string;
}
