import type { EntityManager } from 'typeorm';
import { loadProgress } from '../../checkouts/progress/load-progress.js';
import { progressOf, type Progress, standingFor } from '../../checkouts/progress/progress-of.js';
import { isNight } from '../../rules/sky/nights.js';
import { localDateOf, toSeconds, type Instant, type LocalDate } from '../../rules/index.js';
import type { CheckoutLack, BookingNeed, ConditionLimits } from '../rust/index.js';
import { lacksOf } from './checkout-lacks.js';

interface Place {
  code: string;
  latitudeDeg: number;
  longitudeDeg: number;
  longestFt: number | null;
}

/** A flight to come, as booked. */
interface Coming {
  bookingId: string;
  departs: Instant;
  arrives: Instant;
  purpose: string;
  home: string;
  route: string[] | null;
  landings: string[] | null;
  modelId: string;
  makeModel: string;
}

/** A checkout that a flight to come needs and the member does not have. */
export interface OpenCheckout {
  id: string;
  kind: 'model';
  makeModel: string;
  neededOn: LocalDate;
  /** How far the member is with what the club asks for it; null where it has laid nothing down. */
  progress: Progress | null;
}

/** What flights to come need of the pilot, and which checkouts they lack. */
export interface Needs {
  bookings: BookingNeed[];
  lacks: CheckoutLack[];
  checkouts: OpenCheckout[];
}

/** How far ahead bookings are looked at. */
const AHEAD_DAYS = 90;

export async function needsOf(
  em: EntityManager,
  of: { clubId: string; memberId: string; now: Instant; zone: string; limits: ConditionLimits },
): Promise<Needs> {
  const flights = await comingFlights(em, of);
  const places = await placesOf(em, of.clubId);
  const bookings = flights.flatMap((flight) => needsOfFlight(flight, places, of));
  const checkouts = await openCheckouts(em, of, flights);
  return { bookings, lacks: checkouts.flatMap(lacksOf), checkouts };
}

function needsOfFlight(
  flight: Coming,
  places: readonly Place[],
  { zone, limits }: { zone: string; limits: ConditionLimits },
): BookingNeed[] {
  const { bookingId } = flight;
  const on = localDateOf(toSeconds(flight.departs), zone);
  const codes = flight.route ?? [flight.home, ...(flight.landings ?? []), flight.home];
  const route = codes.flatMap((code) => places.find((place) => place.code === code) ?? []);
  const need = (manoeuvre: BookingNeed['manoeuvre'], condition: BookingNeed['condition']): BookingNeed => ({
    ...{ bookingId, on, manoeuvre, condition },
  });
  const [from, to] = [route[0], route[route.length - 1]];
  // 14 CFR 61.57(b): one hour after sunset to one hour before sunrise.
  const dark =
    (from !== undefined && isNight('passenger', from, toSeconds(flight.departs))) ||
    (to !== undefined && isNight('passenger', to, toSeconds(flight.arrives)));
  const shortest = Math.min(...route.slice(1).map(({ longestFt }) => longestFt ?? Infinity));
  return [
    need('normal_landing', { kind: 'any' }),
    need('go_around', { kind: 'any' }),
    ...(dark ? [need('normal_landing', { kind: 'night' })] : []),
    ...(shortest <= limits.shortRunwayFt ? [need('short_field_landing', { kind: 'any' })] : []),
  ];
}

/** Flights booked in which the member flies. */
function comingFlights(
  em: EntityManager,
  of: { clubId: string; memberId: string; now: Instant },
): Promise<Coming[]> {
  const instant = (value: string): string =>
    `to_char(${value} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;
  return em.query(
    `SELECT b.id AS "bookingId", ${instant('lower(b.during)')} AS departs, ${instant('upper(b.during)')} AS arrives,
            b.request ->> 'purpose' AS purpose, b.request -> 'route' AS route, b.request -> 'landings' AS landings,
            h.code AS home, m.id AS "modelId", m.make_model AS "makeModel"
       FROM bookings b
       JOIN booking_people p ON p.club_id = b.club_id AND p.booking_id = b.id AND p.member_id = $2 AND p.role = 'pilot'
       JOIN aircraft a ON a.club_id = b.club_id AND a.id = b.aircraft_id
       JOIN aircraft_models m ON m.club_id = a.club_id AND m.id = a.model_id
       JOIN airfields h ON h.club_id = a.club_id AND h.id = a.home_airfield_id
      WHERE b.club_id = $1 AND b.kind = 'flight' AND b.occupies AND lower(b.during) > $3::timestamptz
        AND lower(b.during) < $3::timestamptz + interval '${AHEAD_DAYS} days'
      ORDER BY lower(b.during), b.id`,
    [of.clubId, of.memberId, of.now],
  );
}

function placesOf(em: EntityManager, clubId: string): Promise<Place[]> {
  return em.query(
    `SELECT a.code, a.latitude_deg AS "latitudeDeg", a.longitude_deg AS "longitudeDeg",
            (SELECT max(r.length_ft) FROM runways r WHERE r.club_id = a.club_id AND r.airfield_id = a.id) AS "longestFt"
       FROM airfields a WHERE a.club_id = $1`,
    [clubId],
  );
}

/** Of models booked without a standing checkout. */
async function openCheckouts(
  em: EntityManager,
  { clubId, memberId, zone, now }: { clubId: string; memberId: string; zone: string; now: Instant },
  flights: readonly Coming[],
): Promise<OpenCheckout[]> {
  if (flights.length === 0) return [];
  const { of, inForce, asked } = await loadProgress(em, { clubId, memberIds: [memberId], now });
  const known = of(memberId);
  const open = new Map<string, OpenCheckout>();
  for (const { departs, modelId, makeModel } of flights) {
    const neededOn = localDateOf(toSeconds(departs), zone);
    const subject = { kind: 'model' as const, modelId, equipmentGroup: null, condition: null };
    if (open.has(modelId) || standingFor(subject, known, inForce, { ...asked, today: neededOn })) continue;
    const requirement = inForce.find((one) => one.kind === 'model' && one.modelId === modelId);
    const progress = requirement ? progressOf(requirement, known, inForce, asked) : null;
    open.set(modelId, { id: modelId, kind: 'model', makeModel, neededOn, progress });
  }
  return [...open.values()];
}
