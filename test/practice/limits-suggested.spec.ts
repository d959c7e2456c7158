/**
 * Suggested limits: by hand, and what must hold whatever was flown. There is no outside source for the arithmetic; that
 * limits begin at what was comfortably flown lately is the FAA personal minimums worksheet's second and third step (seen).
 */
import fc from 'fast-check';
import {
  LIMIT_NAMES,
  noSuggestionSays,
  NOT_RECORDED,
  suggestionSays,
  suggestLimits,
  type Logged,
  type Practised,
} from '../../src/practice/limits-suggested/index.js';

let made = 0;
const landed = (over: Partial<Practised> = {}): Practised => ({
  ...{ id: `p${(made += 1)}`, on: '2026-03-01', manoeuvre: 'normal_landing', good: true },
  ...{ crosswindKt: null, gustSpreadKt: null, runwayFt: null, night: false },
  ...over,
});
const logged = (over: Partial<Logged> = {}): Logged => ({
  ...{ id: `l${(made += 1)}`, on: '2026-03-01', airfield: 'XQHB', longestRunwayFt: 4200 },
  ...{ landings: 1, nightFullStopLandings: 0 },
  ...over,
});
const crosswinds = (...of: Practised[]) => suggestLimits(of, []).find(({ limit }) => limit === 'crosswindKt');
const runways = (practised: Practised[], flights: Logged[]) =>
  suggestLimits(practised, flights).find(({ limit }) => limit === 'runwayFt');

test('nothing on record, nothing suggested', () => {
  expect(suggestLimits([], [])).toEqual([]);
  expect(crosswinds(landed())).toBeUndefined();
  expect(crosswinds(landed({ crosswindKt: 0.9 }))).toBeUndefined();
});

test('the most crosswind landed in well, in whole knots, with its records', () => {
  const most = landed({ id: 'most', crosswindKt: 9.8 });
  expect(crosswinds(landed({ crosswindKt: 7 }), most, landed({ crosswindKt: 9 }))).toEqual({
    ...{ limit: 'crosswindKt', value: 9 },
    evidence: [{ kind: 'practice', id: 'most', on: '2026-03-01' }],
  });
});

test('only landings count, and only those to standard', () => {
  expect(crosswinds(landed({ crosswindKt: 9, manoeuvre: 'steep_turn' }))).toBeUndefined();
  expect(crosswinds(landed({ crosswindKt: 9, good: null }))).toBeUndefined();
  expect(crosswinds(landed({ crosswindKt: 9, good: false }))).toBeUndefined();
});

test('what went wrong since, at as much or less, takes a figure back', () => {
  const well = [landed({ crosswindKt: 6 }), landed({ crosswindKt: 12 })];
  const wrong = (crosswindKt: number, on: string) => landed({ crosswindKt, on, good: false });
  expect(crosswinds(...well, wrong(10, '2026-03-02'))).toMatchObject({ value: 6 });
  expect(crosswinds(...well, wrong(12, '2026-03-01'))).toMatchObject({ value: 6 });
  expect(crosswinds(...well, wrong(12, '2026-02-28'))).toMatchObject({ value: 12 });
  expect(crosswinds(...well, wrong(13, '2026-03-02'))).toMatchObject({ value: 12 });
  expect(crosswinds(...well, wrong(3, '2026-03-02'))).toBeUndefined();
});

test('gusts likewise', () => {
  expect(suggestLimits([landed({ gustSpreadKt: 8 })], [])).toMatchObject([
    { limit: 'gustSpreadKt', value: 8 },
  ]);
});

test('the shortest runway is one recorded, or no longer than the longest of a field landed at', () => {
  const flights = [logged({ id: 'long' }), logged({ id: 'short', longestRunwayFt: 2600 })];
  expect(runways([], flights)).toEqual({
    ...{ limit: 'runwayFt', value: 2600 },
    evidence: [{ kind: 'log', id: 'short', on: '2026-03-01' }],
  });
  expect(runways([landed({ runwayFt: 2100 })], flights)).toMatchObject({ value: 2100 });
  expect(runways([landed({ runwayFt: 3000, good: false, on: '2026-03-05' })], flights)).toMatchObject({
    value: 4200,
  });
  expect(runways([], [logged({ longestRunwayFt: null }), logged({ landings: 0 })])).toBeUndefined();
});

test('the night, where it was landed in', () => {
  const nights = [1, 2, 3, 4, 5, 6].map((day) =>
    logged({ id: `n${day}`, on: `2026-03-0${day}`, nightFullStopLandings: 1, longestRunwayFt: null }),
  );
  const [night] = suggestLimits([landed({ night: true, on: '2026-02-01' })], nights);
  expect(night).toMatchObject({ limit: 'night', value: true });
  expect(night!.evidence.map(({ id }) => id)).toEqual(['n6', 'n5', 'n4', 'n3', 'n2']);
  expect(suggestLimits([landed({ night: true })], [])).toMatchObject([{ limit: 'night' }]);
  expect(suggestLimits([landed({ night: null }), landed({ night: true, good: null })], [])).toEqual([]);
});

const record = fc.record({
  on: fc.constantFrom('2026-02-01', '2026-02-15', '2026-03-01'),
  manoeuvre: fc.constantFrom('normal_landing' as const, 'short_field_landing' as const, 'go_around' as const),
  good: fc.constantFrom(true, false, null),
  crosswindKt: fc.option(fc.double({ min: 0, max: 30, noNaN: true })),
  gustSpreadKt: fc.option(fc.double({ min: 0, max: 30, noNaN: true })),
  runwayFt: fc.option(fc.integer({ min: 800, max: 6000 })),
  night: fc.constantFrom(true, false, null),
});

test('never beyond what was flown well, with evidence for each, whatever is on record', () => {
  fc.assert(
    fc.property(fc.array(record, { maxLength: 12 }), (records) => {
      const practised = records.map((one) => landed(one));
      const good = practised.filter((one) => one.good === true && one.manoeuvre !== 'go_around');
      for (const one of suggestLimits(practised, [])) {
        expect(one.evidence.length).toBeGreaterThan(0);
        for (const { id } of one.evidence) expect(good.map((each) => each.id)).toContain(id);
        if (one.limit === 'night') continue;
        const flown = good.map((each) => each[one.limit]).filter((figure) => figure !== null);
        if (one.limit === 'runwayFt') expect(one.value).toBeGreaterThanOrEqual(Math.min(...flown));
        else expect(one.value).toBeLessThanOrEqual(Math.max(...flown));
      }
    }),
  );
});

test('says in words what it rests on, and why nothing is suggested', () => {
  const said = suggestLimits(
    [landed({ crosswindKt: 9, gustSpreadKt: 6, runwayFt: 2100, night: true })],
    [],
  ).map(suggestionSays);
  expect(said).toEqual([
    'The most crosswind in which a landing went well was 9 kt, last on 2026-03-01.',
    'The strongest gusts in which a landing went well were 6 kt over the wind, last on 2026-03-01.',
    'The shortest runway landed on was at most 2100 ft long, last on 2026-03-01.',
    'Landed at night, last on 2026-03-01.',
  ]);
  for (const limit of LIMIT_NAMES) {
    const recorded = !(NOT_RECORDED as readonly string[]).includes(limit);
    expect(noSuggestionSays(limit, 180)).toMatch(
      recorded ? /^No landing.* in the last 180 days/ : /do not tell/,
    );
  }
});
