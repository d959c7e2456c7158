/** 14 CFR 91.215(b), 91.225(d): where a transponder and ADS-B Out are needed, case by case. */
import {
  adsBOverGulf,
  transponderNeed,
} from '../../../src/rules/packs/us/aircraft/equipment/transponder-airspace.js';
import { EQUIPMENT_PARAMETERS } from '../../../src/rules/parameters/us/equipment.js';

const LOW = {
  classes: ['E', 'G'] as const,
  maxAltitudeFtMsl: 5000,
  nearestPrimaryNm: 60,
  excepted: false,
};
const need = (change: Partial<Parameters<typeof transponderNeed>[0]>) =>
  transponderNeed({ ...LOW, ...change }, 10_000, 30, 2500);

test.each([
  [{ classes: ['A'] as const }, 'the flight goes through class A'],
  [{ classes: ['B'] as const }, 'the flight goes through class B'],
  [{ classes: ['C', 'B', 'C'] as const }, 'the flight goes through class B, C'],
  [{ classes: ['C'] as const, excepted: true }, 'the flight goes through class C'],
  [{ maxAltitudeFtMsl: 10_000 }, 'the flight goes to 10,000 ft'],
  [{ maxAltitudeFtMsl: 10_000, heightFtAgl: null }, 'the flight goes to 10,000 ft'],
  [{ maxAltitudeFtMsl: 10_000, heightFtAgl: 2501 }, 'the flight goes to 10,000 ft'],
  [{ nearestPrimaryNm: 30 }, 'the flight goes within 30 NM of a listed primary airport'],
])('%j: needed', (change, because) => {
  expect(need(change)).toEqual({ needed: true, because, conditions: [] });
});

const OUT = 'Stay out of class A, B and C, and do not fly above class B or C below 10,000 ft.';
const AWAY = 'Stay more than 30 NM from the primary airports listed in part 91, appendix D.';
const BELOW = 'Remain below 10,000 ft.';

test.each([
  [{}, [OUT]],
  [{ classes: null }, [OUT]],
  [{ maxAltitudeFtMsl: 9999 }, [OUT]],
  // Within 2,500 ft of the surface.
  [{ maxAltitudeFtMsl: 10_000, heightFtAgl: 2500 }, [OUT]],
  [{ maxAltitudeFtMsl: 12_000, excepted: true }, [OUT]],
  [{ nearestPrimaryNm: 30.1 }, [OUT]],
  [{ nearestPrimaryNm: 10, excepted: true }, [OUT]],
  [{ nearestPrimaryNm: null }, [OUT, AWAY]],
  [{ nearestPrimaryNm: null, excepted: true }, [OUT]],
  [{ maxAltitudeFtMsl: null }, [OUT, BELOW]],
  [{ maxAltitudeFtMsl: null, excepted: true }, [OUT]],
])('%j: not needed, as long as', (change, conditions) => {
  expect(need(change)).toEqual({
    needed: false,
    because: 'the airspace named does not ask for it',
    conditions,
  });
});

// 14 CFR 91.225(d)(5): at and above 3,000 ft within 12 NM of the coast.
const gulf = (id: string) => EQUIPMENT_PARAMETERS.find((one) => one.id === id)!;
const FROM_FT = gulf('us.ads-b.gulf-from-ft');
const WITHIN_NM = gulf('us.ads-b.gulf-within-nm');

test('the figures over the Gulf were seen, in feet and nautical miles', () => {
  expect([FROM_FT.unit, FROM_FT.status, WITHIN_NM.unit, WITHIN_NM.status]).toEqual([
    'ft',
    'seen',
    'nm',
    'seen',
  ]);
});

test.each([
  [3000, 12, true],
  [2999, 12, false],
  [3000, 12.1, false],
  [null, 5, false],
  [5000, null, false],
])('over the Gulf at %p ft, %p NM from the coast: %p', (altitudeFtMsl, coastNm, needed) => {
  const [fromFt, withinNm] = [FROM_FT, WITHIN_NM].map((one) => one.values[0]!.value as number);
  expect(adsBOverGulf({ altitudeFtMsl, coastNm }, fromFt!, withinNm!)).toBe(needed);
});
