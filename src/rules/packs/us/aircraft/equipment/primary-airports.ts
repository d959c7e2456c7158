/**
 * The airports of 14 CFR part 91, appendix D, section 1: within 30 NM of them a transponder and ADS-B Out are needed.
 *
 * The list is the appendix's. Positions are those of the OpenFlights airports table (from OurAirports), rounded to four
 * decimals, which is within 0.01 NM (test/outside/primary-airports.spec.ts holds them against it). Airports do not move, so they are no dated
 * values of law; a change of the list is a new version of the rules that read it.
 */
import { distanceNm, type Position } from '../../../../air/distance.js';
import { remember } from '../../../../calendar/remember.js';
import type { AirfieldFact } from '../../../../facts/flight.js';

/** An airport of the list. */
export interface PrimaryAirport extends Position {
  code: string;
  city: string;
}

const at = (code: string, latitudeDeg: number, longitudeDeg: number, city: string): PrimaryAirport => ({
  code,
  latitudeDeg,
  longitudeDeg,
  city,
});

export const PRIMARY_AIRPORTS: readonly PrimaryAirport[] = [
  at('ATL', 33.6367, -84.4281, 'Atlanta'),
  at('BWI', 39.1754, -76.6683, 'Baltimore'),
  at('BOS', 42.3643, -71.0052, 'Boston'),
  at('ADW', 38.8108, -76.867, 'Camp Springs'),
  at('IAD', 38.9445, -77.4558, 'Chantilly'),
  at('CLT', 35.214, -80.9431, 'Charlotte'),
  at('ORD', 41.9786, -87.9048, 'Chicago'),
  at('CLE', 41.4117, -81.8498, 'Cleveland'),
  at('CVG', 39.0488, -84.6678, 'Covington'),
  at('DFW', 32.8968, -97.038, 'Dallas'),
  at('DEN', 39.8617, -104.673, 'Denver'),
  at('DTW', 42.2124, -83.3534, 'Detroit'),
  at('HNL', 21.3206, -157.9242, 'Honolulu'),
  at('HOU', 29.6454, -95.2789, 'Houston'),
  at('IAH', 29.9844, -95.3414, 'Houston'),
  at('MCI', 39.2976, -94.7139, 'Kansas City'),
  at('LAS', 36.0801, -115.152, 'Las Vegas'),
  at('LAX', 33.9425, -118.408, 'Los Angeles'),
  at('MEM', 35.0424, -89.9767, 'Memphis'),
  at('MIA', 25.7932, -80.2906, 'Miami'),
  at('MSP', 44.882, -93.2218, 'Minneapolis'),
  at('EWR', 40.6925, -74.1687, 'Newark'),
  at('MSY', 29.9934, -90.258, 'New Orleans'),
  at('JFK', 40.6398, -73.7789, 'New York'),
  at('LGA', 40.7772, -73.8726, 'New York'),
  at('MCO', 28.4294, -81.309, 'Orlando'),
  at('PHL', 39.8719, -75.2411, 'Philadelphia'),
  at('PHX', 33.4343, -112.012, 'Phoenix'),
  at('PIT', 40.4915, -80.2329, 'Pittsburgh'),
  at('STL', 38.7487, -90.37, 'St. Louis'),
  at('SLC', 40.7884, -111.978, 'Salt Lake City'),
  at('SAN', 32.7336, -117.19, 'San Diego'),
  at('SFO', 37.619, -122.375, 'San Francisco'),
  at('SEA', 47.449, -122.309, 'Seattle'),
  at('TPA', 27.9755, -82.5332, 'Tampa'),
  at('DCA', 38.8521, -77.0377, 'Washington'),
];

/** The airport of the list that lies nearest to an airfield of the route. */
export interface Nearest {
  airport: PrimaryAirport;
  field: AirfieldFact;
  nm: number;
}

/** Null where no airport is listed or the route is empty. */
export function nearestPrimary(
  route: readonly AirfieldFact[],
  airports: readonly PrimaryAirport[],
): Nearest | null {
  let nearest: Nearest | null = null;
  for (const field of route) {
    const found = nearestTo(airports)(field.latitudeDeg, field.longitudeDeg);
    if (found !== null && (nearest === null || found.nm < nearest.nm)) nearest = { ...found, field };
  }
  return nearest;
}

type NearestTo = (latitudeDeg: number, longitudeDeg: number) => Omit<Nearest, 'field'> | null;

/** For each list, the airport nearest to a position: airfields do not move, and a timeline asks of the same few for ever. */
const searches = new WeakMap<readonly PrimaryAirport[], NearestTo>();

function nearestTo(airports: readonly PrimaryAirport[]): NearestTo {
  let search = searches.get(airports);
  if (!search) {
    search = remember((latitudeDeg: number, longitudeDeg: number) => {
      let nearest: Omit<Nearest, 'field'> | null = null;
      for (const airport of airports) {
        // A degree of latitude is never less than 59.7 NM: most of the list is passed over without a geodesic.
        const least = Math.abs(latitudeDeg - airport.latitudeDeg) * 59.7;
        if (nearest !== null && least >= nearest.nm) continue;
        const nm = distanceNm({ latitudeDeg, longitudeDeg }, airport);
        if (nearest === null || nm < nearest.nm) nearest = { airport, nm };
      }
      return nearest;
    });
    searches.set(airports, search);
  }
  return search;
}
