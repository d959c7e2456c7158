/** What a flight that supplies what an insurer asks for would leave on record. Source: Club handbook, section 8.1. */
import { Moment } from '../../src/rules/engine/moment.js';
import { toSeconds } from '../../src/rules/calendar/instants.js';
import type { Lack } from '../../src/rules/packs/club/insurance/minimums.js';
import { supplyAll } from '../../src/rules/packs/club/insurance/supply.js';
import { AIRCRAFT_TYPE } from '../../src/rules/workshop/records.js';

const moment = new Moment({
  departs: toSeconds('2027-03-01T18:00:00Z'),
  durationSeconds: 3600,
  knownAt: toSeconds('2027-02-28T18:00:00Z'),
  zone: 'America/Denver',
});
const written = (...supplies: Lack['supply'][]): string[] =>
  supplyAll(
    supplies.map((supply) => ({ what: 'x', supply })),
    { type: AIRCRAFT_TYPE, moment, mostTenths: 30 },
  ).flatMap(({ effects }) => effects.map((effect) => ('fact' in effect ? effect.fact : effect.op)));

test.each<[string, Lack['supply'][], string[]]>([
  ['a checkout is a signature and no time', ['checkout'], ['pic.checkouts']],
  ['so is the club check', ['check'], ['pic.checkouts']],
  ['time is an entry of the log and no signature', [{ dualTenths: 1 }], ['pic.log']],
  ['all of it', [{ dualTenths: 10 }, 'checkout', 'check'], ['pic.log', 'pic.checkouts', 'pic.checkouts']],
  ['nothing, where one thing cannot be flown', ['checkout', null], []],
])('%s', (_name, supplies, facts) => {
  expect(written(...supplies)).toEqual(facts);
});
