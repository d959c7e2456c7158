import type { EntityManager } from 'typeorm';
import { clubZone } from '../../clubs/club-time.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { localDateOf, toSeconds } from '../../rules/index.js';
import type { ChargeRate } from '../rates/charge-rate.entity.js';
import { rateInForce } from '../rates/rate-in-force.js';
import { type AircraftRate, type ChargeLine, chargeLines, type Missing } from './charge-lines.js';
import type { FlightFlown } from './flight-flown.js';

/** What a flight comes to. */
export interface PricedFlight {
  lines: ChargeLine[];
  amountMinor: number;
  currency: string;
  aircraftRateId: string;
  instructorRateId: string | null;
  /** Day of departure in the club's zone, by which the rates were chosen. */
  ofDay: string;
}

/** Works out what a flight costs by the rates of the day it departed. Nothing is written. */
export async function priceFlight(
  em: EntityManager,
  clubId: string,
  of: Omit<FlightFlown, 'bookingId' | 'pilotId' | 'payerId'>,
): Promise<PricedFlight | { missing: Missing }> {
  const zone = await clubZone(em, clubId);
  const [departed, arrived] = [toSeconds(of.departedAt), toSeconds(of.arrivedAt)];
  const ofDay = localDateOf(departed, zone);
  const rate = await rateInForce(em, { clubId, on: ofDay, aircraftId: of.aircraftId });
  if (rate === null) return { missing: 'aircraft-rate' };
  const instruction =
    of.instructorId === null
      ? null
      : await rateInForce(em, { clubId, on: ofDay, instructorId: of.instructorId });
  const days = await policyNumber(em, { clubId, parameterId: 'club.charges.day-away-hours', on: ofDay });
  const priced = chargeLines(
    {
      ...of,
      blockMinutes: Math.round((arrived - departed) / 60),
      departedOn: ofDay,
      arrivedOn: localDateOf(arrived, zone),
    },
    {
      rate: aircraftRate(rate),
      instruction: of.instructorId === null ? null : (instruction ?? 'missing'),
      dayAwayHours: days ?? 0,
    },
  );
  if ('missing' in priced) return priced;
  const { currency, id } = rate;
  return { ...priced, currency, ofDay, aircraftRateId: id, instructorRateId: instruction?.id ?? null };
}

// That an aircraft's rate says all of it, the table holds.
const aircraftRate = ({ id, basis, perHourMinor, fuel, fuelPerUsGalMinor }: ChargeRate): AircraftRate => ({
  ...{ id, perHourMinor, basis: basis!, fuel: fuel!, fuelPerUsGalMinor: fuelPerUsGalMinor! },
});
