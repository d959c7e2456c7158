import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { FlightFacts } from '../../../facts/flight.js';
import type { LogFact } from '../../../facts/person.js';
import { plannedLandings } from '../../planned-flight.js';
import { takeInstructor } from '../../take-instructor.js';
import { plannedDay } from './planned-day.js';

/** Ways to club recency: fly the landings with an instructor beforehand, or take an instructor along on this flight. */
export function landingsInModelRemedies(of: {
  type: AircraftType;
  needed: number;
  days: number;
  moment: Moment;
  flight: Omit<FlightFacts, 'departs' | 'arrives'>;
}): Remedy[] {
  const { type, needed, days, moment, flight } = of;
  const daysAhead = plannedDay(moment, days);
  const entry: LogFact = {
    ...plannedLandings(type, needed, false, moment),
    id: 'planned:fly-landings-model',
    departedAt: moment.hoursFromKnowledge(24 * (daysAhead ?? 0)),
    on: addDays(moment.knowledgeDate(), daysAhead ?? 0),
    role: 'dual-received',
  };
  const flown: Remedy[] =
    daysAhead === null
      ? []
      : [
          {
            act: 'fly-landings-model',
            title: `Fly ${needed} landings in the ${type.makeModel} with an instructor.`,
            by: 'instructor',
            effects: [{ op: 'append', fact: 'pic.log', value: entry }],
          },
        ];
  return [...flown, ...takeInstructor(flight)];
}
