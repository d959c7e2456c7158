import { ProblemException } from '../platform/problems/index.js';
import {
  toInstant,
  toSeconds,
  type AirfieldFact,
  type FlightFacts,
  type RunwayChoice,
} from '../rules/index.js';
import type {
  FlightRequestDto,
  ForecastDto,
  LoadingDto,
  RunwayChoiceDto,
  WeatherDto,
} from './flight-request.dto.js';

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
  request: FlightRequestDto & { planned?: boolean },
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
    runways: request.runways ? runwaysOf(request.runways, airfields) : null,
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
    ...(request.planned ? { planned: true } : {}),
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
  wet: weather.wet ?? null,
});

const forecastOf = (forecast: ForecastDto) => ({
  from: forecast.from ? toInstant(toSeconds(forecast.from)) : null,
  to: forecast.to ? toInstant(toSeconds(forecast.to)) : null,
  ceilingFtAgl: forecast.ceilingFtAgl ?? null,
  visibilitySm: forecast.visibilitySm ?? null,
  approachPublished: forecast.approachPublished ?? null,
});

const loadingOf = (loading: LoadingDto) => ({
  occupantsLb: totalOf(loading.rowsLb, loading.occupantsLb, 'occupantsLb'),
  baggageLb: totalOf(loading.compartmentsLb, loading.baggageLb, 'baggageLb'),
  fuelUsGal: loading.fuelUsGal ?? null,
  rowsLb: loading.rowsLb ?? null,
  compartmentsLb: loading.compartmentsLb ?? null,
});

/** The total of weights told by place; where the total is told too, the two must agree to half a pound. */
function totalOf(places: number[] | undefined, total: number | undefined, field: string): number | null {
  if (!places) return total ?? null;
  const sum = Math.round(places.reduce((all, lb) => all + lb, 0) * 10) / 10;
  if (total !== undefined && Math.abs(total - sum) > 0.5)
    throw refuse(
      `loading.${field}`,
      `By place it is ${sum} lb, and together ${total} lb; correct one of the two, or leave the total out.`,
    );
  return sum;
}

/**
 * Runways chosen; one at an airfield that an aircraft does not use says nothing of it.
 *
 * @throws ProblemException 422 for an airfield the club does not have, one named twice, or one without that runway.
 */
function runwaysOf(runways: RunwayChoiceDto[], airfields: readonly AirfieldFact[]): RunwayChoice[] {
  return runways.map(({ airfield: code, runway }, index) => {
    const at = (field: string, detail: string) => refuse(`runways[${index}].${field}`, detail);
    const airfield = airfields.find((one) => one.code === code);
    if (!airfield) throw at('airfield', `The club has no airfield ${code}. Check the code.`);
    if (runways.findIndex((one) => one.airfield === code) !== index)
      throw at('airfield', `${code} is named twice; choose one runway for it.`);
    const known = airfield.runways.map(({ designator }) => designator).join(', ') || 'none';
    if (!airfield.runways.some(({ designator }) => designator === runway))
      throw at('runway', `${code} has no runway ${runway} on record. Choose one of: ${known}.`);
    return { airfield: code, runway };
  });
}
