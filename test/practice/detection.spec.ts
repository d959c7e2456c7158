/**
 * How much of what was flown is found, over bank x wind x noise. The truth is the physics the flights are made of. Floors
 * are on counts; PRACTICE_TABLE=1 prints the tables.
 */
import { readTrack } from '../../src/practice/track/reading.js';
import { FIELD, Flight, KT } from './flight.js';
import {
  added,
  groundRows,
  holdRows,
  notHoldRows,
  notSteepRows,
  precision,
  print,
  recall,
  steepTurnRows,
} from './score.js';

test('steep turns from 41 to 60 degrees are found in wind and noise, and medium ones are not', () => {
  const steep = steepTurnRows([41, 45, 50, 55, 60]);
  const medium = steepTurnRows([20, 25, 30, 34]);
  const other = notSteepRows();
  print('steep turns', [...steep, ...medium]);
  print('not steep turns', other);
  const count = added(steep);
  expect(count.hit + count.missed).toBe(5 * 3 * 3 * 3 * 2);
  // Not only on the whole: in no wind, noise or bank is more than one of six missed, and none is made up.
  for (const { what, wind, noise, count: cell } of steep)
    expect({ what, wind, noise, fine: cell.missed <= 1 && cell.invented === 0 }).toEqual({
      ...{ what, wind, noise, fine: true },
    });
  expect(recall(count)).toBeGreaterThanOrEqual(0.99);
  expect(precision(added([...steep, ...medium, ...other]))).toBeGreaterThanOrEqual(0.99);
}, 120_000);

test('holds are found, and what is like one is not', () => {
  const [holds, other] = [holdRows(), notHoldRows()];
  print('holds', holds);
  print('not holds', other);
  const count = added(holds);
  expect(count.hit + count.missed).toBe(3 * 3 * 3 * 2);
  expect(recall(count)).toBeGreaterThanOrEqual(0.95);
  expect(precision(added([...holds, ...other]))).toBeGreaterThanOrEqual(0.95);
}, 120_000);

test('ovals that wander off are no hold, since they never come back over the fix', () => {
  const wandering = Flight.inTheAir({ fromDeg: 0, kt: 0 }, 95, 900, 90).straight(30);
  const steady = Flight.inTheAir({ fromDeg: 0, kt: 0 }, 95, 900, 90).straight(30);
  for (let round = 0; round < 3; round += 1) {
    wandering.turn(180, 18).straight(60).turn(180, 8).straight(60);
    steady.turn(180, 15).straight(60).turn(180, 15).straight(60);
  }
  expect(readTrack(wandering.points(), []).holds).toEqual([]);
  expect(readTrack(steady.points(), []).holds).toMatchObject([{ circuits: 3, direction: 'right' }]);
});

test('down to the runway and up again in a few seconds is a go-around, slow as it may become', () => {
  const dip = Flight.inTheAir({ fromDeg: 0, kt: 0 }, 80, 60, 90).straight(16, -3);
  dip.tas = 58 * KT;
  dip.straight(2.4, -3).straight(40, 3);
  expect(readTrack(dip.points(), [FIELD]).ground).toMatchObject([{ kind: 'low-approach', runway: '09' }]);
});

test.each([1, 2, 5])(
  'take-offs, touch-and-goes and full stops, a point every %i s',
  (everySeconds) => {
    const rows = groundRows(everySeconds);
    print('ground', rows);
    const count = added(rows);
    expect(count.hit + count.missed).toBe(10 * 9 * 3);
    // Recorders that wander by metres in height hide a touch-and-go now and then; none is made up.
    expect(recall(count)).toBeGreaterThanOrEqual(0.9);
    expect(precision(count)).toBeGreaterThanOrEqual(0.99);
    const quiet = added(rows.filter(({ noise }) => noise === 'none'));
    expect(quiet).toEqual({ hit: 90, missed: 0, invented: 0 });
  },
  120_000,
);
