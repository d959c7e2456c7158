/** Checkouts for a condition: what stands for the flight, and how one more would be flown. */
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted } from '../../../engine/rule.js';
import { CHECKOUT_CONDITION_WORD } from '../../../explain/words.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { Fact } from '../../../facts/fact.js';
import type { CheckoutCondition, CheckoutFact } from '../../../facts/person.js';
import { best, countedSignOff, goodThrough, signOffRemedy, stands } from '../checks/sign-offs.js';

/** Parameter that every rule about a condition declares: does the instructor need the checkout as well? */
export const CONDITION_INSTRUCTORS_TOO = 'club.condition-checkout.instructors-too';

/** Branches that rules about conditions share. */
export const CONDITION_BRANCHES = {
  'with-instructor': {
    status: 'not-applicable',
    says: 'Instruction is given, and the club asks its instructors for no checkout of this kind.',
  },
  signed: { status: 'met', says: 'A {what} checkout of {on} is on record{through}.' },
} as const;

/** The sign-off that lasts longest of those that stand; undefined where none does, or nothing is known of them. */
export function standingFor(
  condition: CheckoutCondition,
  checkouts: Fact<CheckoutFact[]>,
  moment: Moment,
): CheckoutFact | undefined {
  if (!checkouts.known) return undefined;
  return best(
    checkouts.value.filter(
      (one) => one.kind === 'condition' && one.condition === condition && stands(one, moment),
    ),
  );
}

/** What the branch `signed` is filled with, and what it counts. */
export const signedBy = (
  condition: CheckoutCondition,
  one: CheckoutFact,
): [Record<string, string>, { counted: Counted[] }] => {
  const what = CHECKOUT_CONDITION_WORD[condition];
  return [
    { what, on: one.on, through: goodThrough(one.expiresOn) },
    { counted: [countedSignOff(one, `${what} checkout`)] },
  ];
};

/** A flight with an instructor, who signs the condition off. A night checkout is flown at night, hence an act of its own. */
export function flyConditionCheckout(condition: CheckoutCondition, moment: Moment): Remedy {
  return signOffRemedy({
    act: condition === 'night' ? 'fly-night-checkout' : 'fly-condition-checkout',
    title: `Fly a ${CHECKOUT_CONDITION_WORD[condition]} checkout with an instructor, who signs it off.`,
    moment,
    fields: { kind: 'condition', modelId: null, aircraftId: null, condition },
  });
}

/** Neither rotorcraft nor balloons are held against the runways of a field. */
export const usesRunways = ({ category }: AircraftType): boolean =>
  category !== 'rotorcraft' && category !== 'lighter-than-air';
