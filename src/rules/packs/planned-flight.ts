import type { Moment } from '../engine/moment.js';
import type { AircraftType } from '../facts/aircraft.js';
import type { LogFact } from '../facts/person.js';

/**
 * The log entry of a flight that a remedy proposes: an hour in command of this type, at the moment the facts were
 * gathered, with so many take-offs and full-stop landings, all inside the night's window when `night`.
 */
export function plannedLandings(type: AircraftType, count: number, night: boolean, moment: Moment): LogFact {
  const atNight = night ? count : 0;
  return {
    id: `planned:fly-landings-${night ? 'night' : 'day'}`,
    departedAt: moment.hoursFromKnowledge(0),
    on: moment.knowledgeDate(),
    category: type.category,
    class: type.class,
    typeRating: type.typeRating,
    tailwheel: type.tailwheel,
    modelId: type.modelId,
    aircraftId: null,
    role: 'pilot-in-command',
    soleManipulator: true,
    takeoffs: count,
    landings: count,
    fullStopLandings: count,
    nightTakeoffs: atNight,
    nightFullStopLandings: atNight,
    approaches: 0,
    holding: false,
    interceptTrack: false,
    device: null,
    totalTenths: 10,
    nightTenths: night ? 10 : 0,
    dualGivenTenths: 0,
  };
}
