/** Fuel for the flight and its reserve, and when an alternate is needed (14 CFR 91.151, 91.167). Figures come dated. */

/** Minutes of fuel a flight needs. */
export interface FuelNeed {
  enrouteMinutes: number;
  /** From the destination to the alternate; 0 where none is needed. */
  toAlternateMinutes: number;
  reserveMinutes: number;
}

export const fuelMinutes = (need: FuelNeed): number =>
  need.enrouteMinutes + need.toAlternateMinutes + need.reserveMinutes;

/** US gallons for so many minutes at a burn in gallons an hour. */
export function fuelForUsGal(minutes: number, burnUsGalPerHour: number): number {
  return (minutes * burnUsGalPerHour) / 60;
}

/** Is the fuel enough? Compared as gallons times sixty, so that whole numbers stay whole. */
export function hasFuelFor(minutes: number, usableUsGal: number, burnUsGalPerHour: number): boolean {
  return usableUsGal * 60 >= minutes * burnUsGalPerHour - 1e-6;
}

/** The minutes that a quantity lasts, rounded down. */
export function enduranceMinutes(usableUsGal: number, burnUsGalPerHour: number): number {
  return Math.floor((usableUsGal * 60) / burnUsGalPerHour + 1e-6);
}

/** The forecast at the destination, worst in the window around arrival. Null = not known. */
export interface DestinationForecast {
  approachPublished: boolean | null;
  ceilingFtAgl: number | null;
  visibilitySm: number | null;
  /** Hours before and after the estimated arrival that the forecast covers. */
  coversHoursBefore: number;
  coversHoursAfter: number;
}

/** The figures of 14 CFR 91.167(b)(2) for airplanes. */
export interface AlternateFigures {
  ceilingFt: number;
  visibilitySm: number;
  windowHours: number;
}

/** Is an alternate required for the IFR flight of an airplane? Whatever is not known asks for one. */
export function alternateRequired(forecast: DestinationForecast, figures: AlternateFigures): boolean {
  const { approachPublished, ceilingFtAgl, visibilitySm, coversHoursBefore, coversHoursAfter } = forecast;
  if (approachPublished !== true || ceilingFtAgl === null || visibilitySm === null) return true;
  if (coversHoursBefore < figures.windowHours || coversHoursAfter < figures.windowHours) return true;
  return ceilingFtAgl < figures.ceilingFt || visibilitySm < figures.visibilitySm;
}
