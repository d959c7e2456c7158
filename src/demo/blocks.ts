import { addDays } from '../rules/index.js';
import { aircraftBy, type AircraftKey } from './fleet/aircraft.js';
import { DEMO_CLUB_ID, demoId } from './ids.js';
import { byKey, type Person } from './people/person.js';
import type { BlockRow } from './rows.js';
import { at, clock, weekday, type When } from './when.js';

/** Time in the coming weeks when the shop, or the club itself, has an aircraft. */
export function blockRows(people: readonly Person[], when: When): BlockRow[] {
  const member = (key: string): Person => byKey(people, key);
  const saturday = 6 - weekday(when.today) + (weekday(when.today) > 6 ? 7 : 0) + 14;
  const block = (
    kind: BlockRow['kind'],
    aircraft: AircraftKey,
    by: string,
    [firstDay, fromHour]: [number, number],
    [lastDay, toHour]: [number, number],
    note: string,
  ): BlockRow => {
    const from = at(addDays(when.today, firstDay), clock(fromHour));
    const to = at(addDays(when.today, lastDay), clock(toHour));
    return {
      club_id: DEMO_CLUB_ID,
      id: demoId('block', aircraft, note),
      kind,
      aircraft_id: aircraftBy(aircraft).id,
      member_id: member(by).id,
      during: `[${from},${to})`,
      status: 'booked',
      expected_tenths: 0,
      request: {},
      note,
      recorded_at: at(when.daysAgo(1), clock(17)),
    };
  };
  return [
    block('maintenance', 'sprig-1', 'gus', [4, 8], [5, 17], '100-hour inspection'),
    block(
      'maintenance',
      'lindle',
      'thea',
      [3, 8],
      [8, 17],
      'Nose gear door: part arrives, fit and swing the gear',
    ),
    block('maintenance', 'gemel', 'thea', [18, 8], [20, 17], 'Emergency transmitter battery, VOR check, oil'),
    block('maintenance', 'traverse', 'gus', [24, 8], [27, 17], 'Annual inspection'),
    block(
      'club',
      'wicket',
      'marta',
      [saturday, 8],
      [saturday, 12],
      'Open morning: visitors sit in the aircraft',
    ),
  ];
}

/** Start and end of a block's range. */
export function spanOf(block: BlockRow): { from: string; to: string } {
  const [from, to] = block.during.slice(1, -1).split(',') as [string, string];
  return { from, to };
}
