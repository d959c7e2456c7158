/** Which runway of an airfield is used, and the wind along it. */
import { bestRunway, windComponents } from '../../../air/wind.js';
import type { AirfieldFact, DeclaredWeather, RunwayChoice, RunwayFact } from '../../../facts/flight.js';

/** A runway and the wind along it; negative: from behind. */
export interface ChosenRunway {
  runway: RunwayFact;
  headwindKt: number;
}

/** The wind that counts; null: still air is reckoned with. */
export type CountedWind = Pick<DeclaredWeather, 'windFromDeg' | 'gustKt'> & { windKt: number };

/**
 * Wind along a runway: from ahead the steady wind, from behind the gust. One without a direction counts wholly from behind.
 */
export function headwindOn(runway: RunwayFact, wind: CountedWind | null): number {
  if (!wind) return 0;
  const gustKt = Math.max(wind.windKt, wind.gustKt ?? 0);
  // Taken from nought, a calm has no sign.
  if (wind.windFromDeg === null) return 0 - gustKt;
  const along = (kt: number): number =>
    windComponents(runway.trueHeadingDeg, wind.windFromDeg!, kt).headwindKt;
  // From ahead the gust is the greater of the two, from behind the lesser.
  return Math.min(along(wind.windKt), along(gustKt));
}

/** The runway chosen; else the best for a wind with a direction; else the longest. Null where none is on record. */
export function runwayAt(
  airfield: AirfieldFact,
  choices: readonly RunwayChoice[] | null | undefined,
  wind: CountedWind | null,
): ChosenRunway | null {
  const chosen = choices?.find((one) => one.airfield === airfield.code)?.runway;
  const runway =
    chosen !== undefined
      ? (airfield.runways.find(({ designator }) => designator === chosen) ?? null)
      : forWind(airfield.runways, wind);
  return runway && { runway, headwindKt: headwindOn(runway, wind) };
}

function forWind(runways: readonly RunwayFact[], wind: CountedWind | null): RunwayFact | null {
  // Gusts count where the steady wind is calm: they may be the only wind there is.
  if (wind && wind.windFromDeg !== null && Math.max(wind.windKt, wind.gustKt ?? 0) > 0)
    return (
      bestRunway(runways, { fromDegTrue: wind.windFromDeg, kt: wind.windKt, gustKt: wind.gustKt })?.runway ??
      null
    );
  const byLength = [...runways].sort(
    (a, b) => b.lengthFt - a.lengthFt || (a.designator < b.designator ? -1 : 1),
  );
  return byLength[0] ?? null;
}
