/** Nothing is shown unproven: each way is judged afresh, and must fall apart when any one of its acts is left out. */
import { answerAsAsked, blocks, conditionsOf } from '../engine/combine.js';
import { digestOf } from '../engine/digest.js';
import { toInstant } from '../calendar/instants.js';
import { versionsOf } from '../engine/decide.js';
import type { Finding } from '../engine/finding.js';
import { weigh } from '../engine/weigh.js';
import { advance } from './advance.js';
import { daysTo } from './bill.js';
import { isRefusal } from './place.js';
import { costOf } from './cost.js';
import { departureOf, type Done, isRequest, isUnnamed, type Offer, type State, type Unit } from './state.js';
import type { Proof, WaySortie, WayStep } from './types.js';
import * as words from './words.js';
import type { World } from './world.js';

/** The units of a state, in order, and the state they began from. */
function trailOf(state: State): { root: State; units: Unit[] } {
  const units: Unit[] = [];
  let at = state;
  while (at.parent) {
    units.unshift(at.unit!);
    at = at.parent;
  }
  return { root: at, units };
}

/** Something is done; a change of the request, or somebody's leave, is not opened by anything but itself. */
const isDoing = (offer: Offer): boolean => !isRequest(offer) && offer.change.is !== 'leave';

/** What becomes of the way without one of its acts: still a yes, or the acts that then cannot be done. */
export function without(
  world: World,
  state: State,
  left: { unit: number; offer: number },
): { yes: boolean; lost: string[] } {
  const { root, units } = trailOf(state);
  let at = root;
  for (const [index, unit] of units.entries()) {
    const offers = index === left.unit ? unit.offers.filter((_, place) => place !== left.offer) : unit.offers;
    if (offers.length === 0) continue;
    const next = advance(world, at, { ...unit, offers });
    if (isRefusal(next)) return { yes: false, lost: offers.filter(isDoing).map(({ act }) => act) };
    at = next;
  }
  const yes =
    at.verdicts.blocking.length === 0 &&
    isUnnamed(at) === isUnnamed(state) &&
    at.overrides.every((rule) => state.overrides.includes(rule));
  return { yes, lost: [] };
}

/** The way as it is shown, or null when it is not minimal, or when the fresh judgement does not bear it out. */
export function prove(world: World, state: State): Proof | null {
  const { units } = trailOf(state);
  const opens: string[][] = [];
  for (const [unit, { offers }] of units.entries()) {
    for (const offer of offers.keys()) {
      const { yes, lost } = without(world, state, { unit, offer });
      if (yes) return null;
      opens.push(lost);
    }
  }
  const { sheet, overrides } = state;
  const { ruleset, question } = world;
  const departs = departureOf(sheet);
  const weighed = weigh(sheet, ruleset, departs);
  const findings = weighed.judged.map(({ finding }) => finding);
  const setAside = (finding: Finding): boolean => finding.overridable && overrides.includes(finding.rule);
  const answer = answerAsAsked(
    findings.filter((finding) => !(blocks(finding) && setAside(finding))),
    weighed.crew,
  );
  if (answer === 'no' || answer === 'ask-officer') {
    world.disproved.count += 1;
    return null;
  }
  const rests = [
    ...(overrides.length > 0 ? (['officer'] as const) : []),
    ...(answer === 'dual-only' ? (['instructor'] as const) : []),
  ];
  const { flight } = sheet;
  return {
    sheet,
    crew: weighed.crew,
    findings,
    way: {
      steps: state.done
        .map((done, index) => stepOf(world, state, done, opens[index] ?? []))
        .sort((a, b) => (a.startsOn < b.startsOn ? -1 : a.startsOn > b.startsOn ? 1 : 0)),
      sorties: sortiesOf(state),
      cost: state.cost,
      answer: weighed.answer,
      rests,
      restSays: rests.map((rest) => words.RESTS[rest]),
      overrides: [...overrides],
      flight: {
        departs: flight.departs,
        arrives: flight.arrives,
        aircraftId: sheet.aircraft.id,
        personsOnBoard: flight.personsOnBoard,
      },
      conditions: conditionsOf(findings),
      provenBy: digestOf({
        sheet,
        policy: question.policy,
        asOf: flight.departs,
        rules: versionsOf(ruleset),
      }),
    },
  };
}

function stepOf(world: World, state: State, done: Done, opens: string[]): WayStep {
  const { offer, from, to, bill, cures, sortie } = done;
  return {
    act: offer.act,
    title: offer.title,
    kind: offer.entries[0]!.kind,
    by: offer.by,
    person: offer.person,
    cost: costOf(bill, daysTo(world, [done]), world.prices),
    startsOn: toInstant(from),
    doneBy: toInstant(to),
    cures: [...cures],
    opens: [...new Set(opens)],
    sortie: sortie ? flights(state).indexOf(sortie.from) + 1 : null,
  };
}

/** Practice flights by when they begin: no two begin at once, for the person flies both. */
const flights = (state: State): number[] =>
  [...new Set(state.done.flatMap(({ sortie }) => (sortie ? [sortie.from] : [])))].sort((a, b) => a - b);

const withSafetyPilot = ({ offer }: Done): boolean =>
  offer.entries.some(({ sketch }) => sketch?.with === 'safety-pilot');

function sortiesOf(state: State): WaySortie[] {
  return flights(state).map((from, index) => {
    const tasks = state.done.filter(({ sortie }) => sortie?.from === from);
    const { dual, night, to } = tasks[0]!.sortie!;
    return {
      number: index + 1,
      says: words.sortieSays({ dual, safetyPilot: tasks.some(withSafetyPilot), night, tasks: tasks.length }),
      dual,
      night,
      departs: toInstant(from),
      arrives: toInstant(to),
    };
  });
}
