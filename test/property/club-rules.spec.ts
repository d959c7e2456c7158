/**
 * The club's rules on arbitrary sheets: a verdict holds from one change point to the next, and what is not known never
 * turns into a pass.
 */
import fc from 'fast-check';
import {
  addDays,
  decideCrew,
  judgeRule,
  known,
  rulesOfClub,
  SCHEMA,
  toInstant,
  toSeconds,
  unknownFact,
  type ClubRule,
  type Entry,
  type FactSheet,
  type Finding,
  type Rule,
} from '../../src/rules/index.js';
import { ParameterBook } from '../../src/rules/engine/parameters.js';
import { anySheet, runs, SEED } from './engine-sheets.js';
import { KNOWN_AT, TODAY } from './engine-parts.js';

const BOOK = new ParameterBook([], { values: [] });
const written = (of: Partial<ClubRule>): Rule =>
  rulesOfClub([
    {
      ...{
        code: 'club.own.any',
        version: 1,
        title: 'Any',
        weight: 'club',
        appliesWhen: 'true',
        requirement: 'true',
      },
      ...{ message: 'Not kept.', condition: null, document: 'Handbook', from: '2000-01-01', to: null, ...of },
    } as ClubRule,
  ])[0]!;

function judge(rule: Rule, sheet: FactSheet, at: number): { finding: Finding; nextChange: number | null } {
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  return judgeRule(rule, sheet, { rules: [rule], book: BOOK }, crew, at);
}

const pick = <T>(...of: T[]): fc.Arbitrary<T> => fc.constantFrom(...of);
const within = (least: number, most: number): fc.Arbitrary<number> => fc.integer({ min: least, max: most });
const date = within(-800, 400).map((days) => `date("${addDays(TODAY, days)}")`);
const clock = fc
  .tuple(within(0, 23), within(0, 59))
  .map(([h, m]) => `"${String(h).padStart(2, '0')}:${String(m).padStart(2, '0')}"`);
const person = pick('pilot', 'member', 'instructor');
const order = pick('<', '<=', '>', '>=');

/** The argument of a method, as it is written. */
function argument(entry: Entry): fc.Arbitrary<string> {
  switch (entry.takes?.kind) {
    case 'days':
      return pick(0, 1, 7, 30, 60, 90, 180, 365, 730).map((days) => `(${days})`);
    case 'hours':
      return pick(0, 1, 24, 72, 1000).map((hours) => `(${hours})`);
    case 'clock':
      return clock.map((text) => `(${text})`);
    case 'Date':
      return fc
        .oneof(
          date,
          person.map((who) => `${who}.lastFlightOn`),
        )
        .map((text) => `(${text})`);
    default:
      return fc.constant('');
  }
}

/** Atoms over the whole schema, those that change over time three times as often. */
const atom: fc.Arbitrary<string> = fc
  .oneof(
    ...SCHEMA.flatMap(({ owner, entries }) =>
      entries.map((entry) => ({ weight: entry.overTime ? 3 : 1, arbitrary: fc.constant({ owner, entry }) })),
    ),
  )
  .chain(({ owner, entry }) =>
    argument(entry).chain((given) => comparing(`${owner}.${entry.name}${given}`, entry)),
  );

function comparing(text: string, entry: Entry): fc.Arbitrary<string> {
  const [least, most] = entry.range ?? [0, 1];
  switch (entry.type) {
    case 'bool':
      return pick(text, `!${text}`);
    case 'int':
      return fc
        .tuple(fc.oneof(order, pick('==', '!=')), within(Math.max(least, -5), Math.min(most, 60)))
        .map(([op, n]) => `${text} ${op} ${n}`);
    case 'Days':
      return fc
        .tuple(fc.oneof(order, pick('==', '!=')), within(-60, 200), fc.boolean(), fc.boolean())
        .map(([op, n, turned, number]) => {
          const days = number ? `int(${text})` : text;
          return turned && op !== '==' && op !== '!=' ? `${n} ${op} ${days}` : `${days} ${op} ${n}`;
        });
    case 'double':
      return fc
        .tuple(order, within(Math.max(least, -20), Math.min(most, 300)))
        .map(([op, n]) => `${text} ${op} ${n}.5`);
    case 'string':
      return pick(...(entry.words ?? ['XQHB'])).map((word) => `${text} == "${word}"`);
    case 'list<string>':
      return pick(...(entry.words ?? ['tailwheel', 'airplane single-engine-land', 'XQHB'])).map(
        (word) => `"${word}" in ${text}`,
      );
    case 'Date':
      return fc
        .tuple(
          fc.oneof(order, pick('==', '!=')),
          fc.oneof(date, pick('flight.date', 'flight.arrivalDate')),
          pick('', '.plusDays(30)', '.plusMonths(6)'),
        )
        .map(([op, other, plus]) => `${text}${plus} ${op} ${other}`);
  }
}

const condition: fc.Arbitrary<string> = fc.letrec<{ any: string }>((tie) => ({
  any: fc.oneof(
    { maxDepth: 2, depthSize: 'small' },
    atom,
    fc.tuple(tie('any'), pick('&&', '||'), tie('any')).map(([a, op, b]) => `(${a} ${op} ${b})`),
    tie('any').map((a) => `!(${a})`),
    fc.tuple(tie('any'), tie('any'), tie('any')).map(([a, b, c]) => `(${a} ? ${b} : ${c})`),
  ),
})).any;

/** Sheets with earlier flying, and at times with weather observed at some hour around the flight. */
const sheets = fc
  .record({
    sheet: anySheet,
    tenths: within(0, 5000),
    kept: fc.boolean(),
    hours: within(-4, 3),
    weather: fc.boolean(),
  })
  .map(({ sheet, tenths, kept, hours, weather }): FactSheet => {
    const sum = {
      ...({
        modelId: 'model-lark',
        category: 'airplane',
        class: 'single-engine-land',
        tailwheel: false,
      } as const),
      ...{
        role: 'pilot-in-command' as const,
        flights: 10,
        landings: 20,
        totalTenths: tenths,
        nightTenths: 0,
        dualGivenTenths: 0,
      },
    };
    const people = Object.fromEntries(
      Object.entries(sheet.people).map(([id, one]) => [
        id,
        kept ? { ...one, logBefore: known({ through: '2019-01-01T00:00:00Z', sums: [sum] }, KNOWN_AT) } : one,
      ]),
    );
    const observedAt = toInstant(toSeconds(sheet.flight.departs) + hours * 3600);
    const told = {
      observedAt,
      windFromDeg: 200,
      windKt: 11,
      gustKt: null,
      visibilitySm: 7,
      ceilingFtAgl: 3000,
      temperatureC: 12,
      altimeterInHg: null,
    };
    return { ...sheet, people, flight: weather ? { ...sheet.flight, weather: told } : sheet.flight };
  });

/** Runs a property; a failure names the cause and what replays it. */
function holds<T>(property: fc.IProperty<T>, numRuns: number): void {
  const out = fc.check(property, { seed: SEED, numRuns: runs(numRuns), endOnFailure: true });
  if (!out.failed) return;
  const cause = out.errorInstance instanceof Error ? out.errorInstance.message : String(out.errorInstance);
  throw new Error(
    `${cause}\n(seed ${out.seed}, path "${out.counterexamplePath}", after ${out.numRuns} runs)`,
  );
}

const verdictOf = ({ status, conditions }: Finding): string => `${status} ${conditions.join()}`;

describe(`the club's rules on arbitrary sheets (seed ${SEED})`, () => {
  test('the expressions reach every verdict', () => {
    const seen = new Map<string, number>();
    for (const [sheet, requirement, appliesWhen] of fc.sample(fc.tuple(sheets, condition, condition), {
      seed: SEED,
      numRuns: 400,
    })) {
      const { status, says } = judge(
        written({ requirement, appliesWhen }),
        sheet,
        toSeconds(sheet.flight.departs),
      ).finding;
      if (status === 'error') throw new Error(`${requirement}: ${says}`);
      seen.set(status, (seen.get(status) ?? 0) + 1);
    }
    for (const status of ['met', 'short', 'unknown', 'not-applicable'])
      expect([status, (seen.get(status) ?? 0) > 20]).toEqual([status, true]);
  });

  test('between one change point and the next the verdict is the same, at any departure', () => {
    const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 });
    holds(
      fc.property(
        sheets,
        condition,
        condition,
        parts,
        within(0, 20),
        (sheet, requirement, appliesWhen, at, walk) => {
          const rule = written({ requirement, appliesWhen, condition: 'Wait.' });
          let from = toSeconds(sheet.flight.departs);
          // Some change points on, so that it is not always the sheet's own departure.
          for (let step = 0; step < walk; step += 1) {
            const next = judge(rule, sheet, from).nextChange;
            if (next === null) break;
            from = next;
          }
          const first = judge(rule, sheet, from);
          const to = first.nextChange ?? from + 400 * 86_400;
          for (const later of [...at.map((part) => from + Math.floor(part * (to - from))), to - 1]) {
            if (later < from || later >= to) continue;
            const now = judge(rule, sheet, later).finding;
            if (verdictOf(now) !== verdictOf(first.finding)) {
              throw new Error(
                `${appliesWhen} => ${requirement}: ${verdictOf(first.finding)} at ${toInstant(from)}, to hold to ${toInstant(to)}, but ${verdictOf(now)} at ${toInstant(later)}`,
              );
            }
          }
        },
      ),
      1000,
    );
  });

  test('taking a fact away never makes a rule kept that was not, nor broken that was kept: at most it is not known', () => {
    holds(
      fc.property(sheets, condition, condition, fc.nat(), (sheet, requirement, appliesWhen, which) => {
        const rule = written({ requirement, appliesWhen });
        const at = toSeconds(sheet.flight.departs);
        const before = judge(rule, sheet, at).finding.status;
        const less = without(sheet, which);
        const after = judge(rule, less, at).finding.status;
        // 'met' and 'not-applicable' both keep the rule; which of the two may hang on the fact.
        const side = (status: string): string => (status === 'not-applicable' ? 'met' : status);
        if (after !== 'unknown' && side(after) !== side(before))
          throw new Error(`${appliesWhen} => ${requirement}: ${before} became ${after} when a fact went`);
      }),
      1500,
    );
  });

  test('the order of records changes nothing', () => {
    holds(
      fc.property(sheets, condition, (sheet, requirement) => {
        const rule = written({ requirement });
        const at = toSeconds(sheet.flight.departs);
        const turned: FactSheet = {
          ...sheet,
          people: Object.fromEntries(Object.entries(sheet.people).map(([id, one]) => [id, reversed(one)])),
          aircraft: reversed(sheet.aircraft),
        };
        expect(judge(rule, turned, at)).toEqual(judge(rule, sheet, at));
      }),
      800,
    );
  });
});

/** The sheet with one fact no longer known. */
function without(sheet: FactSheet, which: number): FactSheet {
  const gone = unknownFact('it went');
  const person = [
    'birthDate',
    'certificates',
    'instructor',
    'medicals',
    'reviews',
    'endorsements',
    'log',
    'logBefore',
    'checkouts',
    'standing',
  ];
  const aircraft = ['type', 'use', 'meters', 'equipment', 'squawks'];
  const subject = [...person, ...aircraft][which % (person.length + aircraft.length)]!;
  if (aircraft.includes(subject)) return { ...sheet, aircraft: { ...sheet.aircraft, [subject]: gone } };
  const people = Object.entries(sheet.people).map(([id, one]) => [id, { ...one, [subject]: gone }] as const);
  return { ...sheet, people: Object.fromEntries(people) };
}

/** Every list of records the other way round. */
function reversed<T extends object>(of: T): T {
  return Object.fromEntries(
    Object.entries(of).map(([key, fact]: [string, unknown]) => {
      const list = (fact as { value?: unknown } | null)?.value;
      return [key, Array.isArray(list) ? { ...(fact as object), value: [...list].reverse() } : fact];
    }),
  ) as T;
}
