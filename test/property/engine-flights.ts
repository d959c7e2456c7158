/** Arbitrary requests: purpose, crew, time, route and declared weather. */
import fc from 'fast-check';
import { plusSeconds, type FlightFacts } from '../../src/rules/index.js';
import { HOME_FIELD } from '../../src/rules/workshop/base-sheet.js';
import { flag, KNOWN_AT, maybe, mostly } from './engine-parts.js';

const FAR_FIELD = {
  ...HOME_FIELD,
  id: 'airfield-far',
  code: 'XQFR',
  name: 'Farrow',
  latitudeDeg: 40.9,
  longitudeDeg: -104.4,
  elevationFt: 5300,
  runways: [
    ...HOME_FIELD.runways,
    { designator: '16', trueHeadingDeg: 168, lengthFt: 2400, surface: 'grass' as const, lit: false },
  ],
};
/** A strip with nothing but short grass. */
const STRIP = { ...FAR_FIELD, id: 'airfield-strip', code: 'XQST', runways: FAR_FIELD.runways.slice(-1) };

const weather = fc.record({
  observedAt: fc.constant(null),
  windFromDeg: maybe(fc.integer({ min: 0, max: 359 })),
  windKt: maybe(fc.integer({ min: 0, max: 30 })),
  gustKt: maybe(fc.integer({ min: 0, max: 40 })),
  visibilitySm: maybe(fc.constantFrom(0.5, 1, 2.5, 3, 5, 10)),
  ceilingFtAgl: maybe(fc.constantFrom(500, 1000, 3000, 12_000)),
  temperatureC: maybe(fc.integer({ min: -20, max: 40 })),
  altimeterInHg: maybe(fc.constantFrom(29.5, 29.92, 30.3)),
});

export const flight = (base: FlightFacts): fc.Arbitrary<FlightFacts> =>
  fc
    .record({
      purpose: fc.constantFrom('solo', 'passengers', 'passengers', 'dual', 'checkout', 'ferry-to-inspection'),
      extra: fc.integer({ min: 0, max: 3 }),
      instructor: flag,
      ahead: fc.oneof(fc.integer({ min: 0, max: 60 * 24 }), fc.integer({ min: 0, max: 70 * 24 })),
      offset: fc.integer({ min: 0, max: 3599 }),
      lasts: fc.oneof(fc.integer({ min: 0, max: 3 * 3600 }), fc.integer({ min: 0, max: 30 * 3600 })),
      rest: flightFields.chain((fields) => mostly(base, fields as unknown as Partial<FlightFacts>)),
      fair: fc.integer({ min: 0, max: 9 }).map((draw) => draw < 7),
    })
    .map(({ purpose, extra, instructor, ahead, offset, lasts, rest, fair }) => {
      const departs = plusSeconds(KNOWN_AT, 3600 * ahead + offset);
      const taught = purpose === 'dual' || purpose === 'checkout';
      const least = purpose === 'passengers' || taught ? 2 : 1;
      return {
        ...rest,
        purpose: purpose as FlightFacts['purpose'],
        departs,
        arrives: plusSeconds(departs, lasts),
        instructorId: taught && instructor ? 'instructor-1' : null,
        personsOnBoard: purpose === 'solo' ? 1 : Math.min(4, least + extra),
        weather: fair ? { ...FAIR, observedAt: plusSeconds(departs, -1800) } : rest.weather,
      };
    });

/** Weather in which any VFR flight may be made. */
const FAIR = {
  windFromDeg: 270,
  windKt: 8,
  gustKt: null,
  visibilitySm: 10,
  ceilingFtAgl: 12_000,
  temperatureC: 10,
  altimeterInHg: 30.1,
};

const flightFields = fc.record({
  flightRules: fc.constantFrom('VFR', 'IFR'),
  forHire: flag,
  route: fc.constantFrom([HOME_FIELD, FAR_FIELD, HOME_FIELD], [HOME_FIELD, STRIP]),
  plannedTenths: fc.integer({ min: 0, max: 40 }),
  airspace: fc.constantFrom(['E', 'G'], ['G'], ['B', 'E'], ['C'], ['D', 'E'], null),
  maxAltitudeFtMsl: fc.constantFrom(8500, 10_500, 19_000, null),
  maxSpeedKias: fc.constantFrom(120, 260, null),
  usesVor: maybe(flag),
  usesTransponder: maybe(flag),
  overWaterBeyondGlide: maybe(flag),
  weather: maybe(weather),
  destinationForecast: maybe(
    fc.record({
      from: maybe(fc.integer({ min: -10, max: 400 }).map((hours) => plusSeconds(KNOWN_AT, hours * 3600))),
      to: maybe(fc.integer({ min: 0, max: 1700 }).map((hours) => plusSeconds(KNOWN_AT, hours * 3600))),
      ceilingFtAgl: maybe(fc.constantFrom(500, 1999, 2000, 5000)),
      visibilitySm: maybe(fc.constantFrom(1, 3, 10)),
      approachPublished: maybe(flag),
    }),
  ),
  loading: maybe(
    fc.record({
      occupantsLb: maybe(fc.constantFrom(170, 400, 800)),
      baggageLb: maybe(fc.constantFrom(0, 60)),
      fuelUsGal: maybe(fc.constantFrom(5, 20, 48)),
    }),
  ),
});
