/**
 * The standard atmosphere below the tropopause (ICAO Doc 7488: 15 C, 29.92126 inHg and 6.5 C per kilometre from sea
 * level), dry air. Heights in feet, temperatures in degrees Celsius, pressures in inches of mercury. Each quantity comes
 * exact and by the rule of thumb that pilots use.
 */

/** Height at which the formula's temperature would reach absolute zero. */
const ZERO_TEMPERATURE_FT = 145_442.16;
const SEA_LEVEL_INHG = 29.92126;
const SEA_LEVEL_K = 288.15;
const PRESSURE_EXPONENT = 5.25588;
/** g M / (R L) - 1: exponent of density. */
const DENSITY_EXPONENT = PRESSURE_EXPONENT - 1;

/** Pressure altitude of a field from its elevation and the altimeter setting. */
export function pressureAltitudeFt(elevationFt: number, altimeterInHg: number): number {
  return (
    elevationFt + ZERO_TEMPERATURE_FT * (1 - (altimeterInHg / SEA_LEVEL_INHG) ** (1 / PRESSURE_EXPONENT))
  );
}

/** The same by the rule of thumb: a thousand feet for each inch below 29.92. */
export function pressureAltitudeByRuleFt(elevationFt: number, altimeterInHg: number): number {
  return elevationFt + 1000 * (29.92 - altimeterInHg);
}

/** Density altitude from pressure altitude and outside air temperature, dry air. */
export function densityAltitudeFt(pressureAltitude: number, oatC: number): number {
  const sigma = standardPressureInHg(pressureAltitude) / SEA_LEVEL_INHG / ((oatC + 273.15) / SEA_LEVEL_K);
  return ZERO_TEMPERATURE_FT * (1 - sigma ** (1 / DENSITY_EXPONENT));
}

/** The same by the rule of thumb: 120 ft for each degree above standard. It reads high when hot. */
export function densityAltitudeByRuleFt(pressureAltitude: number, oatC: number): number {
  return pressureAltitude + 120 * (oatC - (15 - (1.98 * pressureAltitude) / 1000));
}

/** Pressure at a height in the standard atmosphere. */
export function standardPressureInHg(heightFt: number): number {
  return SEA_LEVEL_INHG * (1 - heightFt / ZERO_TEMPERATURE_FT) ** PRESSURE_EXPONENT;
}

/** Temperature at a height in the standard atmosphere. */
export function standardTemperatureC(heightFt: number): number {
  return SEA_LEVEL_K * (1 - heightFt / ZERO_TEMPERATURE_FT) - 273.15;
}
