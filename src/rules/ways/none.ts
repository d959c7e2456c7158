/** Why there is no way before the flight, and whether there is one for a later flight. */
import { daysLater, toInstant, toSeconds } from '../calendar/instants.js';
import { judgeRule } from '../engine/judge.js';
import type { FactSheet } from '../facts/sheet.js';
import { offersAgainst } from './offers.js';
import { prove } from './prove.js';
import { cheapest, rootOf, type Spent } from './search.js';
import { departureOf, isRequest, type State } from './state.js';
import { stepsWith } from './steps.js';
import type { LaterWay, NoWay, Proof } from './types.js';
import * as words from './words.js';
import { worldOf, type World } from './world.js';

const MOST_LATER = 6;
const DAY = 86_400;

/** Says plainly that there is no way before the flight, and why. */
export function noWay(world: World, root: State, spent: Spent): NoWay {
  const { blocking } = root.verdicts;
  const never = blocking.filter((rule) => !spent.cured.has(rule));
  const says = spent.bound
    ? words.NONE.bound
    : blocking.length === 0
      ? words.NONE.instructorNotNamed
      : words.NONE.noWay;
  return {
    says,
    because: (never.length > 0 ? never : blocking).map((rule) => {
      const { finding } = judgeRule(
        world.ruleset.rules[rule]!,
        root.sheet,
        world.ruleset,
        root.verdicts.crew,
        departureOf(root.sheet),
      );
      const { rule: id, title, says: found } = finding;
      return { rule: id, title, says: found, why: whyNot(world, root, rule, spent) };
    }),
  };
}

function whyNot(world: World, root: State, rule: number, spent: Spent): string {
  if (spent.cured.has(rule)) return words.WHY.together;
  const offers = offersAgainst(world, root).filter(
    (offer) => !isRequest(offer) && offer.askers.some((one) => one.rule === rule && one.practice === null),
  );
  // The search may have ended for another rule before these were tried: then they are now, for what stands against each.
  for (const offer of offers) stepsWith(world, root, offer);
  const late = offers.flatMap(({ act }) => world.late.get(act) ?? []).sort((a, b) => a.done - b.done)[0];
  if (late) return words.WHY.tooLate(late.title, late.done, root.sheet.zone);
  const held = offers.flatMap(({ act }) => world.held.get(act) ?? []).find(({ by }) => by.size > 0);
  if (held) {
    const titles = [...held.by].map((index) => world.ruleset.rules[index]!.title);
    return words.WHY.held(held.title, titles);
  }
  return offers.length > 0 ? words.WHY.together : words.WHY.nothingCures;
}

/** The same flight at the same clock on the first later day for which a way was found, among the days on which acts end. */
export function laterWay(world: World, spent: Spent): { later: LaterWay; proof: Proof } | null {
  const { sheet } = world.question;
  const departs = departureOf(sheet);
  const days = [...world.late.values()]
    .map(({ done }) => Math.ceil((done - departs) / DAY))
    .filter((ahead) => ahead > 0)
    // At the flight's hour the practice may not be flown yet on the day it can be begun.
    .flatMap((ahead) => [ahead, ahead + 1]);
  for (const ahead of [...new Set(days)].sort((a, b) => a - b).slice(0, MOST_LATER)) {
    const moved = movedBy(sheet, ahead);
    const then = worldOf({ ...world.question, sheet: moved });
    const proof = cheapest(then, rootOf(then), spent, (end) => prove(then, end));
    if (proof) {
      const { departs: at, arrives } = moved.flight;
      const says = words.leaveLaterSays(at, sheet.zone);
      return { later: { departs: at, arrives, says, way: proof.way }, proof };
    }
  }
  return null;
}

/** The flight so many days later, by the club's clock. */
function movedBy(sheet: FactSheet, days: number): FactSheet {
  const { flight, zone } = sheet;
  const departs = daysLater(toSeconds(flight.departs), days, zone);
  const length = toSeconds(flight.arrives) - toSeconds(flight.departs);
  return {
    ...sheet,
    flight: { ...flight, departs: toInstant(departs), arrives: toInstant(departs + length) },
  };
}
