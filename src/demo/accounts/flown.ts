import type { Outing } from '../flying/outing.js';
import { endMinute } from '../flying/outing.js';
import { demoId } from '../ids.js';
import type { FlightWish } from '../rows.js';
import { at, clock, type When } from '../when.js';
import type { FlightFlown } from '../../charges/flights/flight-flown.js';

/** A flight of the last months: what was asked for, and what was flown. */
export interface FlownFlight {
  wish: FlightWish;
  flown: FlightFlown;
  /** First told with other hours, so that a correction can be seen on the account. */
  misread: boolean;
}

const DAYS_BACK = 70;
/** One of so many: judging every one of them would take a start too long. */
const ONE_OF = 4;
const BRIEFING_MINUTES = 20;

/** The newest flights that were flown, as they had been booked and came back. */
export function flownFlights(outings: readonly Outing[], when: When): FlownFlight[] {
  return outings
    .filter(
      ({ date, legs }) => when.ago(date) <= DAYS_BACK && when.ago(date) > 0 && endMinute(legs) < clock(20),
    )
    .filter((_, index) => index % ONE_OF === 0)
    .map(flownFlight);
}

function flownFlight(outing: Outing, index: number): FlownFlight {
  const { date, aircraft, pilot, teacher, legs } = outing;
  const [departs, arrives] = [at(date, legs[0]!.startMinute), at(date, endMinute(legs))];
  const tenths = legs.reduce((sum, leg) => sum + leg.tenths, 0);
  const id = demoId('flown', aircraft.key, departs);
  const away = legs.some(({ from, to }) => from.code !== to.code);
  const wish: FlightWish = {
    ...{ id, memberId: pilot.id, instructorId: teacher?.id ?? null, aircraftId: aircraft.id },
    ask: {
      ...{ memberId: pilot.id, departs, arrives, purpose: teacher ? 'dual' : 'solo' },
      personsOnBoard: teacher ? 2 : 1,
      ...(teacher ? { instructorId: teacher.id } : {}),
      route: [legs[0]!.from.code, ...legs.map((leg) => leg.to.code)],
      ...{ plannedHours: tenths / 10, airspace: ['E', 'G'], maxAltitudeFtMsl: 9500, maxSpeedKias: 150 },
      ...{ usesVor: false, usesTransponder: aircraft.key !== 'wicket' },
    },
  };
  const flown: FlightFlown = {
    ...{ bookingId: id, aircraftId: aircraft.id, pilotId: pilot.id, payerId: pilot.id },
    ...{ instructorId: teacher?.id ?? null, departedAt: departs, arrivedAt: arrives },
    ...{ hobbsTenths: tenths, tachTenths: Math.max(1, Math.round(tenths * 0.85)) },
    instructionMinutes: teacher ? tenths * 6 + BRIEFING_MINUTES : null,
    ...(away ? { fuelBoughtUsGal: 12.4, fuelPaidMinor: 8370 } : { fuelBoughtUsGal: 0, fuelPaidMinor: 0 }),
    fuelClubUsGal: aircraft.key === 'wicket' ? tenths / 2 : 0,
  };
  return { wish, flown, misread: index % 9 === 4 };
}
