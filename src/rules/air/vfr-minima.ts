/** Basic VFR weather minima, as laid out in the table of 14 CFR 91.155(a). The figures come from outside, dated. */
import type { AirspaceClass } from '../facts/flight.js';

/** The figures of the table. Visibility in statute miles, distances from cloud in feet, save the mile at height. */
export interface VfrFigures {
  standardVisibilitySm: number;
  highVisibilitySm: number;
  classGDayVisibilitySm: number;
  belowFt: number;
  aboveFt: number;
  horizontalFt: number;
  highBelowFt: number;
  highAboveFt: number;
  highHorizontalSm: number;
  /** Height above the surface up to which class G asks least. */
  classGLowFtAgl: number;
  /** Height above sea level from which the higher minima hold. */
  highFromFtMsl: number;
}

/** What must be seen: how far, and how far from cloud. `clearOfClouds` stands for no distance. */
export interface VfrMinima {
  visibilitySm: number;
  clearOfClouds: boolean;
  belowFt: number | null;
  aboveFt: number | null;
  horizontalFt: number | null;
  horizontalSm: number | null;
}

/**
 * The minima at one point. A null height is unknown and gets the strictest minima it may have. Null in class A, where
 * there is no VFR (14 CFR 91.135).
 */
export function vfrMinima(
  at: { airspace: AirspaceClass; altitudeFtMsl: number | null; altitudeFtAgl: number | null; night: boolean },
  figures: VfrFigures,
): VfrMinima | null {
  const clear = { clearOfClouds: true, belowFt: null, aboveFt: null, horizontalFt: null, horizontalSm: null };
  const standard = {
    clearOfClouds: false,
    belowFt: figures.belowFt,
    aboveFt: figures.aboveFt,
    horizontalFt: figures.horizontalFt,
    horizontalSm: null,
  };
  const high: VfrMinima = {
    visibilitySm: figures.highVisibilitySm,
    clearOfClouds: false,
    belowFt: figures.highBelowFt,
    aboveFt: figures.highAboveFt,
    horizontalFt: null,
    horizontalSm: figures.highHorizontalSm,
  };
  const isHigh = at.altitudeFtMsl === null || at.altitudeFtMsl >= figures.highFromFtMsl;
  switch (at.airspace) {
    case 'A':
      return null;
    case 'B':
      return { visibilitySm: figures.standardVisibilitySm, ...clear };
    case 'C':
    case 'D':
      return { visibilitySm: figures.standardVisibilitySm, ...standard };
    case 'E':
      return isHigh ? high : { visibilitySm: figures.standardVisibilitySm, ...standard };
    case 'G': {
      const low = at.altitudeFtAgl !== null && at.altitudeFtAgl <= figures.classGLowFtAgl;
      if (!low && isHigh) return high;
      if (at.night) return { visibilitySm: figures.standardVisibilitySm, ...standard };
      return { visibilitySm: figures.classGDayVisibilitySm, ...(low ? clear : standard) };
    }
  }
}
