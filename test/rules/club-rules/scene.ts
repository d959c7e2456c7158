/** Rules of a club judged on the workshop's base sheet. */
import {
  decideCrew,
  judgeRule,
  known,
  rulesOfClub,
  toSeconds,
  unknownFact,
  type ClubRule,
  type FactSheet,
  type Finding,
  type PersonFacts,
} from '../../../src/rules/index.js';
import { ParameterBook } from '../../../src/rules/engine/parameters.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { LOG } from '../../../src/rules/workshop/records.js';

export const KNOWN_AT = '2027-02-28T18:00:00Z';
export const BOOK = new ParameterBook([], { values: [] });

/** A rule of which only what matters to the test is said. */
export const rule = (of: Partial<ClubRule> = {}): ClubRule => ({
  code: 'club.own.test',
  version: 1,
  title: 'Test',
  weight: 'club',
  appliesWhen: 'true',
  requirement: 'true',
  message: 'Not kept.',
  condition: null,
  document: 'Handbook, section 9',
  from: '2020-01-01',
  to: null,
  ...of,
});

/** What the rule says of the sheet at a departure (the sheet's own unless given). */
export function judged(of: Partial<ClubRule> | ClubRule[], sheet: FactSheet = baseSheet(), at?: number) {
  const [one] = rulesOfClub(Array.isArray(of) ? of : [rule(of)]);
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  return judgeRule(one!, sheet, { rules: [one!], book: BOOK }, crew, at ?? toSeconds(sheet.flight.departs));
}

export const finding = (of: Partial<ClubRule> | ClubRule[], sheet?: FactSheet): Finding =>
  judged(of, sheet).finding;
/** Status of a requirement on the sheet. */
export const status = (requirement: string, sheet?: FactSheet): string =>
  finding({ requirement }, sheet).status;

/** The base sheet with some facts of the member replaced. */
export function memberWith(
  facts: Partial<PersonFacts>,
  flight: Partial<FactSheet['flight']> = {},
): FactSheet {
  const sheet = baseSheet();
  return {
    ...sheet,
    flight: { ...sheet.flight, ...flight },
    people: { ...sheet.people, 'member-1': { ...sheet.people['member-1']!, ...facts } },
  };
}

/** A flight of the log. */
export const flown = (on: string, of: Partial<typeof LOG> = {}) => ({
  ...LOG,
  id: `log-${on}`,
  on,
  departedAt: `${on}T18:00:00Z`,
  landings: 1,
  takeoffs: 1,
  ...of,
});

/** The member's whole record of flying: entries, and sums of what lies before. */
export const flying = (entries: ReturnType<typeof flown>[], earlierTenths = 0): Partial<PersonFacts> => ({
  log: known(entries, KNOWN_AT),
  logBefore: known(
    {
      through: earlierTenths > 0 ? '2020-01-01T12:00:00Z' : null,
      sums:
        earlierTenths > 0
          ? [
              {
                ...{ modelId: 'model-lark', category: 'airplane', class: 'single-engine-land' },
                ...{ tailwheel: false, role: 'pilot-in-command', flights: 40, landings: 90 },
                ...{ totalTenths: earlierTenths, nightTenths: 20, dualGivenTenths: 0 },
              },
            ]
          : [],
    },
    KNOWN_AT,
  ),
});

export const NOTHING = unknownFact('it is not on record');
