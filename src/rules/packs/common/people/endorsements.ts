/** Endorsements that stand on a flight, and the remedy of getting one. */
import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Effect, Remedy } from '../../../engine/remedy.js';
import type { Counted } from '../../../engine/rule.js';
import type { EndorsementFact, EndorsementKind } from '../../../facts/person.js';
import { canStillAct, wouldServe } from './plans.js';

/** What narrows the search. */
export interface Wanted {
  kind: EndorsementKind;
  /** It must name this make and model; one that names none does not serve. */
  makeModel?: string;
  /** Where it names airfields, these must be among them; with `named` it must name them. */
  airfields?: readonly string[];
  named?: boolean;
  /** Only so many days. */
  withinDays?: number;
}

/** The newest endorsement that stands on the flight, or null. */
export function endorsementFor(
  endorsements: readonly EndorsementFact[],
  moment: Moment,
  wanted: Wanted,
): EndorsementFact | null {
  const standing = endorsements.filter(
    (one) =>
      one.kind === wanted.kind &&
      (wanted.makeModel === undefined || one.makeModel === wanted.makeModel) &&
      covers(one.airfields, wanted) &&
      (wanted.withinDays === undefined || moment.endsWithinDaysOf(one.on, wanted.withinDays)) &&
      (one.expiresOn === null || moment.endsOnOrBefore(one.expiresOn)) &&
      moment.startsOnOrAfter(one.on),
  );
  standing.sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.id < b.id ? -1 : 1));
  return standing[0] ?? null;
}

function covers(listed: readonly string[], { airfields, named }: Wanted): boolean {
  if (airfields === undefined || (listed.length === 0 && !named)) return true;
  return airfields.every((code) => listed.includes(code));
}

/** The endorsement as evidence. */
export const countedEndorsement = (one: EndorsementFact, what: string): Counted => ({
  id: one.id,
  on: one.on,
  what,
});

/** The effect of an endorsement given now. */
export function endorsed(moment: Moment, wanted: Wanted): Effect {
  return {
    op: 'append',
    fact: 'pic.endorsements',
    value: {
      id: `planned:endorsement-${wanted.kind}`,
      kind: wanted.kind,
      on: moment.knowledgeDate(),
      makeModel: wanted.makeModel ?? null,
      airfields: [...(wanted.airfields ?? [])],
      expiresOn: null,
    },
  };
}

/** Training and an endorsement by an instructor; nothing when it would no longer serve the flight. */
export function getEndorsement(moment: Moment, wanted: Wanted, title: string): Remedy[] {
  const days = wanted.withinDays;
  const serves =
    days === undefined ? canStillAct(moment) : wouldServe(moment, (today: LocalDate) => addDays(today, days));
  if (!serves) return [];
  return [
    {
      act: `get-endorsement-${wanted.kind}`,
      title,
      by: 'instructor',
      effects: [endorsed(moment, wanted)],
    },
  ];
}
