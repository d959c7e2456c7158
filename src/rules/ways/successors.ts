/** The steps that can be taken from a state, each with the least it can cost; they are taken only if it comes to that. */
import { offersAgainst, offersForPractice } from './offers.js';
import { officersLeave } from './own/office.js';
import { ownRequests } from './own/requests.js';
import { isRefusal, type Refusal } from './place.js';
import { isBanned, isRequest, type Asker, type Offer, type State } from './state.js';
import { settle, stepsWith, type Step } from './steps.js';
import type { World } from './world.js';

/** How deep acts are looked for that make room for acts: an inspection for a check flight for a solo flight. */
const DEPTH = 4;

/** All steps from a state, each once: changes of the request first, then what is done for the flight so changed. */
export function successors(world: World, state: State, next: readonly Offer[]): Step[] {
  if (state.overrides.length > 0) return [];
  const found = new Map<string, Step>();
  const tried = new Set<string>();
  const follow = (offers: readonly Offer[], depth: number): void => {
    const blocked: Refusal[] = [];
    for (const offer of offers) {
      const name = `${offer.meaning} ${offer.askers.map(askerName).join()}`;
      if (tried.has(name) || isBanned(world.banned, offer) || isDone(state, offer)) continue;
      tried.add(name);
      if (depth > 0) world.enablers.set(name, offer);
      for (const step of stepsWith(world, state, offer)) {
        if (isRefusal(step)) blocked.push(step);
        else if (!found.has(step.key)) found.set(step.key, step);
      }
    }
    if (depth === DEPTH) return;
    // What is in the way itself comes before what would make room for it.
    const blockers = blocked.flatMap((refused) => refused.blockers);
    if (blockers.length > 0) follow(offersForPractice(world, state, blockers), depth + 1);
  };
  if (state.settled) follow([...next, ...officersLeave(world, state)], 0);
  else {
    follow([...offersAgainst(world, state).filter(isRequest), ...ownRequests(world, state)], 0);
    const settled = settle(state);
    found.set(settled.key, settled);
  }
  return [...found.values()];
}

/** No act is done twice for the same rule: what it did is undone by something else, and that way leads round. */
const isDone = (state: State, offer: Offer): boolean =>
  state.done.some(
    (done) =>
      done.offer.act === offer.act &&
      (done.offer.meaning === offer.meaning ||
        offer.askers.every(({ rule }) => done.offer.askers.some((one) => one.rule === rule))),
  );

/** The rule asked, and on what flight. */
const askerName = ({ rule, nth, practice }: Asker): string =>
  `${rule}.${nth}${practice ? JSON.stringify(practice) : ''}`;
