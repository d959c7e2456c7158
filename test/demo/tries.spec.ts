/** What the demo prints is what the engine answers, whatever the date. */
import { aircraftBy } from '../../src/demo/fleet/aircraft.js';
import { generateClub } from '../../src/demo/generate.js';
import { DEMO_SEED } from '../../src/demo/ids.js';
import { signInLines } from '../../src/demo/sign-in.js';
import { blocks, decide, rulesetFor, toSeconds, type Answer } from '../../src/rules/index.js';
import { policyOf, sheetOf } from './sheet-of.js';

const ALL: Answer[] = ['yes', 'yes-with-conditions', 'dual-only', 'ask-officer', 'no'];
/** The answer alone is under test here; how far it holds is not searched. */
const NO_HORIZON = { days: 0, stepsPerRule: 1 };

describe.each([
  ['a late autumn morning', '2026-11-25T15:00:00Z'],
  ['the last day of February', '2027-02-28T18:00:00Z'],
  ['the middle of a summer night', '2027-07-04T08:30:00Z'],
  ['the last second of a leap day', '2028-03-01T06:59:59Z'],
])('%s', (_name, asOf) => {
  const club = generateClub({ seed: DEMO_SEED, asOf });
  const policy = policyOf(club);
  const ruleset = rulesetFor('US', policy);
  const answers = club.tries.map((one) => ({
    one,
    decision: decide(
      sheetOf(club, one.ask, aircraftBy(one.aircraft).id),
      policy,
      ruleset,
      one.ask.departs,
      NO_HORIZON,
    ),
  }));

  it('gives every try the answer that is printed', () => {
    const wrong = answers
      .filter(({ one, decision }) => decision.answer !== one.answer)
      .map(({ one, decision }) => ({
        who: one.person.story.name,
        aircraft: one.aircraft,
        what: one.what,
        printed: one.answer,
        is: decision.answer,
        blocking: decision.findings.filter(blocks).map((finding) => `${finding.rule}: ${finding.says}`),
      }));
    expect(wrong).toEqual([]);
  });

  it('gives the same answers to flights told with who, what, when and where alone, but for those marked', () => {
    const wrong = club.tries.flatMap((one) => {
      const { memberId, departs, arrives, purpose, personsOnBoard, instructorId, flightRules, route } =
        one.ask;
      const plannedHours = (toSeconds(arrives) - toSeconds(departs)) / 3600;
      const ask = {
        memberId,
        departs,
        arrives,
        purpose,
        personsOnBoard,
        instructorId,
        flightRules,
        route,
        plannedHours,
      };
      const sheet = sheetOf(club, ask, aircraftBy(one.aircraft).id);
      const { answer } = decide(sheet, policy, ruleset, departs, NO_HORIZON);
      return (answer === one.answer) === one.tells ? [`${one.person.story.key}, ${one.what}: ${answer}`] : [];
    });
    expect(wrong).toEqual([]);
  });

  it('has every kind of answer, each with a named member', () => {
    expect(new Set(answers.map(({ decision }) => decision.answer))).toEqual(new Set(ALL));
  });

  it.each([
    ['tobias', 'sprig-2', 'student.solo'],
    ['pavel', 'sprig-2', 'student.solo'],
    ['corinne', 'almanac', 'recency.passengers.day'],
    ['olga', 'almanac', 'club.differences_checkout'],
    ['greta', 'sprig-2', 'review.flight_24_months'],
    ['nadia', 'sprig-2', 'medical.certificate'],
    ['dolores', 'sprig-2', 'medical.basicmed'],
    ['clive', 'sprig-2', 'club.standing'],
    ['rex', 'sprig-2', 'club.standing'],
    ['felix', 'sprig-2', 'club.membership'],
  ])('%s in %s is held up by %s', (key, aircraft, rule) => {
    const found = answers.find(({ one }) => one.person.story.key === key && one.aircraft === aircraft)!;
    expect(found.decision.findings.filter(blocks).map((finding) => finding.rule)).toContain(rule);
  });

  it.each([
    ['ines', 'a lesson of three hours', 'inspection.hours_100'],
    ['henrik', 'a lesson with Otis', 'instructor.recent_experience'],
    ['ines', 'a lesson after dark', 'equipment.night_vfr'],
    ['henrik', 'after dark', 'recency.passengers.night'],
    ['gideon', 'instrument', 'recency.instrument'],
    ['bettina', 'instrument', 'recency.instrument'],
    ['roscoe', 'instrument', 'check.vor_30_days'],
    ['roscoe', 'in 30 days', 'elt.battery'],
    ['roscoe', 'alone, by day', 'squawk.grounding'],
    ['sven', 'transponder on', 'inspection.transponder'],
    ['yusuf', 'in 44 days', 'medical.certificate'],
    ['ada', 'Sparrow Pass', 'recreational.limits'],
  ])('%s, "%s", is held up by %s', (key, words, rule) => {
    const found = answers.find(({ one }) => one.person.story.key === key && one.what.includes(words))!;
    expect(found.decision.findings.filter(blocks).map((finding) => finding.rule)).toContain(rule);
  });

  it('prints each of them', () => {
    const lines = signInLines({ url: 'http://127.0.0.1:1', people: club.people, tries: club.tries }).join(
      '\n',
    );
    for (const { one } of answers) {
      expect(lines).toContain(one.person.email);
      expect(lines).toContain(one.because);
    }
    expect(lines).toContain('quill-mesa-demo');
    expect(lines).toContain('fly-safely-demo');
  });
});
