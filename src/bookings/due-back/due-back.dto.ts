import { InstantField, Shown } from '../../platform/http/fields.js';
import { FlightView } from '../flights/flight.dto.js';

/** Said with every time due back that is put off. */
export const NOT_JUDGED =
  'Whether the flight may go on so long was not judged: daylight, weather, fuel and what stands after it are for the pilot in command. Nobody watches the flight.';

/** When a flight that is out will be back. */
export class DueBackDto {
  @InstantField({ description: 'To come, and at most 24 hours from now' })
  dueBackAt: string;
}

/** A booking that departs, or takes its crew elsewhere, before the flight is back. */
export class InTheWayView {
  @Shown({ type: 'string', format: 'uuid' })
  bookingId: string;
  @Shown({ type: 'string' })
  kind: string;
  @Shown({ type: 'string', description: 'Whose booking it is' })
  holder: string;
  @Shown({ type: 'string' })
  registration: string;
  @Shown({ type: 'string', format: 'date-time' })
  departs: string;
  @Shown({ type: 'string', format: 'date-time' })
  arrives: string;
}

/** The flight with its new time due back. */
export class DueBackView {
  @Shown({ type: () => FlightView })
  flight: FlightView;
  @Shown({ type: 'boolean', description: 'The aircraft is kept in the calendar until then' })
  kept: boolean;
  @Shown({
    type: () => InTheWayView,
    isArray: true,
    description: 'Why it is not kept. Who has booked the aircraft next is told',
  })
  inTheWay: InTheWayView[];
  @Shown({ type: 'string' })
  caution: string;
}
