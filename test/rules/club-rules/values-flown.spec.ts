/** What each value of the schema is on a flight: a person's flying, the aircraft, what the member tells. */
import { known, type FactSheet } from '../../../src/rules/index.js';
import { HOME_FIELD } from '../../../src/rules/workshop/base-sheet.js';
import * as R from '../../../src/rules/workshop/records.js';
import { finding, flown, KNOWN_AT, memberWith, status } from './scene.js';
import { type Flight, on, asked, aircraft, typed, holds, missing, counted, changes } from './values-scene.js';

describe('a person’s flying', () => {
  const other = { modelId: 'model-heron', class: 'multi-engine-land' as const };
  const glider = { ...other, category: 'glider' as const, class: 'none' as const };
  const sums = [
    { ...R.LOG_SUM, totalTenths: 100, nightTenths: 10 },
    { ...R.LOG_SUM, ...other, role: 'dual-received' as const, totalTenths: 200, tailwheel: true },
    { ...R.LOG_SUM, ...glider, role: 'solo' as const, totalTenths: 400, nightTenths: 5 },
    { ...R.LOG_SUM, role: 'instructor' as const, modelId: 'model-lark-b', totalTenths: 800 },
  ];
  const record = (...entries: ReturnType<typeof flown>[]): FactSheet =>
    memberWith({
      log: on(...entries),
      logBefore: known({ through: '2026-12-31T12:00:00Z', sums }, KNOWN_AT),
    });

  test('totals are of the sums and the entries, each by what it was', () => {
    holds(
      record(
        flown('2027-02-01', { totalTenths: 11, nightTenths: 3 }),
        flown('2027-02-02', { totalTenths: 7, ...other, role: 'second-in-command' }),
        flown('2027-02-03', { totalTenths: 9, tailwheel: true, role: 'solo', modelId: null }),
      ),
      'pilot.totalHours == 152.7',
      'pilot.commandHours == 52.0',
      'pilot.nightHours == 1.8',
      'pilot.tailwheelHours == 20.9',
      'pilot.hoursInModel == 11.1',
      'pilot.hoursInClass == 92.0',
    );
    holds(typed({ class: 'none', category: 'glider' }, record()), 'pilot.hoursInClass == 40.0');
    holds(typed({ class: 'single-engine-land', category: 'glider' }, record()), 'pilot.hoursInClass == 0.0');
  });

  test('devices are no flights, nor is what departs after this flight does', () => {
    const sheet = record(
      flown('2027-02-01', { device: 'flight-training-device' }),
      flown('2027-03-01', { id: 'now' }),
      flown('2027-03-01', { id: 'later', departedAt: '2027-03-01T18:00:01Z' }),
    );
    holds(sheet, 'pilot.flightsInDays(60) == 1', 'pilot.totalHours == 151.0');
    expect(counted('pilot.flightsInDays(60) == 1', sheet)).toEqual(['now 2027-03-01: a flight']);
    holds(sheet, 'pilot.lastFlightOn == date("2027-03-01")');
    expect(changes('pilot.totalHours >= 151.5', sheet)).toBe('2027-03-01T18:00:01Z');
  });

  test('within so many days: what each entry gave, named as evidence', () => {
    const sheet = record(
      flown('2027-02-01', { landings: 3, totalTenths: 15, nightFullStopLandings: 2 }),
      flown('2027-02-10', { landings: 1, ...other, role: 'dual-received' }),
      flown('2027-02-12', { landings: 4, nightFullStopLandings: 4, soleManipulator: false, totalTenths: 0 }),
    );
    holds(
      sheet,
      'pilot.hoursInDays(28) == 2.5 && pilot.hoursInDays(27) == 1.0',
      'pilot.hoursInModelInDays(28) == 1.5 && pilot.hoursInModelInDays(27) == 0.0',
      'pilot.flightsInDays(28) == 3 && pilot.flightsInDays(20) == 2 && pilot.flightsInDays(0) == 0',
      'pilot.flightsInModelInDays(28) == 2 && pilot.flightsInModelInDays(20) == 1',
      'pilot.lessonsInDays(28) == 1 && pilot.lessonsInDays(18) == 0',
      'pilot.landingsInDays(28) == 4 && pilot.landingsInDays(27) == 1',
      'pilot.landingsInModelInDays(28) == 3 && pilot.landingsInModelInDays(27) == 0',
      'pilot.nightLandingsInDays(28) == 2 && pilot.nightLandingsInDays(27) == 0',
      'pilot.lastFlightOn == date("2027-02-12") && pilot.lastFlightInModelOn == date("2027-02-12")',
    );
    expect(counted('pilot.landingsInDays(28) == 4', sheet)).toEqual([
      'log-2027-02-10 2027-02-10: 1 landing',
      'log-2027-02-01 2027-02-01: 3 landings',
    ]);
    expect(counted('pilot.nightLandingsInDays(28) == 2', sheet)).toEqual([
      'log-2027-02-01 2027-02-01: 2 landings',
    ]);
    expect(counted('pilot.hoursInDays(28) == 2.5', sheet)).toEqual([
      'log-2027-02-10 2027-02-10: 1.0 h',
      'log-2027-02-01 2027-02-01: 1.5 h',
    ]);
    expect(counted('pilot.lessonsInDays(28) == 1', sheet)).toEqual(['log-2027-02-10 2027-02-10: a lesson']);
    expect(counted('pilot.lastFlightInModelOn > date("2020-01-01")', sheet)).toEqual([
      'log-2027-02-12 2027-02-12: last flight',
    ]);
  });

  test('the last flight in another model leaves the last in this one', () => {
    const sheet = record(flown('2027-02-01'), flown('2027-02-10', other));
    holds(
      sheet,
      'pilot.lastFlightOn == date("2027-02-10")',
      'pilot.lastFlightInModelOn == date("2027-02-01")',
    );
  });

  test('records that were looked at twice stand once, newest first, and no more than sixty', () => {
    const many = record(
      ...Array.from({ length: 70 }, (_, at) =>
        flown(`2027-02-${String(1 + (at % 20)).padStart(2, '0')}`, {
          id: `log-${String(at).padStart(2, '0')}`,
        }),
      ),
    );
    const both = counted('pilot.flightsInDays(60) == 70 && pilot.landingsInDays(60) == 70', many);
    expect(both).toHaveLength(60);
    expect(both.slice(0, 3)).toEqual([
      'log-59 2027-02-20: a flight',
      'log-39 2027-02-20: a flight',
      'log-19 2027-02-20: a flight',
    ]);
  });
});

describe('the aircraft', () => {
  test.each<[Partial<typeof R.AIRCRAFT_TYPE>, string]>([
    [{ registration: 'NX77T' }, 'aircraft.registration == "NX77T"'],
    [{ makeModel: 'Heron 2' }, 'aircraft.makeModel == "Heron 2"'],
    [{ typeDesignator: 'HRN2' }, 'aircraft.typeDesignator == "HRN2"'],
    [{ category: 'powered-lift' }, 'aircraft.category == "powered-lift"'],
    [{ class: 'multi-engine-sea' }, 'aircraft.class == "multi-engine-sea"'],
    [{ seats: 6 }, 'aircraft.seats == 6'],
    [{ engines: 2 }, 'aircraft.engines == 2'],
    [{ powerPerEngineHp: 310.5 }, 'aircraft.powerPerEngineHp == 310.5'],
    [{ tailwheel: true }, 'aircraft.tailwheel && !aircraft.retractableGear'],
    [{ retractableGear: true }, 'aircraft.retractableGear && !aircraft.controllablePropeller'],
    [{ controllablePropeller: true }, 'aircraft.controllablePropeller && !aircraft.pressurised'],
    [{ pressurised: true }, 'aircraft.pressurised && !aircraft.tailwheel'],
    [{ usableFuelUsGal: 84 }, 'aircraft.usableFuelUsGal == 84.0'],
    [{ demonstratedCrosswindKt: 17 }, 'aircraft.demonstratedCrosswindKt == 17.0'],
  ])('%j: %s', (fields, requirement) => holds(typed(fields), requirement));

  test.each<[Partial<typeof R.AIRCRAFT_TYPE>, string, string]>([
    [{ powerPerEngineHp: null }, 'aircraft.powerPerEngineHp > 200.0', "the engine's power is not on record"],
    [{ usableFuelUsGal: null }, 'aircraft.usableFuelUsGal > 40.0', 'the usable fuel is not on record'],
    [
      { demonstratedCrosswindKt: null },
      'aircraft.demonstratedCrosswindKt > 10.0',
      'the demonstrated crosswind is not on record',
    ],
    [{ fuelBurnUsGalPerHour: null }, 'loading.fuelHours > 1.0', 'the fuel burned in cruise is not on record'],
    [{ fuelBurnUsGalPerHour: 0 }, 'loading.fuelHours > 1.0', 'the fuel burned in cruise is not on record'],
  ])('%j: %s cannot be told', (fields, requirement, says) => {
    expect(missing(requirement, typed(fields))).toBe(`Cannot tell: ${says}.`);
  });

  test('in service or not', () => {
    holds(aircraft({ use: known(R.USE, KNOWN_AT) }), 'aircraft.inService');
    holds(aircraft({ use: known({ ...R.USE, status: 'out-of-service' }, KNOWN_AT) }), '!aircraft.inService');
  });

  test('squawks stand until they are settled, and are named as evidence', () => {
    const squawk = (id: string, fields: Partial<typeof R.SQUAWK> = {}) => ({
      ...R.SQUAWK,
      id,
      title: id,
      ...fields,
    });
    const open = aircraft({
      squawks: on(
        squawk('worn tyre', { state: 'deferred', deferral: R.DEFERRAL }),
        squawk('flat battery'),
        squawk('cracked spinner', { state: 'grounding' }),
        squawk('stuck door', { state: 'fixed', closedAt: '2027-03-01T18:00:00Z' }),
        squawk('odd noise', { state: 'no-fault-found', closedAt: '2027-03-01T18:00:00Z' }),
        squawk('dim lamp', { state: 'fixed', closedAt: '2027-03-01T18:00:01Z' }),
        squawk('loose screw', { state: 'no-fault-found', closedAt: '2027-03-01T18:00:02Z' }),
        squawk('old one', { state: 'fixed', closedAt: null }),
      ),
    });
    holds(open, 'aircraft.openSquawks == 5 && aircraft.deferredSquawks == 1');
    expect(counted('aircraft.openSquawks == 5', open)).toEqual(
      ['worn tyre', 'loose screw', 'flat battery', 'dim lamp', 'cracked spinner'].map(
        (id) => `${id} null: ${id}`,
      ),
    );
    expect(changes('aircraft.openSquawks == 5', open)).toBe('2027-03-01T18:00:01Z');
    holds(aircraft({ squawks: on() }), 'aircraft.openSquawks == 0 && aircraft.deferredSquawks == 0');
  });

  test('equipment that is fitted for the whole flight', () => {
    const fitted = (fields: Partial<typeof R.EQUIPMENT>, at: number) => ({
      ...R.EQUIPMENT,
      id: `equipment-${at}`,
      ...fields,
    });
    const sheet = aircraft({
      equipment: on(
        ...[
          { kind: 'transponder' },
          { kind: 'autopilot', installedOn: '2027-03-01' },
          { kind: 'autopilot' },
          { kind: 'gps-navigator', portable: true },
          { kind: 'dme', installedOn: '2027-03-02' },
          { kind: 'elt', removedOn: '2027-03-02' },
          { kind: 'clock', removedOn: '2027-03-01' },
        ].map((fields, at) => fitted(fields as never, at)),
      ),
    });
    holds(sheet, 'aircraft.equipment == ["autopilot", "elt", "transponder"]');
  });

  test('meters, each its own', () => {
    const meters = on(
      { ...R.METER, kind: 'hobbs' as const, tenths: 11 },
      { ...R.METER, kind: 'tachometer' as const, tenths: 22 },
      { ...R.METER, kind: 'airframe' as const, tenths: 33 },
    );
    holds(
      aircraft({ meters }),
      'aircraft.hobbsHours == 1.1 && aircraft.tachometerHours == 2.2 && aircraft.airframeHours == 3.3',
    );
    const none = aircraft({ meters: on() });
    expect(missing('aircraft.hobbsHours > 1.0', none)).toBe(
      'Cannot tell: no reading of the hobbs is on record.',
    );
  });
});

describe('what the member tells', () => {
  const told = (weather: Partial<typeof R.WEATHER>, flight: Partial<Flight> = {}): FactSheet =>
    asked({ weather: { ...R.WEATHER, windFromDeg: 188, windKt: 12, gustKt: null, ...weather }, ...flight });
  const CROSS = 'wind.crosswindKt > 11.99 && wind.crosswindKt < 12.01';

  test('the wind, gusts counted where they are stronger', () => {
    holds(told({}), 'wind.speedKt == 12.0 && wind.gustKt == 12.0', CROSS);
    holds(told({ gustKt: 20 }), 'wind.speedKt == 12.0 && wind.gustKt == 20.0', 'wind.crosswindKt > 19.9');
    holds(told({ gustKt: 5 }), 'wind.gustKt == 12.0');
    holds(told({ windKt: 0 }), 'wind.gustKt == 0.0');
    // From the other side it blows across all the same; without a direction wholly so.
    holds(told({ windFromDeg: 8 }), CROSS, 'wind.landingCrosswindKt > 11.99');
    holds(told({ windFromDeg: null }), CROSS);
    // Straight down runway 27.
    holds(told({ windFromDeg: 278 }), 'wind.headwindKt == 12.0 && wind.landingTailwindKt == 0.0');
  });

  test('the destination’s runways for the landing', () => {
    const oneWay = {
      ...HOME_FIELD,
      code: 'XQOW',
      runways: [{ ...HOME_FIELD.runways[0]!, trueHeadingDeg: 188 }],
    };
    const there = { route: [HOME_FIELD, oneWay] };
    holds(told({}, there), CROSS, 'wind.landingCrosswindKt < 0.01 && wind.landingTailwindKt == 0.0');
    holds(
      told({ windFromDeg: 8 }, there),
      'wind.landingTailwindKt > 11.99 && wind.landingTailwindKt < 12.01',
    );
    // By way of another field it is the last one that counts.
    const byWayOf = { route: [HOME_FIELD, HOME_FIELD, oneWay] };
    holds(told({}, byWayOf), 'wind.landingCrosswindKt < 0.01');
    holds(told({ windFromDeg: 8 }, byWayOf), 'wind.landingTailwindKt > 11.99');
    const from = { route: [oneWay, HOME_FIELD] };
    holds(
      told({ windFromDeg: 8 }, from),
      'wind.headwindKt < -11.99 && wind.headwindKt > -12.01',
      'wind.landingCrosswindKt > 11.99',
    );
    expect(
      missing(
        'wind.landingCrosswindKt < 9.0',
        told({}, { route: [HOME_FIELD, { ...oneWay, name: 'One Way', runways: [] }] }),
      ),
    ).toBe('Cannot tell: no runway of One Way is on record.');
    expect(missing('wind.crosswindKt < 9.0', told({}, { route: [] }))).toBe(
      'Cannot tell: no runway of the airfield is on record.',
    );
  });

  test.each([
    // Departing at 18:00Z.
    ['2027-03-01T16:00:00Z', 'met'],
    ['2027-03-01T15:59:59Z', 'unknown'],
    ['2027-03-01T18:00:00Z', 'met'],
    ['2027-03-01T18:00:01Z', 'unknown'],
    [null, 'unknown'],
  ])('observed at %s it is %s', (observedAt, is) => {
    expect(status('weather.visibilitySm >= 3.0', told({ observedAt }))).toBe(is);
  });

  test('speaks for two hours', () => {
    expect(changes('weather.visibilitySm >= 3.0', told({ observedAt: '2027-03-01T17:30:00Z' }))).toBe(
      '2027-03-01T19:30:01Z',
    );
  });

  test('the rest of the weather', () => {
    const sheet = told({ visibilitySm: 6, ceilingFtAgl: 3500, temperatureC: -4 });
    holds(
      sheet,
      'weather.visibilitySm == 6.0 && weather.ceilingFt == 3500.0 && weather.temperatureC == -4.0',
    );
  });

  test.each([
    ['wind.speedKt < 9.0', told({ windKt: null }), 'the wind is not told'],
    ['wind.gustKt < 9.0', told({ windKt: null }), 'the wind is not told'],
    ['weather.visibilitySm > 3.0', told({ visibilitySm: null }), 'the visibility is not told'],
    ['weather.ceilingFt > 3.0', told({ ceilingFtAgl: null }), 'the ceiling is not told'],
    ['weather.temperatureC > 3.0', told({ temperatureC: null }), 'the temperature is not told'],
    ['wind.speedKt < 9.0', asked({}), 'no weather observed shortly before departure is told'],
    ['loading.fuelUsGal > 3.0', asked({ loading: null }), 'the fuel is not told'],
    [
      'loading.fuelHours > 3.0',
      asked({ loading: { ...R.LOADING, fuelUsGal: null } }),
      'the fuel is not told',
    ],
    [
      'loading.occupantsLb > 3.0',
      asked({ loading: { ...R.LOADING, occupantsLb: null } }),
      'the weight of the occupants is not told',
    ],
    [
      'loading.baggageLb > 3.0',
      asked({ loading: { ...R.LOADING, baggageLb: null } }),
      'the weight of the baggage is not told',
    ],
  ])('%s waits while it is not told', (requirement, sheet, says) => {
    const condition = 'Tell it before departure.';
    expect(finding({ requirement, condition }, sheet)).toMatchObject({
      ...{ status: 'unknown', says: `Cannot tell: ${says}.`, conditions: [condition] },
    });
  });

  test('the loading', () => {
    const sheet = typed(
      { fuelBurnUsGalPerHour: 10 },
      asked({ loading: { occupantsLb: 340, baggageLb: 0, fuelUsGal: 36 } }),
    );
    holds(
      sheet,
      'loading.occupantsLb == 340.0 && loading.baggageLb == 0.0',
      'loading.fuelUsGal == 36.0 && loading.fuelHours == 3.6',
    );
  });
});
