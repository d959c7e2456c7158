/**
 * Turns against the handbooks: load factor and stall speed by bank, rate and radius of turn. Pilot's Handbook of
 * Aeronautical Knowledge (FAA-H-8083-25), chapter 5: load factor chart, "rate of turn = 1,091 x tangent of the bank angle /
 * airspeed (kt)", "radius = airspeed squared / (11.26 x tangent of the bank angle)" and the worked figures below. Figures
 * from memory. The reader of tracks is held to them too: what it measures on a turn has to be what the handbook works out.
 */
import { readTrack } from '../../src/practice/track/reading.js';
import { bankForRateDeg, loadFactor, stallSpeedFactor, turnRadiusFt } from '../../src/rules/air/turn.js';
import { Flight } from '../practice/flight.js';
import { NOISES, WINDS } from '../practice/score.js';

const tan = (bankDeg: number): number => Math.tan((bankDeg * Math.PI) / 180);
const handbookRate = (kt: number, bankDeg: number): number => (1091 * tan(bankDeg)) / kt;
const handbookRadiusFt = (kt: number, bankDeg: number): number => kt ** 2 / (11.26 * tan(bankDeg));

// The load factor chart; the stall speed rises with its square root ("at 60 degrees ... 40 percent").
test.each([
  [0, 1, 1],
  [15, 1.035, 1.02],
  [30, 1.154, 1.07],
  [45, 1.414, 1.19],
  [60, 2, 1.41],
  [70, 2.923, 1.71],
  [80, 5.747, 2.4],
])('%d degrees of bank: %d g, stall speed times %d', (bank, load, stall) => {
  expect(Math.abs(loadFactor(bank) / load - 1)).toBeLessThan(0.003);
  expect(Math.abs(stallSpeedFactor(bank) - stall)).toBeLessThan(0.006);
});

// 120 kt at 30 degrees: 5.25 degrees a second and 2,215 ft; 240 kt: 2.62 degrees a second; 140 kt: 3,015 ft.
test.each([
  [120, 30, 5.25, 2215],
  [240, 30, 2.62, 8860],
  [140, 30, 4.5, 3015],
])('%d kt at %d degrees: %d degrees a second, %d ft', (kt, bank, rate, radiusFt) => {
  expect(Math.abs(bankForRateDeg(kt, rate) - bank)).toBeLessThan(0.15);
  // 11.26 is g in knots and feet, rounded.
  expect(Math.abs(turnRadiusFt(kt, bank) / radiusFt - 1)).toBeLessThan(0.004);
});

const GRID = [80, 100, 120].flatMap((kt) => [40, 45, 50, 55, 60].map((bank) => [kt, bank] as const));

test.each(GRID)(
  'a turn recorded at %d kt and %d degrees is measured as the handbook works it out',
  (kt, bank) => {
    for (const wind of WINDS)
      for (const noise of NOISES) {
        const flight = Flight.inTheAir(wind, kt, 900, 75).straight(20).turn(720, bank).straight(20);
        const { steepTurns } = readTrack(flight.points({ ...noise, seed: 21 }), []);
        const at = { wind: wind.kt, noise: noise.name };
        expect({ ...at, turns: steepTurns.length }).toEqual({ ...at, turns: 1 });
        const turn = steepTurns[0]!;
        const radiusFt = handbookRadiusFt(turn.trueAirspeedKt, turn.bankDeg);
        expect({ ...at, close: Math.abs(turn.bankDeg - bank) < 2 }).toEqual({ ...at, close: true });
        // By the rate of turn that was flown, and by the radius of the air it was flown in.
        const rate = handbookRate(turn.trueAirspeedKt, turn.bankDeg);
        expect({ ...at, close: Math.abs(rate / handbookRate(kt, bank) - 1) < 0.08 }).toEqual({
          ...at,
          close: true,
        });
        const radius = Math.abs(radiusFt / handbookRadiusFt(kt, bank) - 1);
        expect({ ...at, close: radius < 0.1 }).toEqual({ ...at, close: true });
      }
  },
);
