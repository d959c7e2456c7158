/** Club sign-offs: which stand for a flight, and how one more would be recorded. */
import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { Counted } from '../../../engine/rule.js';
import type { CheckoutFact } from '../../../facts/person.js';

/** Signed before the flight starts, and not run out before it ends. */
export function stands(signOff: CheckoutFact, moment: Moment): boolean {
  return (
    moment.startsOnOrAfter(signOff.on) &&
    (signOff.expiresOn === null || moment.endsOnOrBefore(signOff.expiresOn))
  );
}

/** Of several sign-offs the one that lasts longest counts; among equals the newest, then by id. */
export function best(signOffs: readonly CheckoutFact[]): CheckoutFact | undefined {
  const lasts = (one: CheckoutFact): LocalDate => one.expiresOn ?? '9999-12-31';
  const order = (one: CheckoutFact): string => `${lasts(one)} ${one.on} ${one.id}`;
  return [...signOffs].sort((a, b) => (order(a) < order(b) ? 1 : -1))[0];
}

export const countedSignOff = (one: CheckoutFact, what: string): Counted => ({
  id: one.id,
  on: one.on,
  what,
});

/** ', good through 2027-03-01', or nothing for what does not end. */
export const goodThrough = (expiresOn: LocalDate | null): string =>
  expiresOn === null ? '' : `, good through ${expiresOn}`;

/** What a sign-off still to be made is for. */
type Planned = Pick<CheckoutFact, 'kind' | 'modelId' | 'aircraftId' | 'equipmentGroup' | 'condition'>;

/** A checkout flight with an instructor who signs it off, or several things shown on one. */
export function signOffRemedy(of: {
  act: string;
  title: string;
  moment: Moment;
  fields: Planned | readonly Planned[];
  /** Days after the facts were gathered. */
  daysAhead?: number;
}): Remedy {
  const all = 'kind' in of.fields ? [of.fields] : of.fields;
  return {
    act: of.act,
    title: of.title,
    by: 'instructor',
    effects: all.map((fields, index) => {
      const value: CheckoutFact = {
        id: `planned:${of.act}${index === 0 ? '' : `:${index + 1}`}`,
        equipmentGroup: null,
        condition: null,
        alsoModelIds: [],
        ...fields,
        on: addDays(of.moment.knowledgeDate(), of.daysAhead ?? 0),
        expiresOn: null,
        signedById: 'planned',
      };
      return { op: 'append', fact: 'pic.checkouts', value };
    }),
  };
}
