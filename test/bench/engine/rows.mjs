/** One decision in the process: all rules, and ten rules in three writings. */
import { performance } from 'node:perf_hooks';
import { decide, judgeAll, toSeconds, weigh } from '../../../dist/src/rules/index.js';
import { median, pairedRatio, quantile, spread, takeTurns, times } from '../support/measure.mjs';
import { heading, notes, say, table } from '../support/print.mjs';
import { byHand } from './by-hand.mjs';
import { compare } from './check.mjs';
import { jsonRules } from './json-rules.mjs';
import { realisticSheet, variedSheet } from './sheets.mjs';
import { fullRuleset, tenRules, wordsOf } from './ten-rules.mjs';
import { timelineRows } from './timeline-rows.mjs';
import { zenRules } from './zen.mjs';

const REALISTIC = 12;
const VARIED = 60;

export async function engineRows() {
  const { policy, ruleset } = fullRuleset();
  await allRules(policy, ruleset);
  await tenRulesThreeTimes(tenRules(ruleset));
  await timelineRows(ruleset);
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
    `${REALISTIC} sheets (log of 60 flights, three on board), ${rounds} rounds in turn after one uncounted; answers: ${tally(answers.map(({ answer }) => answer))}.`,
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
  table([
    ['what', 'µs a sheet: median (least to most)', 'middle half', 'ratio'],
    row('(c) Bellcrank: judgeAll, ten rules', engine, 'base'),
    row(
      '(d) json-rules-engine',
      measured.get('json'),
      `${times(pairedRatio(measured.get('json'), engine))} (c)`,
    ),
    row('(e) zen-engine', measured.get('zen'), `${times(pairedRatio(measured.get('zen'), engine))} (c)`),
    row(
      '(f) one function by hand',
      measured.get('hand'),
      `${times(pairedRatio(measured.get('hand'), engine))} (c)`,
    ),
  ]);
  const than = (name) => times(pairedRatio(engine, measured.get(name)));
  say(
    `  Bellcrank takes ${than('json')} as long as json-rules-engine, ${than('zen')} as long as zen-engine, and ${than('hand')} as long as the function by hand.`,
  );
  notes(
    `Same verdicts first: ${compared} compared (status, sentence, number of conditions) on ${sheets.length} sheets, none differs; ${reached.size} ways to come out were reached.`,
    `${rounds} rounds in turn after one uncounted. All four use the same calendar functions and the same wording.`,
    '(c) also gives evidence, citation, parameters read, ways to yes and the next change of each verdict; (d), (e) and (f) give none of these.',
    '(d), (e) and (f) leave out what the sheets do not reach: students, sport pilots, gliders, ferry permits, second pilots, dated law.',
  );
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
