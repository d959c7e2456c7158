import type { FlightFacts } from '../../facts/flight.js';
import type { PersonFacts } from '../../facts/person.js';
import type { FactSheet } from '../../facts/sheet.js';
import { leavePassengers } from '../../packs/leave-passengers.js';
import { departureOf, type Change, type Offer, type State } from '../state.js';
import { judgeVerdicts } from '../verdicts.js';
import * as words from '../words.js';
import type { World } from '../world.js';
import { ownOffer } from './offer.js';

const MOST_INSTRUCTORS = 3;

/** An instructor for the flight: one who is named and whose own papers are in order, or one still to be found. */
export function instructors(world: World, state: State): Offer[] {
  const { sheet, verdicts } = state;
  const { flight } = sheet;
  const taught = verdicts.crew.instruction;
  if (taught ? flight.instructorId !== null : flight.purpose !== 'solo' && flight.purpose !== 'passengers')
    return [];
  const fields: Partial<FlightFacts> = taught
    ? {}
    : {
        purpose: 'dual',
        instructorId: null,
        secondPilotId: null,
        actingPilotId: null,
        secondPilotRequired: false,
        personsOnBoard: flight.personsOnBoard + 1,
      };
  const act = taught ? 'name-instructor' : 'fly-with-instructor';
  const named = (world.question.instructors ?? [])
    .filter(({ id }) => id !== flight.memberId)
    .filter((person) => mayTeach(world, sheet, person, fields))
    .sort((a, b) => (a.name === b.name ? (a.id < b.id ? -1 : 1) : a.name < b.name ? -1 : 1))
    .slice(0, MOST_INSTRUCTORS)
    .map((person) => {
      const title = taught ? words.nameInstructor(person.name) : words.takeInstructorNamed(person.name);
      const change: Change = {
        is: 'parts',
        people: [person],
        flight: { ...fields, instructorId: person.id },
      };
      return ownOffer(world, act, title, change, { by: 'instructor' });
    });
  if (taught) return named;
  const open: Change = { is: 'effects', effects: [{ op: 'flight', fields }] };
  if (world.aim !== 'instructor') return named;
  return [ownOffer(world, act, words.TAKE_INSTRUCTOR, open, { by: 'instructor' })];
}

function mayTeach(
  world: World,
  sheet: FactSheet,
  person: PersonFacts,
  fields: Partial<FlightFacts>,
): boolean {
  const asked: FactSheet = {
    ...sheet,
    people: { ...sheet.people, [person.id]: person },
    flight: { ...sheet.flight, ...fields, instructorId: person.id },
  };
  const { blocking } = judgeVerdicts(asked, world.ruleset, departureOf(asked));
  return blocking.every((rule) => {
    const { binds } = world.ruleset.rules[rule]!;
    return binds !== 'pilot' && binds !== 'instructor';
  });
}

/** Passengers can stay at home whatever stands in the way, and be it that something is not on record. */
export function withoutPassengers(world: World, state: State): Offer[] {
  const { crew } = state.verdicts;
  if (crew.passengers === 0) return [];
  return leavePassengers({ flight: state.sheet.flight, crew }).map(({ act, title, effects }) =>
    ownOffer(world, act, title, { is: 'effects', effects }),
  );
}
