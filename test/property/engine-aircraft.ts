/** Arbitrary aircraft: inspections, directives, squawks, equipment and reservations. */
import fc from 'fast-check';
import { addDays, type AircraftFacts, type EquipmentFact } from '../../src/rules/index.js';
import * as records from '../../src/rules/workshop/records.js';
import { day, fact, flag, maybe, mostly, several, span, TODAY } from './engine-parts.js';

const work = fc
  .record({
    begunAt: fc.constantFrom('2027-02-20T15:00:00Z', '2027-02-27T18:00:00Z'),
    backAt: fc.constantFrom(null, '2027-03-01T17:00:00Z', '2027-03-02T02:00:00Z'),
    signedAt: fc.constantFrom(null, '2027-02-28T17:00:00Z'),
    checkFlightBecause: fc.constantFrom(null, 'control cables'),
    checkFlownAt: fc.constantFrom(null, '2027-02-28T18:00:00Z', '2027-03-01T20:00:00Z'),
  })
  .map((fields) => ({
    ...records.WORK,
    ...fields,
    state: fields.signedAt === null ? ('in-work' as const) : ('signed' as const),
  }));

const squawk = fc
  .record({
    state: fc.constantFrom('reported', 'grounding', 'deferred', 'fixed', 'no-fault-found'),
    equipment: fc.constantFrom(
      null,
      'landing-light',
      'position-lights',
      'transponder',
      'attitude-indicator',
      'fuel-quantity',
    ),
    deferral: maybe(
      fc.record({
        on: day(-30, 0),
        deadlineOn: maybe(day(-5, 60)),
        requiredByTypeDesign: maybe(fc.constantFrom(false, false, true)),
        requiredByEquipmentList: maybe(fc.constantFrom(false, false, true)),
        requiredByDirective: maybe(fc.constantFrom(false, false, true)),
        removedOrDeactivated: maybe(fc.constantFrom(true, true, false)),
        placarded: maybe(fc.constantFrom(true, true, false)),
        recorded: maybe(fc.constantFrom(true, true, false)),
        noHazardDeterminedBy: maybe(fc.constant('M. Mechanic')),
      }),
    ),
  })
  .map(({ equipment, ...fields }) => ({
    ...records.SQUAWK,
    ...fields,
    deferral:
      fields.state === 'deferred' && fields.deferral ? { id: 'deferral-1', ...fields.deferral } : null,
    closedAt: fields.state === 'fixed' || fields.state === 'no-fault-found' ? '2027-02-21T20:00:00Z' : null,
    equipmentId: equipment === null ? null : `equipment-${equipment}`,
  }));

/** A display that may be a glass panel, one that is, and an autopilot. */
const DISPLAY = { ...records.EQUIPMENT, id: 'equipment-display', name: 'Flight display' };
const PART = ['heading-indicator', 'rate-of-turn'] as EquipmentFact['satisfies'];
const WHOLE = [
  ...PART,
  'attitude-indicator',
  'airspeed-indicator',
  'altimeter',
  'vertical-speed',
] as typeof PART;
const EXTRA: Record<'none' | 'autopilot' | 'part' | 'whole', EquipmentFact[]> = {
  none: [],
  autopilot: [{ ...DISPLAY, id: 'equipment-autopilot', kind: 'autopilot', name: 'Autopilot' }],
  part: [{ ...DISPLAY, satisfies: PART }],
  whole: [{ ...DISPLAY, satisfies: WHOLE }],
};

/** Of a year or so that begins or ends near the flight, asking for what pilots have about half the time. */
const insurance = fc
  .record({
    from: day(-400, 3),
    through: day(4, 300),
    named: fc.constantFrom(0, 0, 0, 1),
    open: fc.constantFrom(true, true, true, false),
    minimums: fc.record({
      leastLevel: fc.constantFrom(null, 'private' as const, 'commercial' as const),
      instrumentRating: fc.constantFrom(false, false, false, true),
      leastAgeYears: fc.constantFrom(null, 36, 37),
      mostAgeYears: fc.constantFrom(null, 36, 70),
      totalTenths: fc.constantFrom(null, 20, 40),
      classTenths: fc.constantFrom(null, 20, 40),
      tailwheelTenths: fc.constantFrom(null, null, 10),
      modelTenths: fc.constantFrom(null, 10, 30),
      dualInModelTenths: fc.constantFrom(null, null, 10),
      checkoutInModel: flag,
      reviewMonths: fc.constantFrom(null, 6, 12),
    }),
    lately: fc.constantFrom([null, null] as const, [10, 90] as const, [20, 365] as const),
  })
  .map(({ named, open, minimums, lately, ...fields }) => ({
    ...records.INSURANCE,
    ...fields,
    namedPilotIds: named === 1 ? ['member-1'] : [],
    minimums: open
      ? { ...records.PILOT_MINIMUMS, ...minimums, recentTenths: lately[0], recentDays: lately[1] }
      : null,
  }));

export const aircraft = (base: AircraftFacts): fc.Arbitrary<AircraftFacts> => {
  const items = base.items.known ? base.items.value : [];
  const equipment = base.equipment.known ? base.equipment.value : [];
  return fc
    .record({
      type: fact(
        fc
          .record({
            tailwheel: flag,
            retractableGear: flag,
            controllablePropeller: flag,
            pressurised: fc.constantFrom(false, false, true),
            powerPerEngineHp: fc.constantFrom(160, 200, 201, null),
            maxOperatingAltitudeFt: fc.constantFrom(14_000, 25_000, 26_000),
            serviceCeilingFt: fc.constantFrom(14_000, 26_000),
          })
          .map((fields) => ({ ...records.AIRCRAFT_TYPE, ...fields })),
      ),
      use: fact(
        fc.record({
          status: fc.constantFrom('in-service', 'in-service', 'in-service', 'out-of-service'),
          instructionForHire: flag,
          carriesForHire: flag,
        }),
      ),
      meters: fact(fc.integer({ min: 10_000, max: 11_200 }).map((tenths) => [{ ...records.METER, tenths }])),
      items: fact(
        fc
          .record({
            ages: fc.array(fc.integer({ min: -5, max: 900 }), {
              minLength: items.length,
              maxLength: items.length,
            }),
            hours: fc.array(fc.integer({ min: 9_800, max: 10_400 }), {
              minLength: items.length,
              maxLength: items.length,
            }),
            directives: several(
              fc
                .record({
                  plainMonths: maybe(fc.constantFrom(6, 12)),
                  intervalTenths: maybe(fc.constantFrom(500, 1000)),
                  lastDoneOn: maybe(day(-500, 0)),
                  lastDoneTenths: maybe(fc.integer({ min: 9_800, max: 10_400 })),
                  recurring: flag,
                  ferryProhibited: flag,
                })
                .map((fields) => ({
                  ...records.ITEM,
                  ...fields,
                  kind: 'directive' as const,
                  calendarMonths: null,
                })),
              2,
              'directive',
            ),
          })
          .map(({ ages, hours, directives }) => [
            ...items.map((item, index) => ({
              ...item,
              lastDoneOn: addDays(TODAY, -Math.floor(ages[index]! / (item.kind === 'vor-check' ? 12 : 1.6))),
              lastDoneTenths: hours[index]!,
            })),
            ...directives,
          ]),
      ),
      registration: fact(
        several(
          fc
            .record({
              issuedOn: day(-3000, -5),
              printedExpiryOn: maybe(day(-1600, 800)),
              endedOn: fc.constant(null),
            })
            .map((fields) => ({ ...records.REGISTRATION, ...fields })),
          1,
          'registration',
          1,
        ),
      ),
      equipment: fact(
        fc
          .record({
            list: fc.subarray(equipment, { minLength: Math.max(0, equipment.length - 2) }),
            extra: fc.constantFrom('none', 'autopilot', 'part', 'whole'),
          })
          .map(({ list, extra }) => [...list, ...EXTRA[extra]].map((one) => ({ ...one }))),
      ),
      squawks: fact(several(squawk, 2, 'squawk')),
      permits: fact(
        several(
          fc
            .record({ from: day(-20, 5), through: day(6, 90) })
            .map((fields) => ({ ...records.PERMIT, ...fields })),
          1,
          'permit',
        ),
      ),
      reservations: fact(
        several(
          span.chain((fields) =>
            fc
              .constantFrom('flight' as const, 'maintenance' as const, 'club' as const)
              .map((kind) => ({ ...records.RESERVATION, ...fields, kind })),
          ),
          2,
          'reservation',
        ),
      ),
      work: fact(several(work, 2, 'work')),
      insurance: fact(several(insurance, 2, 'insurance')),
      differences: fact(
        several(
          day(-100, 60).map((since) => ({ ...records.DIFFERENCES, since })),
          2,
          'differences',
        ),
      ),
    })
    .chain((fields) => mostly(base, fields as Partial<AircraftFacts>));
};
