/** Every sentence of the season plan. */
import { CAUTION, type LocalDate } from '../../rules/index.js';
import type { Rule } from '../plan/evaluate.js';
import type { Explained } from '../plan/explain.js';

export const SEASON_CAUTION = `A plan books nothing and signs nothing: what is due is due by the records. ${CAUTION}`;

const RULE: Record<Rule, string> = {
  due: 'something would not be done',
  follows: 'what falls due again would be late',
  start: 'it would be past due, its parts are not there yet, or the shop cannot take it so soon',
  days: 'there is no room for all its work in the week',
  length: 'the visit would last too long',
  bays: 'the shop is full or closed',
  'shop-days': 'the shop has no days left',
  group: 'too few aircraft for instruction would be left flying',
  'rides-along': 'an upgrade would be without the inspection it waits for',
  pin: 'the week lies outside the plan',
};

const figure = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);

/** Why a visit is when it is, sentence by sentence. */
export function whyVisit(visit: Explained, weeks: readonly LocalDate[]): string[] {
  const says: string[] = [];
  const { bookedHours, expectedHours, weeksEarly } = visit;
  says.push(
    bookedHours < 0.05 && expectedHours < 0.05
      ? 'It displaces no flying.'
      : `It displaces ${figure(bookedHours)} booked hours and ${figure(expectedHours)} that would likely be flown.`,
  );
  if (weeksEarly > 0)
    says.push(
      `Done ${weeksEarly === 1 ? 'a week' : `${weeksEarly} weeks`} of life early, over all its inspections.`,
    );
  const possible = visit.alternatives.filter((one) => one.more !== null).sort((a, b) => a.more! - b.more!);
  const next = possible[0];
  says.push(
    next === undefined
      ? 'With everything else as it is, no other week is possible.'
      : next.more! > -0.05
        ? `The next best week, of ${weeks[next.week]!}, would cost ${figure(Math.max(0, next.more!))} more.`
        : `The week of ${weeks[next.week]!} would cost ${figure(-next.more!)} less: time was up before the search came to it.`,
  );
  const { earlier, later } = visit.binds;
  if (earlier.length > 0) says.push(`Not a week earlier: ${earlier.map((rule) => RULE[rule]).join('; ')}.`);
  if (later.length > 0) says.push(`Not a week later: ${later.map((rule) => RULE[rule]).join('; ')}.`);
  return says;
}

/** What falls due before the shop can take it. */
export const tooSoonSays = (title: string, aircraft: string, first: LocalDate): string =>
  `${title} of ${aircraft} may fall due before the week of ${first}, the first the shop can take: where it binds, the aircraft does not fly until it is done.`;

/** Why there is no plan. */
export function whyNone(needs: readonly { title: string; aircraft: string; dueBy: LocalDate }[]): string {
  if (needs.length === 0)
    return 'The weeks that are pinned or booked contradict what the shop can take, whatever is to be done in them.';
  const all = needs.map(({ title, aircraft, dueBy }) => `${title} of ${aircraft} by the week of ${dueBy}`);
  const what = all.length === 1 ? all[0]! : `${all.slice(0, -1).join(', ')} and ${all.at(-1)!}`;
  return all.length === 1
    ? `${what} finds no place at all. Let the shop take more, bring its parts forward, or stop flying the aircraft sooner.`
    : `${what} cannot be done together, and this is the smallest such set: any of them left out, the others fit. Let the shop take more, or stop flying one of the aircraft sooner.`;
}
