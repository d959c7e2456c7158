/** Timelines: a whole club against judging it hour by hour with the same rules, and the memory the streamed form takes. */
import { performance } from 'node:perf_hooks';
import {
  answerAsAsked,
  answerWithDual,
  clubTimelines,
  crewAt,
  instructionIsAWay,
  skimRule,
  timeAt,
  timelineOf,
  toSeconds,
  withUnnamedInstructor,
} from '../../../dist/src/rules/index.js';
import { median, quantile, times } from '../support/measure.mjs';
import { heading, notes, say, table } from '../support/print.mjs';
import { drawFrom, realisticSheet, variedSheet } from './sheets.mjs';

const MEMBERS = 500;
const AIRCRAFT = 20;
const DAYS = 90;
const DAY = 86_400;
/** Pairs judged hour by hour; all ten thousand would take the best part of an hour. */
const SAMPLED_PAIRS = 24;

/** A club of so many members and aircraft: every third member is not simple; a fifth of the aircraft are of each of five models. */
export function benchClub(members, aircraft) {
  const base = realisticSheet(0);
  const { aircraft: flown, ...rest } = base;
  return {
    base: { ...rest, people: {} },
    members: Array.from({ length: members }, (_, index) => ({
      ...(index % 3 === 0 ? variedSheet(index) : realisticSheet(index)).people['member-1'],
      id: `member-${index}`,
    })),
    aircraft: Array.from({ length: aircraft }, (_, index) => {
      const source = index % 4 === 3 ? variedSheet(index * 31).aircraft : flown;
      const value = {
        ...flown.type.value,
        registration: `ZZ-${100 + index}`,
        modelId: index % 5 < 3 ? 'model-lark' : `model-${index % 5}`,
      };
      return { ...source, id: `aircraft-${index}`, type: { ...flown.type, value } };
    }),
  };
}

export async function timelineRows(ruleset) {
  heading(`3. Timelines: ${MEMBERS} members, ${AIRCRAFT} aircraft, ${DAYS} days, passengers aboard`);
  const club = benchClub(MEMBERS, AIRCRAFT);
  const from = toSeconds(club.base.flight.departs);
  const span = { from, to: from + DAYS * DAY };
  const pairs = MEMBERS * AIRCRAFT;

  // Once with a few members uncounted, so that neither side pays for compiling.
  walk({ ...club, members: club.members.slice(0, 10), ruleset, span });
  const whole = walk({ ...club, ruleset, span });
  const alone = [];
  const sampled = [];
  let compared = 0;
  const draw = drawFrom(20_261_125);
  hourByHour(sheetOf(club, club.members[1], club.aircraft[0]), ruleset, { from, to: from + 2 * DAY }, []);
  for (let pair = 0; pair < SAMPLED_PAIRS; pair += 1) {
    const sheet = sheetOf(club, draw.oneOf(club.members), draw.oneOf(club.aircraft));
    let began = performance.now();
    const { steps } = timelineOf(sheet, ruleset, span);
    alone.push((performance.now() - began) * 1000);
    began = performance.now();
    compared += hourByHour(sheet, ruleset, span, steps);
    sampled.push((performance.now() - began) * 1000);
  }
  const each = (whole.ms * 1000) / pairs;
  const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const told = (values) =>
    `${median(values).toFixed(0)} (${quantile(values, 0).toFixed(0)} to ${quantile(values, 1).toFixed(0)})`;
  table([
    ['what', 'µs a pair: median (least to most)', 'mean', 'against (g), by the mean'],
    ['(g) whole club, streamed', '', each.toFixed(0), 'base'],
    ['(h) one pair by itself', told(alone), mean(alone).toFixed(0), `${times(mean(alone) / each)} (g)`],
    [
      `(i) every hour, verdicts only`,
      told(sampled),
      mean(sampled).toFixed(0),
      `${times(mean(sampled) / each)} (g)`,
    ],
  ]);
  say(
    `  The whole club took ${(whole.ms / 1000).toFixed(1)} s for ${pairs} pairs and ${whole.steps} steps; hour by hour it would take ` +
      `${((mean(sampled) * pairs) / 1e6 / 60).toFixed(0)} min (from ${SAMPLED_PAIRS} pairs drawn from a seed): ${times(mean(sampled) / each)} as long.`,
  );
  notes(
    `The same answers: ${compared} hours compared with the timeline, none differs. (i) finds an edge to the hour; the timeline to the second.`,
    '(i) judges the same rules for their verdicts alone, without findings, sentences or remedies, and the flight with an instructor only where the one asked for is refused.',
  );
  memoryRows(club, ruleset, from);
}

/** Heap in use while a club is walked, for spans of several lengths. */
function memoryRows(club, ruleset, from) {
  const part = { ...club, members: club.members.slice(0, 60), ruleset };
  const rows = [30, 90, 365].map((days) => {
    const { most, base, steps } = walk({ ...part, span: { from, to: from + days * DAY } }, true);
    return [`${days} days`, `${steps}`, megabytes(base), megabytes(most - base)];
  });
  say('  Memory of the streamed form, 60 members and 20 aircraft, heap after collection:');
  table([['span', 'steps written', 'MB before', 'MB more, at most'], ...rows]);
  if (!globalThis.gc)
    notes('Run with --expose-gc to collect before each look; without it garbage is counted too.');
}

const megabytes = (bytes) => (bytes / 1e6).toFixed(1);

/** Walks all pairs, keeping nothing; looks at the heap every hundred pairs if asked. */
function walk(question, look = false) {
  const heap = () => {
    globalThis.gc?.();
    return process.memoryUsage().heapUsed;
  };
  const base = look ? heap() : 0;
  let most = base;
  let pairs = 0;
  let steps = 0;
  const began = performance.now();
  for (const timeline of clubTimelines(question)) {
    pairs += 1;
    steps += timeline.steps.length;
    if (look && pairs % 100 === 50) most = Math.max(most, heap());
  }
  return { ms: performance.now() - began, pairs, steps, base, most };
}

function sheetOf(club, member, aircraft) {
  return {
    ...club.base,
    flight: { ...club.base.flight, memberId: member.id },
    people: { [member.id]: member },
    aircraft,
  };
}

/** The answer at every hour of the span; throws where the timeline says otherwise. */
function hourByHour(sheet, ruleset, span, steps) {
  const dual = withUnnamedInstructor(sheet);
  let hours = 0;
  let step = 0;
  for (let at = span.from; at < span.to; at += 3600) {
    const asked = verdictsAt(sheet, ruleset, at);
    const answer = instructionIsAWay(sheet, asked)
      ? answerWithDual(asked, verdictsAt(dual, ruleset, at))
      : asked;
    hours += 1;
    if (steps.length === 0) continue;
    while (steps[step].to <= at) step += 1;
    if (steps[step].answer !== answer)
      throw new Error(`at ${at} the timeline says ${steps[step].answer}, judged it is ${answer}`);
  }
  return hours;
}

function verdictsAt(sheet, ruleset, at) {
  const time = timeAt(sheet, at);
  const { crew } = crewAt(sheet, ruleset, at, time);
  const findings = ruleset.rules.map((rule) => {
    const { status, conditions } = skimRule(rule, sheet, ruleset, crew, time);
    const { weight, binds } = rule;
    return { weight, binds, overridable: weight === 'club' && !rule.neverOverridden, status, conditions };
  });
  return answerAsAsked(findings, crew);
}
