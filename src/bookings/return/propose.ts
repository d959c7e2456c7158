/**
 * What the crew may log of a flight, worked out from times, airfields and the sun: a proposal, to be looked through. Pure.
 * Night hours are between evening and morning civil twilight (14 CFR 1.1), night take-offs and landings from an hour after
 * sunset to an hour before sunrise (14 CFR 61.57(b)).
 */
import { nightOf } from '../../logbook/checks/night-of.js';
import { placed, type Field, type Flown } from '../../logbook/checks/check.js';
import { isNight, type LogFact } from '../../rules/index.js';

/** Somebody of the crew, and as what they fly. */
export interface CrewMember {
  memberId: string;
  name: string;
  role: LogFact['role'];
  /** Whose hands are on the controls: take-offs and landings are theirs (14 CFR 61.57). */
  flies: boolean;
}

/** The flight as its crew tells it. */
export interface ToPropose {
  departs: number;
  arrives: number;
  from: Field;
  to: Field;
  category: Flown['category'];
  class: Flown['class'];
  landings: number;
  fullStopLandings: number;
}

/** One entry proposed; null where it cannot be worked out. */
export interface Proposed extends Omit<CrewMember, 'flies'> {
  soleManipulator: boolean;
  totalH: number;
  nightH: number | null;
  crossCountryH: number;
  dualGivenH: number;
  takeoffs: number;
  landings: number;
  fullStopLandings: number;
  nightTakeoffs: number | null;
  nightFullStopLandings: number | null;
}

/** From blocks to the first take-off and from the last landing to the blocks (common practice, no source). */
const TAXI_SECONDS = 300;
const TENTH = 360;

export function propose(flight: ToPropose, crew: readonly CrewMember[]): Proposed[] {
  const totalTenths = Math.max(1, Math.round((flight.arrives - flight.departs) / TENTH));
  const night = nightPart(flight, totalTenths);
  const elsewhere = flight.from.code !== flight.to.code && flight.landings > 0;
  return crew.map(({ flies, ...person }): Proposed => {
    const teaches = person.role === 'instructor';
    return {
      ...person,
      soleManipulator: flies,
      totalH: totalTenths / 10,
      nightH: night && night.tenths / 10,
      crossCountryH: elsewhere ? totalTenths / 10 : 0,
      dualGivenH: teaches ? totalTenths / 10 : 0,
      takeoffs: flies ? flight.landings : 0,
      landings: flies ? flight.landings : 0,
      fullStopLandings: flies ? flight.fullStopLandings : 0,
      nightTakeoffs: flies ? night && night.takeoffs : 0,
      nightFullStopLandings: flies ? night && night.landings : 0,
    };
  });
}

/** How much of it lies in the night; null where the place of an airfield is not on record. */
function nightPart(
  flight: ToPropose,
  totalTenths: number,
): { tenths: number; takeoffs: number; landings: number } | null {
  const { landings, fullStopLandings, departs, arrives } = flight;
  const flown = placed({
    ...{ departs, arrives, from: flight.from, to: flight.to, on: '', device: null },
    ...{ category: flight.category, class: flight.class, totalTenths },
    ...{ takeoffs: landings, landings, fullStopLandings, nightTakeoffs: 0, nightFullStopLandings: 0 },
    ...{ nightTenths: 0, crossCountryTenths: 0 },
  });
  if (typeof flown === 'string') return null;
  const tenths = Math.min(totalTenths, Math.round(nightOf(flown).civil.straight / TENTH));
  // They lie evenly between the first take-off and the last landing, and the full stops are the last of the landings.
  const first = departs + TAXI_SECONDS;
  const circuit = landings > 0 ? Math.max(0, arrives - TAXI_SECONDS - first) / landings : 0;
  const night = { tenths, takeoffs: 0, landings: 0 };
  for (let index = 0; index < landings; index += 1) {
    if (isNight('passenger', flown.from.at, Math.round(first + index * circuit))) night.takeoffs += 1;
    const at = index === landings - 1 ? flown.to.at : flown.from.at;
    const fullStop = index >= landings - fullStopLandings;
    if (fullStop && isNight('passenger', at, Math.round(first + (index + 1) * circuit))) night.landings += 1;
  }
  return night;
}
