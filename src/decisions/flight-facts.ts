import { ProblemException } from '../platform/problems/index.js';
import { toInstant, toSeconds, type AirfieldFact, type FlightFacts } from '../rules/index.js';
import type { FlightRequestDto, ForecastDto, LoadingDto, WeatherDto } from './flight-request.dto.js';

/** Longest flight that can be asked about; a club's own limit on booking length is policy. */
const LONGEST_SECONDS = 400 * 86_400;

const refuse = (field: string, detail: string, status = 422): ProblemException =>
  new ProblemException('flight-invalid', { status, title: 'The flight cannot be read', detail, field });

/**
 * The times of a flight.
 *
 * @throws ProblemException 422 naming the field: the arrival not after the departure, or too far from it.
 */
export function flightTimes(request: Pick<FlightRequestDto, 'departs' | 'arrives'>): {
  departs: number;
  arrives: number;
} {
  const departs = toSeconds(request.departs);
  const arrives = toSeconds(request.arrives);
  if (arrives <= departs)
    throw refuse('arrives', 'The arrival must lie after the departure; change one of the two times.');
  if (arrives - departs > LONGEST_SECONDS)
    throw refuse('arrives', 'A flight lasts at most 400 days; bring the arrival nearer.');
  return { departs, arrives };
}

/**
 * The request as facts. Fields left out become null: unknown, never assumed.
 *
 * @throws ProblemException 422 naming the field: times in the wrong order, an airfield the club does not have, a crew
 *   that contradicts itself.
 */
export function flightFacts(
  request: FlightRequestDto,
  memberId: string,
  airfields: readonly AirfieldFact[],
  homeAirfieldId: string,
): FlightFacts {
  const { departs, arrives } = flightTimes(request);
  if (request.plannedHours === 0)
    throw refuse('plannedHours', 'The meter turns on every flight; give the hours or leave them out.');
  const { instructorId = null, secondPilotId = null, actingPilotId = null } = request;
  if (instructorId === memberId)
    throw refuse('instructorId', 'Nobody instructs themselves; name another instructor or none.');
  if (secondPilotId !== null && secondPilotId === memberId)
    throw refuse('secondPilotId', 'The second pilot must be somebody else.');
  if (secondPilotId !== null && secondPilotId === instructorId) {
    throw refuse('secondPilotId', 'The instructor is named already; leave the second pilot out.');
  }
  if (actingPilotId !== null && actingPilotId !== memberId && actingPilotId !== secondPilotId) {
    throw refuse('actingPilotId', 'The acting pilot must be the member or the second pilot.');
  }
  if (instructorId !== null && request.purpose !== 'dual' && request.purpose !== 'checkout') {
    throw refuse(
      'instructorId',
      'An instructor is named for a dual or checkout flight only; change the purpose or leave the instructor out.',
    );
  }
  return {
    departs: toInstant(departs),
    arrives: toInstant(arrives),
    purpose: request.purpose,
    flightRules: request.flightRules ?? 'VFR',
    personsOnBoard: request.personsOnBoard,
    memberId,
    instructorId,
    secondPilotId,
    actingPilotId,
    secondPilotRequired: request.secondPilotRequired ?? false,
    forHire: request.forHire ?? false,
    route: routeOf(request, airfields, homeAirfieldId),
    // The whole time between departure and arrival is the most the meter can run: the cautious reading.
    plannedTenths:
      request.plannedHours !== undefined
        ? Math.round(request.plannedHours * 10)
        : Math.ceil((arrives - departs) / 360),
    airspace: request.airspace ?? null,
    maxAltitudeFtMsl: request.maxAltitudeFtMsl ?? null,
    maxSpeedKias: request.maxSpeedKias ?? null,
    usesVor: request.usesVor ?? null,
    usesTransponder: request.usesTransponder ?? null,
    overWaterBeyondGlide: request.overWaterBeyondGlide ?? null,
    weather: request.weather ? weatherOf(request.weather) : null,
    destinationForecast: request.destinationForecast ? forecastOf(request.destinationForecast) : null,
    loading: request.loading ? loadingOf(request.loading) : null,
  };
}

function routeOf(
  { route, landings }: Pick<FlightRequestDto, 'route' | 'landings'>,
  airfields: readonly AirfieldFact[],
  homeAirfieldId: string,
): AirfieldFact[] {
  if (route && landings)
    throw refuse('landings', 'Give either the whole route or the landings on the way, not both.');
  const byCode = (field: string) => (code: string, index: number) => {
    const airfield = airfields.find((candidate) => candidate.code === code);
    const known = airfields.map((candidate) => candidate.code).join(', ');
    if (airfield) return airfield;
    throw refuse(
      `${field}[${index}]`,
      `The club has no airfield ${code}. Choose one of ${known}, or have an administrator add it.`,
    );
  };
  if (route) return route.map(byCode('route'));
  const home = airfields.find((airfield) => airfield.id === homeAirfieldId);
  if (!home) throw new Error('an aircraft lives at an airfield the club does not have');
  return [home, ...(landings ?? []).map(byCode('landings')), home];
}

const weatherOf = (weather: WeatherDto) => ({
  observedAt: weather.observedAt ? toInstant(toSeconds(weather.observedAt)) : null,
  windFromDeg: weather.windFromDeg ?? null,
  windKt: weather.windKt ?? null,
  gustKt: weather.gustKt ?? null,
  visibilitySm: weather.visibilitySm ?? null,
  ceilingFtAgl: weather.ceilingFtAgl ?? null,
  temperatureC: weather.temperatureC ?? null,
  altimeterInHg: weather.altimeterInHg ?? null,
});

const forecastOf = (forecast: ForecastDto) => ({
  from: forecast.from ? toInstant(toSeconds(forecast.from)) : null,
  to: forecast.to ? toInstant(toSeconds(forecast.to)) : null,
  ceilingFtAgl: forecast.ceilingFtAgl ?? null,
  visibilitySm: forecast.visibilitySm ?? null,
  approachPublished: forecast.approachPublished ?? null,
});

const loadingOf = (loading: LoadingDto) => ({
  occupantsLb: loading.occupantsLb ?? null,
  baggageLb: loading.baggageLb ?? null,
  fuelUsGal: loading.fuelUsGal ?? null,
});
