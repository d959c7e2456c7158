/**
 * Worked scenarios of published guidance, with their dates and hours: each YAML file names its sources, says whether they
 * were seen or recalled, and states what must come out. Held against them are the rule through time, the whole answer
 * through time, every edge judged anew on both sides, and the ways to yes with each plan judged anew on its own facts.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Temporal } from 'temporal-polyfill';
import { toInstant, toSeconds } from '../../../src/rules/index.js';
import * as play from './play.js';
import { readScenario, type Scenario } from './read.js';

const scenarios: Scenario[] = ['us', 'eu', 'ca'].flatMap((folder) =>
  readdirSync(join(__dirname, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => readScenario(`${folder}/${name}`, readFileSync(join(__dirname, folder, name), 'utf8'))),
);

// Where the engine is known to say otherwise, the difference is told in the file and must show.
const check = ({ differs }: { differs?: string }) => (differs === undefined ? test : test.failing);

describe.each(scenarios.map((scenario) => [`${scenario.title} [${scenario.file}]`, scenario] as const))(
  '%s',
  (_title, scenario) => {
    const { timeline, cases, ways } = scenario;

    if (timeline) {
      const sheet = play.sheetOfTimeline(scenario);
      const edges = timeline.steps.slice(0, -1).map((step) => play.endOf(step, sheet));

      check(timeline)(`${scenario.rule} from ${timeline.from} to ${timeline.to}`, () => {
        const wanted = play.runsWanted(scenario, sheet);
        expect(play.settled(play.runsFound(scenario, sheet), wanted, scenario)).toEqual(wanted);
      });

      check(timeline)('the answer turns with it, and nothing else stands in the way', () => {
        const wanted = play.answersWanted(scenario, sheet);
        expect(play.settled(play.answersFound(scenario, sheet), wanted, scenario)).toEqual(wanted);
      });

      edges.forEach((edge, index) => {
        check(timeline)(`judged anew a second before and at ${toInstant(edge)}`, () => {
          const { toleranceSeconds } = timeline;
          const at = [edge - 1 - toleranceSeconds, edge + toleranceSeconds];
          const sides = at.map((departs) => play.judgedAt(sheet, departs));
          const wanted = [timeline.steps[index]!, timeline.steps[index + 1]!];
          sides.forEach((side, which) => {
            const { status, branch } = play.findingOf(side, scenario.rule);
            const want = wanted[which]!;
            expect([status, want.branch === undefined ? undefined : branch]).toEqual([want.is, want.branch]);
          });
          const answers = play.answersWanted(scenario, sheet);
          sides.forEach((decision, side) => {
            const when = toInstant(at[side]!);
            const { yes } = answers.filter(({ from }) => from <= when).at(-1)!;
            const { besides } = timeline;
            const dark = besides !== undefined && play.findingOf(decision, besides).status === 'short';
            expect([when, play.isYes(decision.answer)]).toEqual([when, yes && !dark]);
          });
        });
      });
    }

    for (const line of cases)
      check(line)(line.says, () => {
        const sheet = play.sheetOfCase(scenario, line);
        const finding = play.findingOf(play.judgedAt(sheet, toSeconds(line.departs)), scenario.rule);
        expect([finding.status, finding.says]).toEqual([line.is, finding.says]);
        if (line.branch !== undefined) expect(finding.branch).toBe(line.branch);
        for (const part of line.tells ?? []) expect(finding.says).toContain(part);
        if (line.through !== undefined)
          expect(toInstant(play.changesAt(scenario, sheet)!)).toBe(
            toInstant(play.dayOver(line.through, sheet)),
          );
      });

    for (const line of ways)
      check(line)(`way: ${line.says}`, () => {
        const sheet = play.sheetOfWay(scenario, line);
        const { ways: found, proofs } = play.waysFor(sheet);
        expect(found.bound).toBeNull();
        expect(play.isYes(found.answer)).toBe(false);

        const plain = found.plans.find(({ rests }) => rests.length === 0);
        expect(plain ? plain.steps.map(({ act }) => act) : 'none').toEqual(line.acts);
        if (line.because) {
          expect(found.plans).toEqual([]);
          expect(found.none!.because).toEqual([
            expect.objectContaining({
              rule: line.because.rule,
              why: expect.stringContaining(line.because.why) as string,
            }),
          ]);
        }
        if (line.later !== undefined) {
          const { departs, way } = found.later!;
          expect(toInstant(toSeconds(departs))).toBe(departs);
          expect(Temporal.Instant.from(departs).toZonedDateTimeISO(sheet.zone).toPlainDate().toString()).toBe(
            line.later,
          );
          expect(way.steps.length).toBeGreaterThan(0);
        }

        const offered = play.findingOf(play.judgedAt(sheet, toSeconds(line.departs)), scenario.rule).remedies;
        const acts = [
          ...offered.map(({ act }) => act),
          ...found.plans.flatMap(({ steps }) => steps.map(({ act }) => act)),
        ];
        expect(acts.filter((act) => line.never.includes(act))).toEqual([]);

        // Each plan is judged anew, by the engine's front door, on the facts as they would then be.
        for (const { way, sheet: then } of proofs) {
          const decision = play.judgedAt(then, toSeconds(then.flight.departs));
          expect(decision.answer).toBe(way.answer);
          if (way.rests.length === 0) expect(play.isYes(decision.answer)).toBe(true);
        }
        const proof = proofs.find(({ way }) => way === plain);
        if (proof)
          expect(
            play.findingOf(play.judgedAt(proof.sheet, toSeconds(line.departs)), scenario.rule).status,
          ).not.toBe('short');
        if (proof && line.through !== undefined)
          expect(toInstant(play.changesAt(scenario, proof.sheet)!)).toBe(
            toInstant(play.dayOver(line.through, proof.sheet)),
          );
      });
  },
);
