/** One decision in the process: all rules, and ten rules in three writings. */
import { performance } from 'node:perf_hooks';
import {
  crewAt,
  decide,
  judgeAll,
  skimRule,
  timeAt,
  toSeconds,
  weigh,
} from '../../../dist/src/rules/index.js';
import { median, pairedRatio, quantile, spread, takeTurns, times } from '../support/measure.mjs';
import { heading, notes, say, table } from '../support/print.mjs';
import { byHand } from './by-hand.mjs';
import { compare } from './check.mjs';
import { jsonRules } from './json-rules.mjs';
import { realisticSheet, variedSheet } from './sheets.mjs';
import { fullRuleset, tenRules, wordsOf } from './ten-rules.mjs';
import { timelineRows } from './timeline-rows.mjs';
import { waysRows } from './ways-rows.mjs';
import { zenRules } from './zen.mjs';

const REALISTIC = 12;
const VARIED = 60;

export async function engineRows() {
  const { policy, ruleset } = fullRuleset();
  await allRules(policy, ruleset);
  await tenRulesThreeTimes(tenRules(ruleset));
  await timelineRows(ruleset);
  waysRows(policy, ruleset);
}

async function allRules(policy, ruleset) {
  const sheets = Array.from({ length: REALISTIC }, (_, index) => realisticSheet(index));
  const rules = ruleset.rules.length;
  heading(`1. One decision in the process, all ${rules} US and club rules`);
  const began = performance.now();
  const first = decide(sheets[0], policy, ruleset);
  const cold = performance.now() - began;
  const answers = sheets.map((sheet) => decide(sheet, policy, ruleset));
  const each = (judge) => () => {
    for (const sheet of sheets) judge(sheet);
  };
  const contenders = [
    { name: 'decide', times: REALISTIC, run: each((sheet) => decide(sheet, policy, ruleset)) },
    {
      name: 'weigh',
      times: REALISTIC,
      run: each((sheet) => weigh(sheet, ruleset, toSeconds(sheet.flight.departs))),
    },
  ];
  const rounds = 15;
  const measured = await takeTurns(contenders, rounds);
  const whole = measured.get('decide');
  const findings = measured.get('weigh');
  table([
    ['what', 'µs a decision: median (least to most)', 'middle half', 'ratio'],
    row('(a) decide: findings, ways to yes, horizon, digest', whole, 'base'),
    row('(b) weigh: findings and ways to yes only', findings, `${times(pairedRatio(findings, whole))} (a)`),
  ]);
  notes(
    `${REALISTIC} sheets (log of 60 flights, three on board), ${rounds} turns each of at least 20 ms once all are warm; answers: ${tally(answers.map(({ answer }) => answer))}.`,
    `The horizon looks 400 days ahead; (a) also hashes the sheet for the replay digest. No peer does (a): the rows below are like for like.`,
    `The very first decision of the process took ${cold.toFixed(0)} ms (nothing compiled, no calendar arithmetic remembered); it answered "${first.answer}".`,
  );
}

async function tenRulesThreeTimes(ruleset) {
  heading('2. Ten rules judged: Bellcrank, json-rules-engine 7, zen-engine 0.52, one function by hand');
  const words = wordsOf(ruleset);
  const json = jsonRules(words);
  const zen = zenRules(words);
  const hand = byHand(words);
  const varied = Array.from({ length: VARIED }, (_, index) => variedSheet(index));
  const sheets = [...varied, ...Array.from({ length: REALISTIC }, (_, index) => realisticSheet(index))];
  const { compared, reached, differences } = await compare(sheets, ruleset, [
    { name: 'json-rules-engine', judge: json },
    { name: 'zen-engine', judge: zen },
    { name: 'by hand', judge: hand },
  ]);
  if (differences.length > 0) {
    say(`  No ratio: the four writings differ on ${differences.length} of ${compared} verdicts.`);
    notes(...differences.slice(0, 5));
    process.exitCode = 1;
    return;
  }
  const departs = new Map(sheets.map((sheet) => [sheet, toSeconds(sheet.flight.departs)]));
  const contenders = [
    {
      name: 'engine',
      run: () => {
        for (const sheet of sheets) judgeAll(sheet, ruleset, departs.get(sheet));
      },
    },
    {
      name: 'verdicts',
      run: () => {
        for (const sheet of sheets) verdictsOf(sheet, ruleset, departs.get(sheet));
      },
    },
    {
      name: 'json',
      run: async () => {
        for (const sheet of sheets) await json(sheet, departs.get(sheet));
      },
    },
    {
      name: 'zen',
      run: async () => {
        for (const sheet of sheets) await zen(sheet, departs.get(sheet));
      },
    },
    {
      name: 'hand',
      run: () => {
        for (const sheet of sheets) hand(sheet, departs.get(sheet));
      },
    },
  ].map((one) => ({ ...one, times: sheets.length }));
  const rounds = 41;
  const measured = await takeTurns(contenders, rounds);
  const engine = measured.get('engine');
  const verdicts = measured.get('verdicts');
  const peer = (name, key) => [
    ...row(name, measured.get(key), times(pairedRatio(measured.get(key), engine))),
    times(pairedRatio(measured.get(key), verdicts)),
  ];
  table([
    ['what', 'µs a sheet: median (least to most)', 'middle half', 'against (c)', 'against (v)'],
    [...row('(c) Bellcrank: findings of ten rules', engine, 'base'), times(pairedRatio(engine, verdicts))],
    [...row('(v) Bellcrank: verdicts alone', verdicts, times(pairedRatio(verdicts, engine))), 'base'],
    peer('(d) json-rules-engine', 'json'),
    peer('(e) zen-engine', 'zen'),
    peer('(f) one function by hand', 'hand'),
  ]);
  const than = (mine, name) => times(pairedRatio(mine, measured.get(name)));
  say(
    `  Of what the function by hand takes, findings take ${than(engine, 'hand')} as long, verdicts ${than(verdicts, 'hand')}.`,
  );
  notes(
    `Same verdicts first: ${compared} compared (status, sentence, number of conditions) on ${sheets.length} sheets, none differs; ${reached.size} ways to come out were reached.`,
    `${rounds} turns each of at least 20 ms, one after the other, once all are warm. All use the same calendar functions and the same wording.`,
    '(c) also gives evidence, citation, parameters read, ways to yes and the next change of each verdict; (d), (e) and (f) give none of these.',
    '(v) is what horizon, timelines, dry run and the search for ways ask: status, conditions and next change, and no sentence; (d), (e) and (f) write the sentence.',
    '(d), (e) and (f) leave out what the sheets do not reach: students, sport pilots, gliders, ferry permits, second pilots, dated law.',
  );
}

/** The rules run for their verdicts, as a timeline runs them. */
function verdictsOf(sheet, ruleset, departs) {
  const time = timeAt(sheet, departs);
  const { crew } = crewAt(sheet, ruleset, departs, time);
  return ruleset.rules.map((rule) => skimRule(rule, sheet, ruleset, crew, time));
}

function row(name, values, ratio) {
  const half = `${quantile(values, 0.25).toFixed(0)} to ${quantile(values, 0.75).toFixed(0)}`;
  return [name, spread(values, median(values) < 100 ? 1 : 0), half, ratio];
}

function tally(words) {
  const counts = new Map();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts].map(([word, count]) => `${count} ${word}`).join(', ');
}
