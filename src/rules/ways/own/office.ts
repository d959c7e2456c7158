import { onlyOverridable } from '../advance.js';
import type { Offer, State } from '../state.js';
import * as words from '../words.js';
import type { World } from '../world.js';
import { ownOffer } from './offer.js';

/** Papers entered and not verified yet: what they show counts once an officer has seen them. */
export function waitingPapers(world: World, state: State): Offer[] {
  const { sheet } = state;
  return Object.entries(world.question.verified ?? {})
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([id, person]) => {
      const now = sheet.people[id];
      if (!now?.unverified.known || now.unverified.value.length === 0 || world.closed.has(id)) return [];
      const papers = now.unverified.value.map(({ what, on }) => (on === null ? what : `${what} of ${on}`));
      const title = words.verifyPapers(papers.sort());
      return [
        ownOffer(
          world,
          'have-papers-verified',
          title,
          { is: 'parts', papers: person },
          { by: 'officer', person: id },
        ),
      ];
    });
}

/** The leave of an officer, once nothing but what an officer may set aside is in the way. */
export function officersLeave(world: World, state: State): Offer[] {
  if (world.aim !== 'officer' || !world.mayOverride || !onlyOverridable(world, state)) return [];
  const titles = state.verdicts.blocking.map((rule) => world.ruleset.rules[rule]!.title);
  return [ownOffer(world, 'ask-officer', words.askOfficer(titles), { is: 'leave' }, { by: 'officer' })];
}
