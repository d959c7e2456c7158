/**
 * Timelines of a whole club: every member on every aircraft over a span, one after the other.
 *
 * Most of what the rules find is the same for many pairs: what hangs on the aircraft alone is found once an aircraft,
 * what hangs on the member alone once a member, and aircraft of one type are one for the rules that never look at the
 * registration. What is kept of a member is dropped with the member, so memory does not grow
 * with members; it grows with the steps of the aircraft alone.
 */
import type { AircraftFacts, AircraftType } from '../facts/aircraft.js';
import { personInRole, type FactKey, type Role } from '../facts/keys.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet } from '../facts/sheet.js';
import { canonicalJson } from './digest.js';
import { Instances, stepsOf, type VerdictSteps } from './follow.js';
import type { Ruleset } from './judge.js';
import type { Crew } from './crew.js';
import type { Rule } from './rule.js';
import { MOST_STEPS, timelineOf, type Span, type StepsFor, type Timeline } from './timeline.js';

/** The flight asked about, and for whom and in what. `flight.memberId` is set for each member in turn. */
export interface ClubQuestion {
  /** Everything of a sheet but the member and the aircraft; `people` holds those the flight names, such as the instructor. */
  base: Omit<FactSheet, 'aircraft'>;
  members: readonly PersonFacts[];
  aircraft: readonly AircraftFacts[];
  ruleset: Ruleset;
  span: Span;
}

/** One member on one aircraft. */
export interface PairTimeline extends Timeline {
  memberId: string;
  aircraftId: string;
}

/** Member by member, and for each of them aircraft by aircraft. */
export function* clubTimelines(question: ClubQuestion): Generator<PairTimeline> {
  const { base, members, aircraft, ruleset, span } = question;
  const types = new Map<string, number>();
  const hangars = aircraft.map((one) => new Hangar(one, types));
  const shared = new Map<string, VerdictSteps>();
  for (const member of members) {
    const own = new Map<string, VerdictSteps>();
    for (const hangar of hangars) {
      const sheet: FactSheet = {
        ...base,
        flight: { ...base.flight, memberId: member.id },
        people: { ...base.people, [member.id]: member },
        aircraft: hangar.aircraft,
      };
      const stepsFor = sharing({ member, hangar, ruleset, span, own, shared });
      yield { memberId: member.id, aircraftId: hangar.id, ...timelineOf(sheet, ruleset, span, stepsFor) };
    }
  }
}

/** An aircraft whose registration tells when it is looked at. */
class Hangar {
  readonly id: string;
  readonly aircraft: AircraftFacts;
  /** The same for all aircraft whose types differ in nothing but the registration. */
  readonly typeKey: string;
  registrationRead = false;

  constructor(aircraft: AircraftFacts, types: Map<string, number>) {
    this.id = aircraft.id;
    const { type } = aircraft;
    const text = canonicalJson(type.known ? { ...type, value: { ...type.value, registration: '' } } : type);
    if (!types.has(text)) types.set(text, types.size);
    this.typeKey = `type ${types.get(text)!}`;
    this.aircraft = !type.known
      ? aircraft
      : { ...aircraft, type: { ...type, value: this.watched(type.value) } };
  }

  private watched(type: AircraftType): AircraftType {
    return Object.defineProperty({ ...type }, 'registration', {
      enumerable: true,
      get: () => {
        this.registrationRead = true;
        return type.registration;
      },
    });
  }
}

interface Sharing {
  member: PersonFacts;
  hangar: Hangar;
  ruleset: Ruleset;
  span: Span;
  own: Map<string, VerdictSteps>;
  shared: Map<string, VerdictSteps>;
}

/** Gives a rule's steps from those kept for this member, or for everybody, where they hang on the same facts. */
function sharing({ member, hangar, ruleset, span, own, shared }: Sharing): StepsFor {
  const seen = new Map<FactSheet, { instances: Instances; crew: Crew; part: string }>();
  return (rule, sheet) => {
    let of = seen.get(sheet);
    if (!of) {
      const instances = new Instances(sheet, ruleset);
      seen.set(sheet, (of = { instances, crew: instances.at(span.from).crew, part: `${seen.size}` }));
    }
    const kept = readsMember(rule, sheet, of.crew, member.id) ? own : shared;
    const key = `${of.part} ${rule.id} `;
    const aircraft = aircraftReads(rule);
    const anyOf = aircraft === 'nothing' ? key : aircraft === 'type' ? key + hangar.typeKey : null;
    const one = key + hangar.id;
    const known = (anyOf === null ? undefined : kept.get(anyOf)) ?? kept.get(one);
    if (known) return known;
    hangar.registrationRead = false;
    const steps = stepsOf(rule, sheet, ruleset, span, MOST_STEPS, of.instances);
    kept.set(anyOf !== null && !hangar.registrationRead ? anyOf : one, steps);
    return steps;
  };
}

const roleOf = (key: FactKey): string => key.slice(0, key.indexOf('.'));

function readsMember(rule: Rule, sheet: FactSheet, crew: Crew, memberId: string): boolean {
  return rule.reads.some((key) => {
    const role = roleOf(key);
    return role !== 'aircraft' && personInRole(sheet, crew, role as Role) === memberId;
  });
}

/** How much of the aircraft a rule reads. */
const aircraftReads = (() => {
  const known = new WeakMap<Rule, 'nothing' | 'type' | 'more'>();
  return (rule: Rule): 'nothing' | 'type' | 'more' => {
    let much = known.get(rule);
    if (much === undefined) {
      const keys = rule.reads.filter((key) => roleOf(key) === 'aircraft');
      much = keys.length === 0 ? 'nothing' : keys.every((key) => key === 'aircraft.type') ? 'type' : 'more';
      known.set(rule, much);
    }
    return much;
  };
})();
