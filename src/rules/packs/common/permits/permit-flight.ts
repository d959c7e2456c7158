/** Does a special flight permit carry this flight? (14 CFR 21.197, 91.213(e)) */
import type { Moment } from '../../../engine/moment.js';
import type { FactView } from '../../../engine/rule.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { FlightFacts } from '../../../facts/flight.js';
import type { PermitFact } from '../../../facts/aircraft.js';

type Flight = Omit<FlightFacts, 'departs' | 'arrives'>;

/** How a flight stands to the aircraft's permits. */
export type PermitState =
  /** It is no ferry flight, or no permit is on record. */
  | { state: 'none' }
  /** Permits are on record, none of them for all of the flight. */
  | { state: 'outside-dates'; permit: PermitFact }
  /** A permit covers the time, but others than required crew are aboard. */
  | { state: 'carries-others'; permit: PermitFact }
  | { state: 'covers'; permit: PermitFact };

/** Nobody aboard but required crew: one pilot, and a second only where the law asks for one. */
export function essentialCrewOnly(flight: Flight): boolean {
  const required = flight.secondPilotId !== null && flight.secondPilotRequired ? 2 : 1;
  return flight.personsOnBoard <= required && !flight.forHire;
}

/** Looks for a permit: only for a ferry flight to an inspection, never to make the aircraft airworthy. */
export function permitState(f: FactView<'aircraft.permits'>, moment: Moment): PermitState {
  if (f.flight.purpose !== 'ferry-to-inspection') return { state: 'none' };
  const latest = (by: 'from' | 'through') => (a: PermitFact, b: PermitFact) =>
    `${a[by]} ${a.id}` < `${b[by]} ${b.id}` ? 1 : -1;
  const permits = f.get('aircraft.permits');
  // Of several, the one issued last: it was issued knowing most.
  const covering = permits
    .filter((permit) => moment.startsOnOrAfter(permit.from) && moment.endsOnOrBefore(permit.through))
    .sort(latest('from'))[0];
  if (!covering) {
    const other = [...permits].sort(latest('through'))[0];
    return other ? { state: 'outside-dates', permit: other } : { state: 'none' };
  }
  return { state: essentialCrewOnly(f.flight) ? 'covers' : 'carries-others', permit: covering };
}

/** What goes with flying under a permit. */
export function permitConditions(permit: PermitFact): string[] {
  return [
    `Fly under the special flight permit (${permit.purpose}, through ${permit.through}): carry it, keep to its limits, ` +
      'and take nobody but required crew.',
  ];
}

/** Leaves at home everybody whom the ferry does not need. */
export const flyWithEssentialCrew: Remedy = {
  act: 'fly-with-essential-crew',
  title: 'Take nobody but the required crew.',
  by: 'member',
  effects: [
    {
      op: 'flight',
      fields: {
        personsOnBoard: 1,
        secondPilotId: null,
        secondPilotRequired: false,
        actingPilotId: null,
        forHire: false,
      },
    },
  ],
};

/** What the flight's permits make of something that is due. */
type Ferried =
  | { branch: 'under-permit'; conditions: string[] }
  | { branch: 'permit-crew-only'; remedies: () => Remedy[] }
  /** No permit carries it: its own rule says what is due. */
  | { branch: null; remedies: () => Remedy[] };

/**
 * Something due, on a flight that a special flight permit may carry.
 *
 * @param cures what is done about it; others than required crew stay at home besides, or a permit is obtained instead
 */
export function ferried(
  f: FactView<'aircraft.permits'>,
  moment: Moment,
  cures: () => readonly Remedy[],
): Ferried {
  const permit = permitState(f, moment);
  switch (permit.state) {
    case 'covers':
      return { branch: 'under-permit', conditions: permitConditions(permit.permit) };
    case 'carries-others':
      return { branch: 'permit-crew-only', remedies: () => [flyWithEssentialCrew, ...cures()] };
    default:
      return { branch: null, remedies: () => [...cures(), ...obtainPermit(f.flight, moment)] };
  }
}

/** Gets a permit for this ferry flight, and leaves at home whom it would not carry. */
export function obtainPermit(flight: Flight, moment: Moment): Remedy[] {
  if (flight.purpose !== 'ferry-to-inspection') return [];
  if (!moment.startsOnOrAfter(moment.knowledgeDate())) return [];
  return [
    {
      act: 'obtain-special-flight-permit',
      title: 'Obtain a special flight permit for the ferry flight, with required crew only.',
      by: 'maintenance-coordinator',
      effects: [
        ...(essentialCrewOnly(flight) ? [] : flyWithEssentialCrew.effects),
        {
          op: 'append',
          fact: 'aircraft.permits',
          value: {
            id: 'planned:obtain-special-flight-permit',
            from: moment.knowledgeDate(),
            through: moment.arrivalDate(),
            purpose: 'ferry to inspection',
          } satisfies PermitFact,
        },
      ],
    },
  ];
}
