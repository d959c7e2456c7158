/** Weight and balance against the worked examples of FAA-H-8083-25 (chapter 10) and FAA-H-8083-1. From memory. */
import { balanceOf, momentOf, shiftIn } from '../../src/rules/air/balance.js';
import { isInside } from '../../src/rules/air/envelope.js';
import { halfwaySpeedKt, mustAbort, takeoffCheck } from '../../src/rules/air/takeoff-check.js';

/** FAA-H-8083-25, chapter 10, "Computational method": empty 2,100 lb at 78.3 inches, at most 3,400 lb, limits 78 to 86. */
const LOADED = [
  { what: 'Empty aircraft', weightLb: 2100, armIn: 78.3, momentLbIn: 164_430 },
  { what: 'Front seat occupants', weightLb: 340, armIn: 85, momentLbIn: 28_900 },
  { what: 'Rear seat occupants', weightLb: 350, armIn: 121, momentLbIn: 42_350 },
  { what: 'Fuel, 75 gallons at 6 lb', weightLb: 450, armIn: 75, momentLbIn: 33_750 },
  { what: 'Baggage', weightLb: 80, armIn: 150, momentLbIn: 12_000 },
];
const LIMITS = [
  { armIn: 78, weightLb: 2000 },
  { armIn: 78, weightLb: 3400 },
  { armIn: 86, weightLb: 3400 },
  { armIn: 86, weightLb: 2000 },
];

test.each(LOADED)('moment of $what', ({ weightLb, armIn, momentLbIn }) => {
  expect(momentOf({ weightLb, armIn })).toBeCloseTo(momentLbIn, 6);
});

test('3,320 lb at 84.8 inches, within its limits', () => {
  const loaded = balanceOf(LOADED);
  expect(loaded.weightLb).toBe(3320);
  expect(Math.round(loaded.momentLbIn)).toBe(281_430);
  expect(loaded.armIn.toFixed(1)).toBe('84.8');
  expect(isInside(LIMITS, loaded)).toBe(true);
});

test('the same with 81 lb more baggage is too heavy, and with 100 lb moved from the front to the baggage tail-heavy', () => {
  const with81 = balanceOf([...LOADED, { what: 'more', weightLb: 81, armIn: 150 }]);
  expect([with81.weightLb, isInside(LIMITS, with81)]).toEqual([3401, false]);
  const loaded = balanceOf(LOADED);
  const armIn = loaded.armIn + shiftIn(100, 150 - 85, loaded.weightLb);
  expect([armIn > 86, isInside(LIMITS, { ...loaded, armIn })]).toEqual([true, false]);
});

/** The same chapter, "Shifting, adding, and removing weight". */
test('7,800 lb, one inch aft of the limit: 65 lb from station 150 to station 30 is what it takes', () => {
  expect(shiftIn(65, 30 - 150, 7800)).toBeCloseTo(-1, 9);
});

test('6,680 lb at 80.0 and 140 lb more at station 150 lie at 81.4', () => {
  const added = balanceOf([
    { what: 'aircraft', weightLb: 6680, armIn: 80 },
    { what: 'baggage', weightLb: 140, armIn: 150 },
  ]);
  expect(added.armIn.toFixed(1)).toBe('81.4');
});

test('6,100 lb at 78.0 less 100 lb from station 150 lie at 76.8', () => {
  const removed = balanceOf([
    { what: 'aircraft', weightLb: 6100, armIn: 78 },
    { what: 'baggage', weightLb: -100, armIn: 150 },
  ]);
  expect(removed.armIn.toFixed(1)).toBe('76.8');
});

/** Common practice, no source: even acceleration has 70.7 % of the lift-off speed at half the ground roll. */
test('a ground roll as long as the runway just passes the half-way check, one a twentieth longer fails it', () => {
  const check = takeoffCheck(2000, 60);
  expect(mustAbort(check, halfwaySpeedKt(check, 2000, 60))).toBe(false);
  expect(mustAbort(check, halfwaySpeedKt(check, 2100, 60))).toBe(true);
});
