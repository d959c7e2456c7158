/** The forecast tried on the 18 months the demo club flew: what its bounds hold, and that it beats guessing. */
import { FLEET } from '../../src/demo/fleet/aircraft.js';
import { generateClub } from '../../src/demo/generate.js';
import { DEMO_SEED } from '../../src/demo/ids.js';
import { ZONE } from '../../src/demo/when.js';
import { attemptsOf, boundsOf } from '../../src/maintenance/forecast/backtest.js';
import { weeklyUsage, type Reading } from '../../src/maintenance/forecast/usage.js';
import { localDateOf, toSeconds } from '../../src/rules/index.js';

const { rows } = generateClub({ seed: DEMO_SEED, asOf: '2026-11-25T15:00:00Z' });

const histories = FLEET.map(({ id }) => {
  const readings = rows.meter_readings
    .filter((row) => row.aircraft_id === id && row.kind === 'tachometer')
    .map((row): Reading => ({ on: localDateOf(toSeconds(row.read_at), ZONE), totalTenths: row.shown_tenths }))
    .sort((a, b) => (a.on === b.on ? a.totalTenths - b.totalTenths : a.on < b.on ? -1 : 1));
  return weeklyUsage(readings)!.tenths;
});

test('weeks add up to what the meters ran between the first whole week and the last', () => {
  for (const tenths of histories) {
    expect(tenths.length).toBeGreaterThan(70);
    expect(tenths.every((week) => week >= 0 && Number.isFinite(week))).toBe(true);
  }
});

test('bounds made to hold 80 % of the outcomes hold about that much of those they were not made from', () => {
  const bounds = boundsOf(histories.flatMap((history) => attemptsOf(history, 13)))!;
  expect(bounds.testedBy).toBeGreaterThan(500);
  expect(bounds.coverage!).toBeGreaterThan(0.65);
  expect(bounds.coverage!).toBeLessThan(0.95);
});
