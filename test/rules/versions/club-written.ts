/** How rules that a club wrote are judged: their texts are stored with every decision, what reads them is the program's. */
import {
  bookFrom,
  decide,
  digestOf,
  rulesOfClub,
  type ClubRule,
  type Decision,
  type Policy,
} from '../../../src/rules/index.js';
import { short, type Behaviour } from './behaviour.js';
import { flights } from './engine.js';

const written = (code: string, of: Partial<ClubRule>): ClubRule => ({
  ...{ code: `club.own.${code}`, version: 1, title: code, weight: 'club', appliesWhen: 'true' },
  ...{ requirement: 'true', message: 'Not kept.', condition: null, document: 'Handbook', from: '2020-01-01' },
  ...{ to: null, ...of },
});

const RULES: ClubRule[] = [
  written('flying', {
    requirement: 'pilot.flightsInDays(30) >= 2 || pilot.landingsInDays(90) >= 3',
    message: 'You flew {pilot.flightsInDays(30)} of 2 flights in 30 days ({pilot.hoursInDays(30)} h).',
  }),
  written('evening', {
    appliesWhen: 'flight.passengers > 0 || flight.instruction',
    requirement: '!flight.arrivesAfter("12:00") && !flight.atNight && flight.weekday != "friday"',
    message: 'Back by noon; you arrive on {string(flight.arrivalDate)}.',
  }),
  written('wind', { requirement: 'wind.crosswindKt <= 10.0', condition: 'Crosswind at most 10 kt.' }),
  written('aircraft', {
    weight: 'advice',
    requirement: 'aircraft.openSquawks == 0 && "autopilot" in aircraft.equipment',
    message: '{aircraft.makeModel} has no autopilot.',
  }),
  written('dated', { requirement: 'member.ageYears >= 18', to: '2027-03-09' }),
  written('dated', { version: 2, requirement: 'member.ageYears >= 90', from: '2027-03-09' }),
];

/** Decisions on the flights of the engine, with those rules alone. */
export function clubWrittenDecisions(): [string, Decision][] {
  const policy: Policy = { values: [], rules: RULES };
  const ruleset = { rules: rulesOfClub(RULES), book: bookFrom([], policy) };
  return flights().map(([name, sheet]) => [`club-written rules: ${name}`, decide(sheet, policy, ruleset)]);
}

export const clubWrittenBehaviour = (): Behaviour =>
  Object.fromEntries(clubWrittenDecisions().map(([name, decision]) => [name, short(digestOf(decision))]));
