/**
 * Ways to keep a rule whose text nobody here has seen: the few acts that clubs ask for are tried on the expressions
 * themselves, and only those that cure are offered.
 */
import { addDays } from '../calendar/dates.js';
import { decideCrew, optionsOf, type Crew } from '../engine/crew.js';
import type { Moment } from '../engine/moment.js';
import type { Effect, Remedy } from '../engine/remedy.js';
import type { FactView } from '../engine/rule.js';
import type { Fact, Known } from '../facts/fact.js';
import type { FlightFacts } from '../facts/flight.js';
import type { FactKey, FactValue } from '../facts/keys.js';
import type { LogFact } from '../facts/person.js';
import { leavePassengers } from '../packs/leave-passengers.js';
import { plannedLandings } from '../packs/planned-flight.js';
import { takeInstructor } from '../packs/take-instructor.js';
import type { CheckedRule } from './check.js';
import { hold, keeps } from './verdict.js';

/** Landings in the model that are tried, fewest first. */
const LANDINGS = [1, 2, 3, 4, 5, 6, 8, 10];
/** Days after the facts were gathered on which flights are tried; one that is past at the departure does not count. */
const DAYS_AHEAD = [0, 7, 14, 28, 56, 84, 112];

/** Acts after which the rule is kept, the easiest first. */
export function waysToKeep(rule: CheckedRule, f: FactView, moment: Moment): Remedy[] {
  const cures = (remedy: Remedy): boolean => {
    try {
      return keeps(hold(rule, new Hypothesis(f, remedy.effects), moment));
    } catch {
      return false;
    }
  };
  const landings = rule.reads.includes('pic.log') ? landingsTried(f, moment) : [];
  return [
    ...[landings.find(cures)].filter((one): one is Remedy => one !== undefined),
    ...[...takeInstructor(f.flight), ...leavePassengers(f)].filter(cures),
  ];
}

/** Landings in the model with an instructor beforehand. */
function landingsTried(f: FactView, moment: Moment): Remedy[] {
  if (!f.peek('pic.log').known || !typeKnown(f)) return [];
  const type = f.get('aircraft.type');
  return DAYS_AHEAD.flatMap((ahead) =>
    LANDINGS.map((count): Remedy => {
      const value: LogFact = {
        ...plannedLandings(type, count, false, moment),
        id: 'planned:fly-landings-model',
        departedAt: moment.hoursFromKnowledge(24 * ahead),
        on: addDays(moment.knowledgeDate(), ahead),
        role: 'dual-received',
      };
      return {
        act: 'fly-landings-model',
        title: `Fly ${count} landing${count === 1 ? '' : 's'} in the ${type.makeModel} with an instructor.`,
        by: 'instructor',
        effects: [{ op: 'append', fact: 'pic.log', value }],
      };
    }),
  );
}

/** A rule may not look at what it does not declare; without the type no flight in it can be planned. */
function typeKnown(f: FactView): boolean {
  try {
    return f.peek('aircraft.type').known;
  } catch {
    return false;
  }
}

/** The facts as they would be after some effects on the request and on lists. */
class Hypothesis implements FactView {
  readonly flight: FactView['flight'];
  readonly crew: Crew;
  private readonly appended = new Map<FactKey, object[]>();

  constructor(
    private readonly of: FactView,
    effects: readonly Effect[],
  ) {
    let changed: FactView['flight'] | null = null;
    for (const effect of effects) {
      if (effect.op === 'flight') changed = { ...(changed ?? of.flight), ...effect.fields };
      if (effect.op === 'append')
        this.appended.set(effect.fact, [...(this.appended.get(effect.fact) ?? []), effect.value]);
    }
    this.flight = changed ?? of.flight;
    // A second pilot who was crew as the flight was asked stays so.
    this.crew = changed ? decideCrew(changed as FlightFacts, optionsOf(of.flight, of.crew)) : of.crew;
  }

  peek<Q extends FactKey>(key: Q): Fact<FactValue<Q>> {
    if (this.crew.picId !== this.of.crew.picId && key.startsWith('pic.'))
      return { known: false, because: 'the pilot in command would be another' };
    const fact = this.of.peek(key);
    const more = this.appended.get(key);
    if (!more || !fact.known) return fact;
    return { ...(fact as Known<unknown>), value: [...(fact.value as unknown[]), ...more] } as Fact<
      FactValue<Q>
    >;
  }

  get<Q extends FactKey>(key: Q): FactValue<Q> {
    const fact = this.peek(key);
    if (fact.known) return fact.value;
    throw new Error(fact.because);
  }
}
