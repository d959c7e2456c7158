import type { Remedy } from '../engine/remedy.js';
import type { AirfieldFact, FlightFacts, RunwayChoice, RunwayFact } from '../facts/flight.js';

/** Runways that may be used: the one chosen, else all of the airfield. */
export function runwaysToUse(airfield: AirfieldFact, choices: FlightFacts['runways']): RunwayFact[] {
  const chosen = choices?.find((one) => one.airfield === airfield.code)?.runway;
  return airfield.runways.filter(({ designator }) => chosen === undefined || designator === chosen);
}

/** The choices with others in the place of those at the same airfields. */
export const withChoices = (
  choices: FlightFacts['runways'],
  instead: readonly RunwayChoice[],
): RunwayChoice[] => [
  ...(choices ?? []).filter((one) => !instead.some(({ airfield }) => airfield === one.airfield)),
  ...instead,
];

/** Uses other runways, and keeps what is chosen elsewhere. */
export const useRunways = (choices: FlightFacts['runways'], instead: readonly RunwayChoice[]): Remedy => ({
  act: 'choose-runway',
  title: `Use ${instead.map(({ airfield, runway }) => `runway ${runway} at ${airfield}`).join(' and ')}.`,
  by: 'member',
  effects: [{ op: 'flight', fields: { runways: withChoices(choices, instead) } }],
});
