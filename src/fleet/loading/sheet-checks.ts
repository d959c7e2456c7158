import {
  distanceFaults,
  envelopeFaults,
  type DistanceFact,
  type DistanceFactors,
  type EnvelopeFact,
  type StationFact,
} from '../../rules/index.js';
import type { NewLoadingSheet, StationDto } from './loading-sheet.dto.js';
import type { DistanceDto, NewPerformanceSheet } from './performance-sheet.dto.js';
import type { LoadingSheet } from './loading-sheet.entity.js';
import type { PerformanceSheet } from './performance-sheet.entity.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/**
 * A loading sheet as it is kept: what is left out is null.
 *
 * @throws ProblemException 422 naming the field: stations that say too much or too little, limits that are no polygon.
 */
export function loadingSheetOf(body: NewLoadingSheet): Partial<LoadingSheet> {
  const names = body.stations.map(({ name }) => name.toLowerCase());
  body.stations.forEach((station, index) => {
    const at = (field: string): string => `stations[${index}].${field}`;
    if (names.indexOf(station.name.toLowerCase()) !== index)
      throw valueRefused(at('name'), `${station.name} is there already; name this station apart.`);
    if ((station.kind === 'seats') !== (station.seats !== undefined && station.seats !== null))
      throw valueRefused(at('seats'), 'Give the number of seats for a seat row, and for nothing else.');
    if ((station.kind === 'fuel') !== (station.usableUsGal !== undefined && station.usableUsGal !== null))
      throw valueRefused(at('usableUsGal'), 'Give the usable fuel of a tank, and of nothing else.');
  });
  if (!body.stations.some(({ kind }) => kind === 'seats'))
    throw valueRefused('stations', "A loading sheet has at least the pilot's seats.");
  if (body.envelopes.length === 0)
    throw valueRefused('envelopes', 'Give the limits of at least one category.');
  body.envelopes.forEach(({ category, points }, index) => {
    if (body.envelopes.findIndex((one) => one.category === category) !== index)
      throw valueRefused(`envelopes[${index}].category`, `The ${category} category is there already.`);
    const [fault] = envelopeFaults(points);
    if (fault !== undefined)
      throw valueRefused(`envelopes[${index}].points`, `These are no limits: ${fault}.`);
  });
  const { source, fuelKind, maxTakeoffLb = null, maxLandingLb = null, maxZeroFuelLb = null } = body;
  return {
    ...{ source, fuelKind, maxTakeoffLb, maxLandingLb, maxZeroFuelLb },
    stations: body.stations.map(stationOf),
    envelopes: body.envelopes.map((one): EnvelopeFact => ({
      category: one.category,
      points: one.points.map(({ armIn, weightLb }) => ({ armIn, weightLb })),
    })),
  };
}

const stationOf = (one: StationDto): StationFact => ({
  ...{ name: one.name, kind: one.kind, armIn: one.armIn },
  ...{ maxLb: one.maxLb ?? null, seats: one.seats ?? null, usableUsGal: one.usableUsGal ?? null },
});

/**
 * A performance sheet as it is kept.
 *
 * @throws ProblemException 422 naming the field: tables that cannot be read, wind factors of which half is missing.
 */
export function performanceSheetOf(body: NewPerformanceSheet): Partial<PerformanceSheet> {
  const { source, liftOffKias = null } = body;
  return {
    ...{ source, liftOffKias },
    takeoff: distanceOf(body.takeoff, 'takeoff'),
    landing: distanceOf(body.landing, 'landing'),
  };
}

function distanceOf({ tables, factors }: DistanceDto, field: string): DistanceFact {
  const kept = tables.map(({ weightLb, pressureAltitudesFt, temperaturesC, groundRollFt, over50Ft }) => ({
    ...{ weightLb, pressureAltitudesFt, temperaturesC, groundRollFt, over50Ft },
  }));
  const faults = distanceFaults(kept);
  if (faults.length > 0)
    throw valueRefused(`${field}.tables`, `The tables cannot be read: ${faults.join('; ')}.`);
  const of: DistanceFactors = {
    headwindPercentPerKt: factors.headwindPercentPerKt ?? null,
    tailwindPercentPerKt: factors.tailwindPercentPerKt ?? null,
    tailwindMaxKt: factors.tailwindMaxKt ?? null,
    grassPercent: factors.grassPercent ?? null,
    gravelPercent: factors.gravelPercent ?? null,
    wetPavedPercent: factors.wetPavedPercent ?? null,
    wetUnpavedPercent: factors.wetUnpavedPercent ?? null,
    slopePercentPerPercent: factors.slopePercentPerPercent ?? null,
    surfaceIsOf: factors.surfaceIsOf,
  };
  if ((of.tailwindPercentPerKt === null) !== (of.tailwindMaxKt === null))
    throw valueRefused(
      `${field}.factors.tailwindMaxKt`,
      'Give percent and greatest knots from behind, or neither.',
    );
  return { tables: kept, factors: of };
}
