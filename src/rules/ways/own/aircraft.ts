import type { FactSheet } from '../../facts/sheet.js';
import { departureOf, type Change, type Offer, type State } from '../state.js';
import { judgeVerdicts } from '../verdicts.js';
import * as words from '../words.js';
import type { World } from '../world.js';
import { ownOffer } from './offer.js';

const MOST_AIRCRAFT = 4;

/** Aircraft that fare no worse on any count are not worth a look; of several that fare alike, one like that asked for. */
export function otherAircraft(world: World, state: State): Offer[] {
  const { sheet, verdicts } = state;
  const model = sheet.aircraft.type.known ? sheet.aircraft.type.value.modelId : null;
  const seen = new Set<string>();
  return (world.question.alternatives ?? [])
    .flatMap(({ aircraft, route }) => {
      const type = aircraft.type.known ? aircraft.type.value : null;
      if (aircraft.id === sheet.aircraft.id || !type) return [];
      const flight = { ...(route && { route }) };
      const asked: FactSheet = { ...sheet, aircraft, flight: { ...sheet.flight, ...flight } };
      const { blocking } = judgeVerdicts(asked, world.ruleset, departureOf(asked));
      const like = type.modelId === model ? '0' : '1';
      const title = words.takeOtherAircraft(type.registration, type.makeModel);
      const change: Change = { is: 'parts', aircraft, flight };
      return [
        {
          blocking,
          order: `${like} ${type.registration} ${aircraft.id}`,
          offer: ownOffer(world, 'take-other-aircraft', title, change),
        },
      ];
    })
    .filter(({ blocking }) => verdicts.blocking.some((rule) => !blocking.includes(rule)))
    .sort((a, b) => (a.order < b.order ? -1 : 1))
    .filter(({ blocking }) => {
      const key = blocking.join();
      return seen.has(key) ? false : seen.add(key);
    })
    .slice(0, MOST_AIRCRAFT)
    .map((one) => one.offer);
}
