/** Whatever the place, the length of the flight and the night asked for, a moment's next change is never too late. */
import fc from 'fast-check';
import { Moment } from '../../src/rules/engine/moment.js';
import type { AirfieldFact } from '../../src/rules/facts/flight.js';
import {
  isNight,
  nextNightStarts,
  nightSpans,
  touchesNight,
  type NightKind,
} from '../../src/rules/sky/nights.js';
import { sunAltitudeDeg } from '../../src/rules/sky/sun.js';
import { HOME_FIELD } from '../../src/rules/workshop/base-sheet.js';

const DAY = 86_400;
const start = Math.floor(Date.parse('2026-01-01T00:00:00Z') / 1000);
const kinds = fc.constantFrom<NightKind>('civil', 'passenger', 'lights');
const instants = fc.integer({ min: start, max: start + 800 * DAY });
const lengths = fc.oneof(
  fc.constant(0),
  fc.integer({ min: 1, max: 12 * 3600 }),
  fc.integer({ min: DAY, max: 6 * DAY }),
);
const fields = fc
  .record({
    latitudeDeg: fc.oneof(fc.integer({ min: -90, max: 90 }), fc.double({ min: 60, max: 75, noNaN: true })),
    longitudeDeg: fc.integer({ min: -180, max: 180 }),
  })
  .map((place): AirfieldFact => ({ ...HOME_FIELD, ...place }));
const routes = fc.array(fields, { minLength: 1, maxLength: 3 });

const momentAt = (departs: number, durationSeconds: number) =>
  new Moment({ departs, durationSeconds, knownAt: departs, zone: 'UTC' });
const asked = (departs: number, length: number, route: AirfieldFact[], kind: NightKind) => {
  const moment = momentAt(departs, length);
  return { answer: touchesNight(moment, route, kind), next: moment.nextChange };
};
/** The same question answered the slow way: every span of the flight's own interval, no look-ahead. */
const slowly = (departs: number, length: number, route: AirfieldFact[], kind: NightKind) =>
  route.some((field) => nightSpans(kind, field, departs, departs + length).length > 0);

test('the answer is that of the flight interval itself', () => {
  fc.assert(
    fc.property(instants, lengths, routes, kinds, (departs, length, route, kind) => {
      expect(asked(departs, length, route, kind).answer).toBe(slowly(departs, length, route, kind));
    }),
    { numRuns: 200 },
  );
});

test('nothing changes before the remembered change, tried at random and at every edge', () => {
  fc.assert(
    fc.property(
      instants,
      lengths,
      routes,
      kinds,
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 10, maxLength: 10 }),
      (departs, length, route, kind, fractions) => {
        const { answer, next } = asked(departs, length, route, kind);
        expect(next).not.toBeNull();
        expect(next!).toBeGreaterThan(departs);
        const edges = route
          .flatMap((field) => nightSpans(kind, field, departs, next! + length))
          .flatMap(({ from, to }) => [from, to].flatMap((edge) => [edge - length, edge]))
          .flatMap((edge) => [edge - 1, edge, edge + 1]);
        const tried = [
          ...fractions.map((part) => departs + Math.floor(part * (next! - departs))),
          ...edges,
          next! - 1,
        ];
        for (const later of tried) {
          if (later < departs || later >= next!) continue;
          expect(slowly(later, length, route, kind)).toBe(answer);
        }
      },
    ),
    { numRuns: 200 },
  );
});

test('outside the polar circles the remembered change is a real one', () => {
  fc.assert(
    fc.property(
      instants,
      fc.integer({ min: 0, max: 4 * 3600 }),
      fc.integer({ min: -45, max: 45 }),
      fc.integer({ min: -180, max: 180 }),
      kinds,
      (departs, length, latitudeDeg, longitudeDeg, kind) => {
        const route = [{ ...HOME_FIELD, latitudeDeg, longitudeDeg }];
        const { answer, next } = asked(departs, length, route, kind);
        expect(slowly(next!, length, route, kind)).toBe(!answer);
      },
    ),
    { numRuns: 100 },
  );
});

test('night is where the sun is below its altitude, by the sun itself', () => {
  fc.assert(
    fc.property(
      instants,
      fields,
      fc.constantFrom(['civil', -6] as const, ['lights', -50 / 60] as const),
      (at, field, [kind, limit]) => {
        const altitude = sunAltitudeDeg(field, at);
        fc.pre(Math.abs(altitude - limit) > 0.01);
        expect(isNight(kind, field, at)).toBe(altitude < limit);
      },
    ),
    { numRuns: 500 },
  );
});

test('passenger night is night from an hour after sunset to an hour before sunrise', () => {
  fc.assert(
    fc.property(instants, fields, (at, field) => {
      const dark = nightSpans('lights', field, at - 3600, at + 3600);
      const through = dark.length === 1 && dark[0]!.from === at - 3600 && dark[0]!.to === at + 3600;
      expect(isNight('passenger', field, at)).toBe(through);
    }),
    { numRuns: 300 },
  );
});

test('spans are in order, apart, and cut to what was asked', () => {
  fc.assert(
    fc.property(
      instants,
      fc.integer({ min: 0, max: 40 * DAY }),
      fields,
      kinds,
      (from, length, field, kind) => {
        const spans = nightSpans(kind, field, from, from + length);
        spans.forEach((span, index) => {
          expect(Number.isInteger(span.from) && Number.isInteger(span.to)).toBe(true);
          expect(span.from).toBeLessThanOrEqual(span.to);
          expect(span.from).toBeGreaterThanOrEqual(index === 0 ? from : spans[index - 1]!.to + 2);
          expect(span.to).toBeLessThanOrEqual(from + length);
        });
      },
    ),
    { numRuns: 100 },
  );
});

test('naming the next night adds no change point', () => {
  fc.assert(
    fc.property(instants, lengths, fields, kinds, (departs, length, field, kind) => {
      const moment = momentAt(departs, length);
      const clock = nextNightStarts(moment, field, kind);
      expect(moment.nextChange).toBeNull();
      expect(clock === null || /^\d\d:\d\d$/.test(clock)).toBe(true);
    }),
    { numRuns: 100 },
  );
});
