/** The search's own offers: other aircraft, instructors, papers that wait, another time, an officer's leave. */
import { toInstant, toSeconds, type EpochSeconds } from '../calendar/instants.js';
import { canonicalJson } from '../engine/digest.js';
import type { FlightFacts } from '../facts/flight.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet } from '../facts/sheet.js';
import { leavePassengers } from '../packs/leave-passengers.js';
import { partsOf } from './acts.js';
import { onlyOverridable } from './advance.js';
import { departureOf, type Change, type Offer, type State } from './state.js';
import { judgeVerdicts } from './verdicts.js';
import type { World } from './world.js';
import * as words from './words.js';

const MOST_AIRCRAFT = 4;
const MOST_INSTRUCTORS = 3;
/** How far a flight is moved to get out of the way of another. */
const MOVED_AT_MOST = 24 * 3600;
const STEP = 300;

const offer = (
  world: World,
  act: string,
  title: string,
  change: Change,
  more: Partial<Pick<Offer, 'by' | 'person'>> = {},
): Offer => ({
  act,
  title,
  by: 'member',
  entries: partsOf(act, [], world.look),
  change,
  askers: [],
  person: null,
  notBefore: world.start,
  meaning: `${act} ${more.person ?? ''} ${change.is === 'effects' ? canonicalJson(change.effects) : title}`,
  ...more,
});

/** Changes of the request that no rule offers. Another aircraft comes before anything else. */
export function ownRequests(world: World, state: State): readonly Offer[] {
  const key = `${world.aim} ${state.key}`;
  let own = world.own.get(key);
  if (!own) {
    own = [
      ...(state.parent === null ? otherAircraft(world, state) : []),
      ...instructors(world, state),
      ...withoutPassengers(state, world),
      ...anotherTime(world, state),
    ];
    world.own.set(key, own);
  }
  return own;
}

/** Aircraft that fare no worse on any count are not worth a look; of several that fare alike, one like that asked for. */
function otherAircraft(world: World, state: State): Offer[] {
  const { sheet, verdicts } = state;
  const model = sheet.aircraft.type.known ? sheet.aircraft.type.value.modelId : null;
  const seen = new Set<string>();
  return (world.question.alternatives ?? [])
    .flatMap(({ aircraft, route }) => {
      const type = aircraft.type.known ? aircraft.type.value : null;
      if (aircraft.id === sheet.aircraft.id || !type) return [];
      const flight = { ...(route && { route }) };
      const asked: FactSheet = { ...sheet, aircraft, flight: { ...sheet.flight, ...flight } };
      const { blocking } = judgeVerdicts(asked, world.ruleset, departureOf(asked));
      const like = type.modelId === model ? '0' : '1';
      const title = words.takeOtherAircraft(type.registration, type.makeModel);
      const change: Change = { is: 'parts', aircraft, flight };
      return [
        {
          blocking,
          order: `${like} ${type.registration} ${aircraft.id}`,
          offer: offer(world, 'take-other-aircraft', title, change),
        },
      ];
    })
    .filter(({ blocking }) => verdicts.blocking.some((rule) => !blocking.includes(rule)))
    .sort((a, b) => (a.order < b.order ? -1 : 1))
    .filter(({ blocking }) => {
      const key = blocking.join();
      return seen.has(key) ? false : seen.add(key);
    })
    .slice(0, MOST_AIRCRAFT)
    .map((one) => one.offer);
}

/** An instructor for the flight: one who is named and whose own papers are in order, or one still to be found. */
function instructors(world: World, state: State): Offer[] {
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
      return offer(world, act, title, change, { by: 'instructor' });
    });
  if (taught) return named;
  const open: Change = { is: 'effects', effects: [{ op: 'flight', fields }] };
  if (world.aim !== 'instructor') return named;
  return [offer(world, act, words.TAKE_INSTRUCTOR, open, { by: 'instructor' })];
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
function withoutPassengers(state: State, world: World): Offer[] {
  const { crew } = state.verdicts;
  if (crew.passengers === 0) return [];
  return leavePassengers({ flight: state.sheet.flight, crew }).map(({ act, title, effects }) =>
    offer(world, act, title, { is: 'effects', effects }),
  );
}

const CALENDARS = ['calendar.aircraft_free', 'calendar.member_free', 'calendar.instructor_free'];

/** The nearest times, later and earlier, at which aircraft and people are free. */
function anotherTime(world: World, state: State): Offer[] {
  const { sheet, verdicts } = state;
  if (!verdicts.blocking.some((rule) => CALENDARS.includes(world.ruleset.rules[rule]!.id))) return [];
  const taken = takenTimes(sheet);
  const departs = departureOf(sheet);
  const length = toSeconds(sheet.flight.arrives) - departs;
  return [1, -1].flatMap((way) => {
    const at = freeTime(taken, departs, length, way);
    if (at === null || at < world.start || Math.abs(at - departs) > MOVED_AT_MOST) return [];
    const flight = { departs: toInstant(at), arrives: toInstant(at + length) };
    const title = words.leaveAtAnotherTime(at, at + length, sheet.zone);
    return [
      offer(world, 'leave-at-another-time', title, {
        is: 'effects',
        effects: [{ op: 'flight', fields: flight }],
      }),
    ];
  });
}

function takenTimes({ aircraft, people, flight }: FactSheet): { from: EpochSeconds; to: EpochSeconds }[] {
  const { reservations } = aircraft;
  const commitments = [flight.memberId, flight.instructorId].flatMap((id) => {
    const fact = id === null ? undefined : people[id]?.commitments;
    return fact?.known ? fact.value : [];
  });
  return [...(reservations.known ? reservations.value : []), ...commitments].map(({ from, to }) => ({
    from: toSeconds(from),
    to: toSeconds(to),
  }));
}

function freeTime(
  taken: readonly { from: EpochSeconds; to: EpochSeconds }[],
  departs: EpochSeconds,
  length: number,
  way: number,
): EpochSeconds | null {
  let at = departs;
  for (let tries = 0; tries <= taken.length; tries += 1) {
    const clash = taken.filter(({ from, to }) => from < at + length && to > at);
    if (clash.length === 0) return at === departs ? null : at;
    at =
      way > 0
        ? Math.ceil(Math.max(...clash.map(({ to }) => to)) / STEP) * STEP
        : Math.floor((Math.min(...clash.map(({ from }) => from)) - length) / STEP) * STEP;
  }
  return null;
}

/** Papers entered and not verified yet: what they show counts once an officer has seen them. */
export function waitingPapers(world: World, state: State): Offer[] {
  const { sheet } = state;
  return Object.entries(world.question.verified ?? {})
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([id, person]) => {
      const now = sheet.people[id];
      if (!now?.unverified.known || now.unverified.value.length === 0 || world.closed.has(id)) return [];
      const papers = now.unverified.value.map(({ what, on }) => (on === null ? what : `${what} of ${on}`));
      const title = words.verifyPapers(papers.sort());
      return [
        offer(
          world,
          'have-papers-verified',
          title,
          { is: 'parts', papers: person },
          { by: 'officer', person: id },
        ),
      ];
    });
}

/** The leave of an officer, once nothing but what an officer may set aside is in the way. */
export function officersLeave(world: World, state: State): Offer[] {
  if (world.aim !== 'officer' || !world.mayOverride || !onlyOverridable(world, state)) return [];
  const titles = state.verdicts.blocking.map((rule) => world.ruleset.rules[rule]!.title);
  return [offer(world, 'ask-officer', words.askOfficer(titles), { is: 'leave' }, { by: 'officer' })];
}
