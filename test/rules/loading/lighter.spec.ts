/** Loading less or elsewhere: the least that fits is what is offered, and nothing that was not tried. Common practice, no source. */
import type { FactSheet } from '../../../src/rules/index.js';
import { UnknownFact } from '../../../src/rules/engine/unknown.js';
import {
  keptUsGal,
  lighterLoads,
  otherCompartments,
  surely,
  type Fits,
} from '../../../src/rules/packs/common/loading/lighter.js';
import type { ToldLoading } from '../../../src/rules/packs/common/loading/loaded.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import { AIRCRAFT_TYPE, LOADING_SHEET, STATION } from '../../../src/rules/workshop/records.js';

type Asked = Parameters<typeof lighterLoads>[0];
const { departs: _departs, arrives: _arrives, ...FLIGHT } = baseSheet().flight;

/** Three aboard in two rows, 100 lb of baggage in two compartments, 40 US gal of which 20 are to be kept. */
function asked(fits: Fits, change: Partial<Asked> = {}, loading: Partial<ToldLoading> = {}): Asked {
  return {
    flight: { ...FLIGHT, purpose: 'passengers', personsOnBoard: 3 },
    crew: { passengers: 2, instruction: false },
    loading: {
      ...{ occupantsLb: 500, baggageLb: 100, fuelUsGal: 40 },
      rowsLb: [340, 160],
      compartmentsLb: [60, 40],
      ...loading,
    },
    sheet: {
      ...LOADING_SHEET,
      stations: [
        { ...STATION, name: 'Front seats', kind: 'seats', seats: 2 },
        { ...STATION, name: 'Rear seats', kind: 'seats', seats: 2 },
        { ...STATION, name: 'Locker' },
        { ...STATION, name: 'Pod', kind: 'other' },
      ],
    },
    keptUsGal: 20,
    fits,
    ...change,
  };
}
/** Each remedy in a line: what it says, and the loading after it. */
const told = (remedies: ReturnType<typeof lighterLoads>): string[] =>
  remedies.map(({ title, effects }) => {
    const [effect] = effects;
    if (effect?.op !== 'flight') throw new Error('no change of the request');
    const { loading, personsOnBoard, purpose } = effect.fields;
    const { baggageLb, fuelUsGal, occupantsLb, compartmentsLb } = loading!;
    return [
      ...[title, baggageLb, fuelUsGal, occupantsLb, JSON.stringify(compartmentsLb)],
      ...[personsOnBoard, purpose].filter((one) => one !== undefined),
    ].join(' | ');
  });
const noFuel = { keptUsGal: null };
const alone = {
  flight: { ...FLIGHT, purpose: 'solo' as const, personsOnBoard: 1 },
  crew: { passengers: 0, instruction: false },
};

describe('less baggage', () => {
  test('the least that fits, to the pound, whatever it is', () => {
    for (let most = 0; most < 100; most += 1) {
      const [remedy, ...others] = lighterLoads(
        asked(({ loading }) => loading.baggageLb <= most, { ...noFuel, ...alone }),
      );
      expect(remedy).toMatchObject({
        act: 'reduce-load',
        by: 'member',
        title: `Leave behind ${100 - most} lb of baggage.`,
        effects: [
          { op: 'flight', fields: { loading: { baggageLb: most, fuelUsGal: 40, occupantsLb: 500 } } },
        ],
      });
      expect(others).toEqual([]);
    }
  });
  test('out of the compartment furthest aft first', () => {
    const fits: Fits = ({ loading }) => loading.baggageLb <= 50;
    expect(told(lighterLoads(asked(fits, { ...noFuel, ...alone })))).toEqual([
      'Leave behind 50 lb of baggage. | 50 | 40 | 500 | [50,0]',
    ]);
  });
  test('out of the foremost where only that helps', () => {
    const fits: Fits = ({ loading }) =>
      loading.compartmentsLb![0]! <= 45 && loading.compartmentsLb![1]! >= 40;
    expect(told(lighterLoads(asked(fits, { ...noFuel, ...alone })))).toEqual([
      'Leave behind 15 lb of baggage. | 85 | 40 | 500 | [45,40]',
    ]);
  });
  test('where it is not told which is where, of all', () => {
    const fits: Fits = ({ loading }) => loading.baggageLb <= 30;
    expect(told(lighterLoads(asked(fits, { ...noFuel, ...alone }, { compartmentsLb: null })))).toEqual([
      'Leave behind 70 lb of baggage. | 30 | 40 | 500 | null',
    ]);
  });
  test('half a pound more than whole ones is left behind as well', () => {
    const fits: Fits = ({ loading }) => loading.baggageLb === 0;
    const loading = { baggageLb: 10.5, compartmentsLb: null };
    expect(told(lighterLoads(asked(fits, { ...noFuel, ...alone }, loading)))).toEqual([
      'Leave behind 10.5 lb of baggage. | 0 | 40 | 500 | null',
    ]);
  });
  test('nothing where none is aboard or none of it helps', () => {
    const never: Fits = () => false;
    expect(lighterLoads(asked(never, alone))).toEqual([]);
    const always: Fits = () => true;
    const loading = { baggageLb: 0, compartmentsLb: null };
    expect(lighterLoads(asked(always, { ...noFuel, ...alone }, loading))).toEqual([]);
  });
});

describe('less fuel', () => {
  const bare = { baggageLb: 0, compartmentsLb: null };
  const fuel = (most: number, kept: number | null, usGal = 40) =>
    told(
      lighterLoads(
        asked(
          ({ loading }) => loading.fuelUsGal <= most + 1e-9,
          { ...alone, keptUsGal: kept },
          { ...bare, fuelUsGal: usGal },
        ),
      ),
    );
  test('the least that fits, to the tenth', () => {
    for (let tenths = 200; tenths < 400; tenths += 1) {
      const most = tenths / 10;
      const less = Math.round((40 - most) * 10) / 10;
      expect(fuel(most, 20)).toEqual([`Leave behind ${less} US gal of fuel. | 0 | ${most} | 500 | null`]);
    }
  });
  test('never below what is kept', () => {
    expect(fuel(19.9, 20)).toEqual([]);
    expect(fuel(20, 20)).toHaveLength(1);
    // 19.9 of the 19.95 that could go: a tenth at a time.
    expect(fuel(20.1, 20.05)).toEqual(['Leave behind 19.9 US gal of fuel. | 0 | 20.1 | 500 | null']);
    expect(fuel(20.05, 20.05)).toEqual([]);
    expect([fuel(40, 40), fuel(40, 41), fuel(30, null)]).toEqual([[], [], []]);
    expect(fuel(39.9, 39.9)).toEqual(['Leave behind 0.1 US gal of fuel. | 0 | 39.9 | 500 | null']);
  });
  test('of an odd amount the rest is rounded down, and not below what is kept', () => {
    expect(fuel(30, 20, 40.25)).toEqual(['Leave behind 10.25 US gal of fuel. | 0 | 30 | 500 | null']);
    expect(fuel(20.25, 20.25, 40.25)).toEqual(['Leave behind 20 US gal of fuel. | 0 | 20.25 | 500 | null']);
  });
});

describe('baggage or fuel, and both', () => {
  const weight =
    (most: number): Fits =>
    ({ loading }) =>
      loading.baggageLb + loading.fuelUsGal * 6 <= most + 1e-6;
  test('either where either is enough', () => {
    expect(told(lighterLoads(asked(weight(290), alone)))).toEqual([
      'Leave behind 50 lb of baggage. | 50 | 40 | 500 | [50,0]',
      'Leave behind 8.4 US gal of fuel. | 100 | 31.6 | 500 | [60,40]',
    ]);
  });
  test('both where neither is', () => {
    expect(told(lighterLoads(asked(weight(210), alone)))).toEqual([
      'Leave behind 100 lb of baggage and 5 US gal of fuel. | 0 | 35 | 500 | [0,0]',
    ]);
  });
  test('nothing where both are not enough', () => {
    expect(lighterLoads(asked(weight(119), alone))).toEqual([]);
    expect(told(lighterLoads(asked(weight(120), alone)))).toHaveLength(1);
  });
  test('without baggage there is nothing to leave with the fuel', () => {
    const loading = { baggageLb: 0, compartmentsLb: null };
    let tries = 0;
    const never: Fits = () => {
      tries += 1;
      return false;
    };
    expect(lighterLoads(asked(never, alone, loading))).toEqual([]);
    const once = tries;
    tries = 0;
    lighterLoads(asked(never, alone, { baggageLb: 1, compartmentsLb: null }));
    expect(tries).toBeGreaterThan(once);
  });
  test('a pound of baggage is a pound', () => {
    const fits: Fits = ({ loading }) => loading.baggageLb === 0 && loading.fuelUsGal <= 39;
    const loading = { baggageLb: 1, compartmentsLb: null };
    expect(told(lighterLoads(asked(fits, alone, loading)))).toEqual([
      'Leave behind 1 lb of baggage and 1 US gal of fuel. | 0 | 39 | 500 | null',
    ]);
  });
});

describe('nobody in the last row', () => {
  const fewer: Fits = ({ personsOnBoard, loading }) => personsOnBoard < 3 && loading.occupantsLb === 340;
  const row = (change: Partial<Asked> = {}, loading: Partial<ToldLoading> = {}, fits = fewer) =>
    told(
      lighterLoads(asked(fits, { ...noFuel, ...change }, { baggageLb: 0, compartmentsLb: null, ...loading })),
    );

  test('as many stay as have a seat further forward', () => {
    expect(row()).toEqual(['Take no passengers in rear seats. | 0 | 40 | 340 | null | 2']);
    const [remedy] = lighterLoads(asked(fewer, noFuel, { baggageLb: 0, compartmentsLb: null }));
    expect(remedy).toMatchObject({
      act: 'take-fewer-passengers',
      by: 'member',
      effects: [{ fields: { personsOnBoard: 2, loading: { rowsLb: [340, 0] } } }],
    });
    expect(Object.keys((remedy!.effects[0] as { fields: object }).fields)).not.toContain('purpose');
  });
  test('who stays alone flies alone', () => {
    const two = { flight: { ...FLIGHT, purpose: 'passengers' as const, personsOnBoard: 2 } };
    expect(row(two)).toEqual(['Take no passengers in rear seats. | 0 | 40 | 340 | null | 1 | solo']);
  });
  test('four aboard leave two, for want of seats', () => {
    const four = { flight: { ...FLIGHT, purpose: 'passengers' as const, personsOnBoard: 4 } };
    expect(row(four)).toEqual(['Take no passengers in rear seats. | 0 | 40 | 340 | null | 2']);
  });
  test('a row of which the seats are not told has enough', () => {
    const { sheet } = asked(fewer);
    const stations = sheet!.stations.map((one) => ({ ...one, seats: null }));
    const four = { flight: { ...FLIGHT, purpose: 'passengers' as const, personsOnBoard: 4 } };
    const fits: Fits = ({ personsOnBoard }) => personsOnBoard === 3;
    expect(row({ ...four, sheet: { ...sheet!, stations } }, {}, fits)).toHaveLength(1);
  });
  test('with a second pilot two have to stay', () => {
    const two = (personsOnBoard: number) => ({
      flight: { ...FLIGHT, purpose: 'passengers' as const, personsOnBoard, secondPilotId: 'member-2' },
    });
    expect([row(two(3)), row(two(2))]).toEqual([[expect.stringContaining('| 2')], []]);
  });
  test.each<[string, Partial<Asked>, Partial<ToldLoading>]>([
    ['no loading sheet', { sheet: null }, {}],
    ['rows not told', {}, { rowsLb: null }],
    ['no flight with passengers', { flight: { ...FLIGHT, purpose: 'maintenance', personsOnBoard: 3 } }, {}],
    ['a lesson', { crew: { passengers: 1, instruction: true } }, {}],
    ['nobody aboard but crew', { crew: { passengers: 0, instruction: false } }, {}],
    ['all in front', {}, { rowsLb: [340, 0] }],
    ['nobody in any row', {}, { rowsLb: [0, 0] }],
    ['a row that the sheet does not have', {}, { rowsLb: [340, 0, 160] }],
  ])('not with %s', (_, change, loading) => {
    expect(row(change, loading, () => true)).toEqual([]);
  });
  test('not where it does not help', () => {
    expect(row({}, {}, () => false)).toEqual([]);
  });
  test('somebody alone in the rear of a row of one', () => {
    const one = { flight: { ...FLIGHT, purpose: 'passengers' as const, personsOnBoard: 1 } };
    expect(row(one, {}, () => true)).toEqual([]);
  });
});

describe('elsewhere', () => {
  const moves = (fits: Fits, change: Partial<Asked> = {}, loading: Partial<ToldLoading> = {}) =>
    told(otherCompartments(asked(fits, change, loading)));
  test('the least that fits, from each compartment to each other', () => {
    expect(moves(({ loading }) => loading.compartmentsLb![1]! <= 25)).toEqual([
      'Move 15 lb of baggage from Pod to Locker. | 100 | 40 | 500 | [75,25]',
    ]);
    expect(moves(({ loading }) => loading.compartmentsLb![1]! >= 47)).toEqual([
      'Move 7 lb of baggage from Locker to Pod. | 100 | 40 | 500 | [53,47]',
    ]);
  });
  test('all of it where it takes that, and what was not told is none', () => {
    expect(moves(({ loading }) => loading.compartmentsLb![0] === 0, {}, { compartmentsLb: [100] })).toEqual([
      'Move 100 lb of baggage from Locker to Pod. | 100 | 40 | 500 | [0,100]',
    ]);
    const [move] = otherCompartments(asked(({ loading }) => loading.compartmentsLb![1]! <= 25));
    expect(move).toMatchObject({ act: 'move-load', by: 'member' });
  });
  test('nothing without a sheet, without baggage told by compartment, or where it does not help', () => {
    const always: Fits = () => true;
    expect([
      moves(always, { sheet: null }),
      moves(always, {}, { compartmentsLb: null }),
      moves(always, {}, { compartmentsLb: [0, 0] }),
      moves(() => false),
    ]).toEqual([[], [], [], []]);
  });
  test('a single pound can be moved', () => {
    expect(moves(() => true, {}, { compartmentsLb: [1, 0] })).toEqual([
      'Move 1 lb of baggage from Locker to Pod. | 100 | 40 | 500 | [0,1]',
    ]);
  });
});

test('a try that cannot tell is no; one that is broken is told', () => {
  expect([surely(() => true), surely(() => false)]).toEqual([true, false]);
  expect(
    surely(() => {
      throw new UnknownFact('x', 'y');
    }),
  ).toBe(false);
  expect(() =>
    surely(() => {
      throw new TypeError('broken');
    }),
  ).toThrow('broken');
});

test('kept: the planned time and the club’s minutes at cruise; not known without the burn', () => {
  const parameters = { number: () => 60 } as never;
  const flight = { ...FLIGHT, plannedTenths: 15 } as FactSheet['flight'];
  // An hour and a half and an hour at 9 US gal.
  expect(keptUsGal(AIRCRAFT_TYPE, flight, parameters)).toBe(22.5);
  expect(keptUsGal({ ...AIRCRAFT_TYPE, fuelBurnUsGalPerHour: null }, flight, parameters)).toBeNull();
});
