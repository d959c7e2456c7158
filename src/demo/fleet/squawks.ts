import { addDays } from '../../rules/index.js';
import { Draw } from '../draw.js';
import type { Outing } from '../flying/outing.js';
import { endMinute } from '../flying/outing.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { DeferralRow, SquawkRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { aircraftBy, DEFERRED_DAYS_AGO, GROUNDED_DAYS_AGO, type AircraftKey } from './aircraft.js';
import { equipmentId } from './equipment.js';

const MECHANIC = 'T. Emberly, mechanic 4-Q';

/** Things that went wrong and were put right. */
const PAST: readonly [title: string, fix: string][] = [
  ['Left brake feels soft', 'Brake bled, fluid topped up'],
  ['Radio breaks up on transmit', 'Push-to-talk switch replaced'],
  ['Nosewheel shimmies on landing', 'Shimmy damper serviced'],
  ['Door seal hangs loose', 'Seal glued'],
  ['Landing light out', 'Lamp replaced'],
  ['Engine runs rough at idle', 'Lower plugs cleaned and gapped'],
  ['Fuel cap chain broken', 'Chain replaced'],
  ['Heading gyro drifts', 'Gyro exchanged'],
  ['Seat does not lock in the third hole', 'Seat pin replaced'],
  ['Tyre worn to the second groove', 'Tyre and tube replaced'],
];

/** Squawks after flights of the 18 months; two stand today: lights deferred on one trainer, the retractable grounded. */
export function squawkRows(
  seed: string,
  outings: readonly Outing[],
  when: When,
): { squawks: SquawkRow[]; deferrals: DeferralRow[] } {
  const past = PAST.map(([title, fix], index) => {
    const draw = new Draw(`${seed}/squawk/${index}`);
    const old = outings.filter((one) => when.ago(one.date) > 20);
    const outing = old[Math.floor(((index + draw.next()) / PAST.length) * old.length)]!;
    return fixed(outing, title, fix, draw.int(1, 5));
  });
  const lights = standing(outings, when, 'sprig-2', DEFERRED_DAYS_AGO, {
    title: 'Position lights do not come on',
    detail: 'Both wing tips and the tail stay dark; the breaker holds.',
    state: 'deferred',
    equipment_id: equipmentId('sprig-2', 'position-lights'),
  });
  const landing = standing(outings, when, 'sprig-2', DEFERRED_DAYS_AGO, {
    title: 'Landing light flickers',
    detail: 'Wiring at the cowl, to be done with the position lights.',
    state: 'deferred',
    equipment_id: equipmentId('sprig-2', 'landing-light'),
  });
  const gear = standing(outings, when, 'lindle', GROUNDED_DAYS_AGO, {
    title: 'Nose gear door does not lock',
    detail: 'Gear lights normal, but the door hangs two fingers open after retraction. Part ordered.',
    state: 'grounding',
  });
  return { squawks: [...past, lights, landing, gear], deferrals: [lights, landing].map(deferral) };
}

function fixed(outing: Outing, title: string, fix: string, days: number): SquawkRow {
  const reportedAt = at(outing.date, endMinute(outing.legs) + 10);
  const closedAt = at(addDays(outing.date, days), clock(15, 30));
  return {
    club_id: DEMO_CLUB_ID,
    id: demoId('squawk', title),
    aircraft_id: outing.aircraft.id,
    reported_at: reportedAt,
    reported_by: outing.pilot.id,
    title,
    detail: '',
    state: 'fixed',
    closed_at: closedAt,
    equipment_id: null,
    corrective_action: fix,
    signed_by: MECHANIC,
    recorded_at: reportedAt,
  };
}

/** Reported after the aircraft's last flight before that day, or in the morning of it. */
function standing(
  outings: readonly Outing[],
  when: When,
  key: AircraftKey,
  daysAgo: number,
  fields: Pick<SquawkRow, 'title' | 'detail' | 'state'> & Partial<SquawkRow>,
): SquawkRow {
  const on = when.daysAgo(daysAgo);
  const before = outings.filter((one) => one.aircraft.key === key && one.date < on).at(-1)!;
  const reportedAt = at(on, clock(8, 20));
  return {
    club_id: DEMO_CLUB_ID,
    id: demoId('squawk', fields.title),
    aircraft_id: aircraftBy(key).id,
    reported_at: reportedAt,
    reported_by: before.pilot.id,
    closed_at: null,
    equipment_id: null,
    corrective_action: null,
    signed_by: null,
    recorded_at: reportedAt,
    ...fields,
  };
}

/** The steps of 14 CFR 91.213(d), as the coordinator recorded them. */
function deferral(squawk: SquawkRow): DeferralRow {
  const day = squawk.reported_at.slice(0, 10);
  return {
    club_id: DEMO_CLUB_ID,
    id: demoId('deferral', squawk.title),
    squawk_id: squawk.id,
    deferred_on: day,
    deadline_on: addDays(day, 90),
    required_by_type_design: false,
    required_by_equipment_list: false,
    required_by_directive: false,
    removed_or_deactivated: true,
    placarded: true,
    recorded: true,
    no_hazard_determined_by: MECHANIC,
    equipment_list_item: null,
    recorded_at: squawk.recorded_at,
  };
}
