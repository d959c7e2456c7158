/** The timelines of a whole club share work between pairs; each must be what the pair's own timeline is. */
import fc from 'fast-check';
import {
  canonicalJson,
  clubTimelines,
  rulesetFor,
  timelineOf,
  toSeconds,
  type AircraftFacts,
  type FactSheet,
  type PersonFacts,
} from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { anySheet, runs, SEED } from './engine-sheets.js';

const POLICY = startingPolicy();
const DAY = 86_400;

/** A club of three members and four aircraft out of arbitrary sheets; two aircraft differ in registration only. */
function clubOf(sheets: readonly FactSheet[]): { members: PersonFacts[]; aircraft: AircraftFacts[] } {
  const members = sheets.map((sheet, index) => ({
    ...sheet.people['member-1']!,
    id: `member-${index + 10}`,
    name: `Member ${index}`,
  }));
  const aircraft = sheets.map((sheet, index) => ({ ...sheet.aircraft, id: `aircraft-${index}` }));
  const twin = sheets[0]!.aircraft;
  const { type } = twin;
  const renamed = type.known ? { ...type, value: { ...type.value, registration: 'ZZ-TWIN' } } : type;
  return { members, aircraft: [...aircraft, { ...twin, id: 'aircraft-twin', type: renamed }] };
}

describe(`timelines of a club (seed ${SEED})`, () => {
  test('each pair has its own timeline, whatever was shared', () => {
    const clubs = runs(60);
    let pairs = 0;
    let shared = 0;
    const triples = fc.sample(fc.tuple(anySheet, anySheet, anySheet), { seed: SEED, numRuns: clubs });
    for (const sheets of triples) {
      const base = sheets[0];
      const ruleset = rulesetFor(base.jurisdiction, POLICY);
      const from = toSeconds(base.flight.departs);
      const span = { from, to: from + 45 * DAY };
      const { members, aircraft } = clubOf(sheets);
      // The named instructor is a member like the others, and may ask too.
      const everybody = [...members, base.people['instructor-1']!];
      const { aircraft: _one, ...rest } = base;
      const people = { 'instructor-1': base.people['instructor-1']! };
      const question = { base: { ...rest, people }, members: everybody, aircraft, ruleset, span };
      for (const { memberId, aircraftId, ...found } of clubTimelines(question)) {
        const member = everybody.find(({ id }) => id === memberId)!;
        const sheet: FactSheet = {
          ...rest,
          flight: { ...base.flight, memberId },
          people: { ...people, [memberId]: member },
          aircraft: aircraft.find(({ id }) => id === aircraftId)!,
        };
        expect(canonicalJson(found)).toBe(canonicalJson(timelineOf(sheet, ruleset, span)));
        pairs += 1;
        if (found.steps.length > 1) shared += 1;
      }
    }
    expect(pairs).toBe(clubs * 4 * 4);
    expect(shared).toBeGreaterThan(clubs / 3);
  });
});
