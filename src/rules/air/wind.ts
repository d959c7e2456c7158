/** Wind along and across a runway. */
import type { RunwayFact } from '../facts/flight.js';

/** Headwind negative = tailwind; crosswind positive = from the right. Knots. */
export interface WindComponents {
  headwindKt: number;
  crosswindKt: number;
}

/**
 * Components of a wind on a runway. Both directions must be of one kind: a METAR or TAF gives the wind true, a tower or
 * a runway number magnetic. Plain trigonometry, as on the handbook's crosswind chart (FAA-H-8083-25).
 */
export function windComponents(runwayDeg: number, windFromDeg: number, windKt: number): WindComponents {
  const angle = ((windFromDeg - runwayDeg) * Math.PI) / 180;
  return { headwindKt: windKt * Math.cos(angle), crosswindKt: windKt * Math.sin(angle) };
}

/** A wind as observed: true direction, null when variable or not given; the gust counts where there is one. */
export interface Wind {
  fromDegTrue: number | null;
  kt: number;
  gustKt: number | null;
}

/** The wind with its gusts, knots. */
export const withGustKt = ({ kt, gustKt }: Wind): number => Math.max(kt, gustKt ?? 0);

/** How a runway lies to a wind. */
export interface RunwayWind extends WindComponents {
  runway: RunwayFact;
}

/**
 * The runway with the least wind across it and none from behind; of equals the one most into the wind, then the first by
 * name. A wind without a direction counts wholly across every runway, with no headwind. Null when there is no runway.
 */
export function bestRunway(runways: readonly RunwayFact[], wind: Wind): RunwayWind | null {
  const kt = withGustKt(wind);
  const found = runways.map((runway): RunwayWind => {
    const { fromDegTrue } = wind;
    if (fromDegTrue === null) return { runway, headwindKt: 0, crosswindKt: kt };
    return { runway, ...windComponents(runway.trueHeadingDeg, fromDegTrue, kt) };
  });
  const tailwind = (one: RunwayWind): number => (one.headwindKt < -1e-9 ? 1 : 0);
  found.sort(
    (a, b) =>
      tailwind(a) - tailwind(b) ||
      compare(Math.abs(a.crosswindKt), Math.abs(b.crosswindKt)) ||
      compare(b.headwindKt, a.headwindKt) ||
      (a.runway.designator < b.runway.designator ? -1 : 1),
  );
  return found[0] ?? null;
}

/** Order of two computed speeds; differences below rounding are none. */
const compare = (a: number, b: number): number => (Math.abs(a - b) < 1e-9 ? 0 : a - b);
