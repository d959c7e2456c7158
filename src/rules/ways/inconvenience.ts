import { toSeconds } from '../calendar/instants.js';
import type { Crew } from '../engine/crew.js';
import { crewAt } from '../engine/judge.js';
import type { FactSheet } from '../facts/sheet.js';
import { NOTHING, plus, type Bill } from './cost.js';
import type { Prices } from './prices.js';
import { applyChange } from './apply.js';
import { departureOf, requestOf, type Offer, type State } from './state.js';
import type { World } from './world.js';

/** A request and who is who on it. */
interface Asked {
  sheet: FactSheet;
  crew: Crew;
}

const HOUR = 3600;

/** What it costs the member that the flight is not the one asked for. */
export function inconvenience(before: Asked, after: Asked, prices: Prices): Bill {
  if (before.sheet.flight === after.sheet.flight && before.sheet.aircraft.id === after.sheet.aircraft.id)
    return NOTHING;
  const price = (name: string): number => prices.number(`club.cost.points.${name}`);
  const [was, is] = [before.sheet.flight, after.sheet.flight];
  const left = Math.max(0, before.crew.passengers - after.crew.passengers);
  const moved =
    Math.abs(toSeconds(was.departs) - toSeconds(is.departs)) +
    Math.abs(lengthOf(before.sheet) - lengthOf(after.sheet));
  const parts = [
    left * price('passenger-left'),
    (moved / HOUR) * price('hour-moved'),
    before.sheet.aircraft.id === after.sheet.aircraft.id ? 0 : price('other-aircraft'),
  ];
  const taken = after.crew.instruction && !before.crew.instruction;
  const open = after.crew.instruction && is.instructorId === null;
  if (taken) parts.push(price('instructor'));
  if (open && (taken || was.instructorId !== null)) parts.push(price('instructor-to-find'));
  const points = parts.reduce((sum, part) => sum + part, 0);
  const bill: Bill = { ...NOTHING, points: points > 0 ? points : price('plan-changed') };
  if (!taken) return bill;
  // The instructor is paid for the flight itself.
  const teaching = (is.plannedTenths / 10) * prices.number('club.cost.instructor-hour');
  return plus(bill, { ...NOTHING, money: teaching });
}

/** The request after a change, and what the change costs, before anything is judged. */
export function requested(world: World, state: State, offer: Offer): { bill: Bill; request: string } {
  const { sheet, verdicts } = state;
  const changed = applyChange(sheet, offer.change, { crew: verdicts.crew, flight: null });
  const { crew } = crewAt(changed, world.ruleset, departureOf(changed));
  return {
    bill: inconvenience({ sheet, crew: verdicts.crew }, { sheet: changed, crew }, world.prices),
    request: requestOf(changed),
  };
}

const lengthOf = (sheet: FactSheet): number =>
  toSeconds(sheet.flight.arrives) - toSeconds(sheet.flight.departs);
