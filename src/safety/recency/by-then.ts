import type { LocalDate, PersonFacts } from '../../rules/index.js';

/** By which of its dates each record came to be. */
const BEGINS = {
  certificates: 'issuedOn',
  instructor: 'issuedOn',
  medicals: 'examOn',
  basicMed: 'examOn',
  reviews: 'on',
  endorsements: 'on',
  ratings: 'on',
  log: 'on',
  checkouts: 'on',
} as const satisfies Partial<Record<keyof PersonFacts, string>>;

/** A person's record as it was by the end of a day: without what was flown, issued or signed later. */
export function byThen(person: PersonFacts, on: LocalDate): PersonFacts {
  const then = Object.entries(BEGINS).map(([subject, key]) => {
    const fact = person[subject as keyof typeof BEGINS];
    if (!fact?.known) return [subject, fact];
    const value = (fact.value as unknown as Record<string, LocalDate | null>[]).filter((one) => {
      const began = one[key];
      return began === null || began === undefined || began <= on;
    });
    return [subject, { ...fact, value }];
  });
  return { ...person, ...(Object.fromEntries(then) as Partial<PersonFacts>) };
}
