/** The demo club's rows alone, without a database: the same every time, whole, and consistent with each other. */
import { isUUID } from 'class-validator';
import { spanOf } from '../../src/demo/blocks.js';
import { FLEET } from '../../src/demo/fleet/aircraft.js';
import { generateClub, type DemoClub } from '../../src/demo/generate.js';
import { DEMO_CLUB_ID, DEMO_SEED } from '../../src/demo/ids.js';
import { PLACES } from '../../src/demo/places.js';
import type { DemoRows } from '../../src/demo/rows.js';
import {
  addDays,
  canonicalJson,
  daysBetween,
  digestOf,
  localDateOf,
  toSeconds,
} from '../../src/rules/index.js';
import { nightSpans } from '../../src/rules/sky/nights.js';

const ASOF = '2026-11-25T15:00:00Z';
let club: DemoClub;
let rows: DemoRows;

beforeAll(() => {
  club = generateClub({ seed: DEMO_SEED, asOf: ASOF });
  rows = club.rows;
});

const tables = (): [string, Record<string, unknown>[]][] =>
  Object.entries(rows) as unknown as [string, Record<string, unknown>[]][];

/** Pairs that follow each other, in order, within a group. */
function neighbours<T>(list: readonly T[], group: (one: T) => string, order: (one: T) => string): [T, T][] {
  const sorted = [...list].sort((a, b) => (`${group(a)} ${order(a)}` < `${group(b)} ${order(b)}` ? -1 : 1));
  return sorted.slice(1).flatMap((one, index): [T, T][] => {
    const before = sorted[index]!;
    return group(before) === group(one) ? [[before, one]] : [];
  });
}

describe('the same seed and instant', () => {
  it('give the same rows and wishes', () => {
    const again = generateClub({ seed: DEMO_SEED, asOf: ASOF });
    expect(digestOf(again.rows)).toBe(digestOf(rows));
    expect(digestOf(again.wishes)).toBe(digestOf(club.wishes));
  });

  it('another day, or another seed, gives others', () => {
    const later = generateClub({ seed: DEMO_SEED, asOf: '2026-11-26T15:00:00Z' });
    expect(digestOf(later.rows)).not.toBe(digestOf(rows));
    const last = (of: DemoClub): string =>
      of.rows.log_entries
        .map((entry) => entry.flown_on)
        .sort()
        .at(-1)!;
    expect(daysBetween(last(club), last(later))).toBeGreaterThan(0);
    expect(later.rows.members.map(({ id }) => id)).toEqual(rows.members.map(({ id }) => id));
    const other = generateClub({ seed: 'another', asOf: ASOF });
    expect(digestOf(other.rows.log_entries)).not.toBe(digestOf(rows.log_entries));
  });
});

describe('the club', () => {
  it('has 60 members of all kinds, officers and coordinators among them', () => {
    expect(rows.members).toHaveLength(60);
    const levels = new Map<string, number>();
    for (const { level } of rows.certificates) levels.set(level, (levels.get(level) ?? 0) + 1);
    expect(levels.get('student')).toBeGreaterThanOrEqual(10);
    expect(levels.get('private')).toBeGreaterThanOrEqual(20);
    expect(levels.get('commercial')).toBeGreaterThanOrEqual(8);
    expect(levels.get('recreational')).toBeGreaterThanOrEqual(1);
    expect(
      rows.certificate_ratings.filter(({ kind }) => kind === 'instrument').length,
    ).toBeGreaterThanOrEqual(10);
    expect(rows.instructor_certificates).toHaveLength(7);
    const roles = (role: string): number => rows.member_roles.filter((one) => one.role === role).length;
    expect([roles('member'), roles('instructor'), roles('safety-officer')]).toEqual([60, 7, 2]);
    expect([roles('maintenance-coordinator'), roles('administrator')]).toEqual([2, 1]);
  });

  it('has 7 aircraft of 6 types and 4 airfields, each with its runways', () => {
    expect(rows.aircraft).toHaveLength(7);
    expect(rows.aircraft_models).toHaveLength(6);
    expect(rows.airfields).toHaveLength(4);
    for (const airfield of rows.airfields) {
      const runways = rows.runways.filter((one) => one.airfield_id === airfield.id);
      expect(runways.length).toBeGreaterThanOrEqual(2);
      for (const runway of runways) {
        // Designators are magnetic, headings true; the invented variation is 8 degrees.
        expect(Math.round(((runway.true_heading_deg - 8 + 360) % 360) / 10)).toBe(Number(runway.designator));
      }
    }
    expect(rows.runways.some(({ surface }) => surface === 'grass')).toBe(true);
  });

  it('has flown for 18 months until yesterday, in every month, most at week-ends', () => {
    const days = rows.log_entries.map((entry) => entry.flown_on).sort();
    expect(daysBetween(days[0]!, '2025-05-25')).toBeLessThanOrEqual(0);
    expect(daysBetween(days[0]!, '2025-06-05')).toBeGreaterThanOrEqual(0);
    expect(daysBetween(days.at(-1)!, club.today)).toBeGreaterThanOrEqual(1);
    expect(daysBetween(days.at(-1)!, club.today)).toBeLessThanOrEqual(6);
    expect(new Set(days.map((day) => day.slice(0, 7))).size).toBeGreaterThanOrEqual(18);
    const weekend = days.filter((day) => daysBetween('2025-05-24', day) % 7 <= 1).length;
    expect(weekend / days.length).toBeGreaterThan(0.4);
  });

  it('wishes for flights in six weeks to come', () => {
    const days = club.wishes.map(({ ask }) => localDateOf(toSeconds(ask.departs), 'America/Denver')).sort();
    expect(club.wishes.length).toBeGreaterThan(80);
    expect(days[0]! > club.today).toBe(true);
    expect(daysBetween(club.today, days.at(-1)!)).toBeGreaterThanOrEqual(40);
    expect(daysBetween(club.today, days.at(-1)!)).toBeLessThanOrEqual(42);
  });
});

describe('rows', () => {
  it('have well-formed ids, each once in its table, all of this club', () => {
    for (const [table, list] of tables()) {
      const ids = list.flatMap((row) => ('id' in row ? [row.id as string] : []));
      expect({ table, twice: ids.length - new Set(ids).size }).toEqual({ table, twice: 0 });
      for (const id of ids) if (!isUUID(id)) throw new Error(`${table}: ${id} is no UUID`);
      expect(list.every((row) => row.club_id === DEMO_CLUB_ID)).toBe(true);
    }
  });

  it('refer only to rows that are there', () => {
    const idsOf = (table: keyof DemoRows): Set<unknown> =>
      new Set((rows[table] as unknown as { id: string }[]).map((row) => row.id));
    const refers: Record<string, keyof DemoRows> = {
      member_id: 'members',
      verified_by: 'members',
      given_by: 'members',
      signed_by: 'members',
      reported_by: 'members',
      model_id: 'aircraft_models',
      aircraft_id: 'aircraft',
      home_airfield_id: 'airfields',
      airfield_id: 'airfields',
      certificate_id: 'certificates',
      equipment_id: 'equipment',
      item_id: 'airworthiness_items',
      squawk_id: 'squawks',
    };
    // Mechanics sign by name, they are no members.
    const byName = new Set(['compliances.signed_by', 'squawks.signed_by']);
    let seen = 0;
    for (const [column, target] of Object.entries(refers)) {
      const ids = idsOf(target);
      for (const [table, list] of tables()) {
        if (byName.has(`${table}.${column}`)) continue;
        for (const row of list) {
          const value = row[column];
          if (value === undefined || value === null) continue;
          seen += 1;
          if (!ids.has(value)) throw new Error(`${table}.${column} ${String(value)} is not in ${target}`);
        }
      }
    }
    expect(seen).toBeGreaterThan(10_000);
  });

  it('were all written before the club was made', () => {
    for (const [table, list] of tables()) {
      for (const row of list) {
        for (const column of ['recorded_at', 'verified_at', 'read_at', 'reported_at', 'closed_at']) {
          const value = row[column] as string | null | undefined;
          if (value && value > ASOF) throw new Error(`${table}.${column} ${value} lies ahead`);
        }
      }
    }
  });

  it('carry no real registration: the letters after N are not issued', () => {
    for (const { registration } of rows.aircraft) expect(registration).toMatch(/^NX\d{3}[A-Z]$/);
    for (const { code } of PLACES) expect(code).toMatch(/^XQ[A-Z]{2}$/);
    for (const { email } of rows.members) expect(email).toMatch(/\.example$/);
  });
});

describe('the log', () => {
  it('has nobody and no aircraft in two places', () => {
    const start = (one: { departed_at: string }): string => one.departed_at;
    const overlaps = [
      ...neighbours(rows.log_entries, (one) => one.member_id, start),
      // The instructor's entry is the learner's flight once more.
      ...neighbours(
        rows.log_entries.filter(({ role, aircraft_id }) => role !== 'instructor' && aircraft_id !== null),
        (one) => one.aircraft_id!,
        start,
      ),
    ].filter(([before, after]) => before.arrived_at > after.departed_at);
    expect(overlaps).toEqual([]);
  });

  it('counts night as the sky says at the place', () => {
    let night = 0;
    for (const entry of rows.log_entries) {
      const place = PLACES.find(({ code }) => code === entry.from_airfield)!;
      const [from, to] = [toSeconds(entry.departed_at), toSeconds(entry.arrived_at)];
      const passenger = nightSpans('passenger', place, from, to);
      const dark = passenger.reduce((sum, span) => sum + span.to - span.from, 0);
      if (dark === 0 && entry.from_airfield === entry.to_airfield) {
        expect([entry.id, entry.night_takeoffs, entry.night_full_stop_landings]).toEqual([entry.id, 0, 0]);
      }
      // Wholly in the night, every take-off and every landing to a full stop counts.
      if (dark === to - from && entry.sole_manipulator) {
        night += 1;
        expect([entry.night_takeoffs, entry.night_full_stop_landings]).toEqual([
          entry.takeoffs,
          entry.full_stop_landings,
        ]);
        expect(entry.night_tenths).toBe(entry.total_tenths);
      }
      expect(entry.night_takeoffs).toBeLessThanOrEqual(entry.takeoffs);
      expect(entry.night_full_stop_landings).toBeLessThanOrEqual(entry.full_stop_landings);
      expect(entry.full_stop_landings).toBeLessThanOrEqual(entry.landings);
      expect(to - from).toBe(entry.total_tenths * 360);
    }
    expect(night).toBeGreaterThan(20);
  });

  it('lands in the dark only where there are lights', () => {
    for (const entry of rows.log_entries.filter((one) => one.night_full_stop_landings > 0)) {
      expect(PLACES.find(({ code }) => code === entry.to_airfield)!.lit).toBe(true);
    }
  });

  it('shows the flight behind every sign-off, review and solo endorsement of the 18 months', () => {
    const first = addDays(club.today, -548);
    const signed = [
      ...rows.checkouts.map((one) => ({ member: one.member_id, by: one.signed_by, on: one.signed_on })),
      ...rows.endorsements
        .filter(({ kind }) => kind === 'solo')
        .map((one) => ({ member: one.member_id, by: one.given_by!, on: one.endorsed_on })),
    ].filter(({ on }) => on > first);
    expect(signed.length).toBeGreaterThan(60);
    for (const { member, by, on } of signed) {
      const day = rows.log_entries.filter((entry) => entry.flown_on === on);
      const dual = day.filter((entry) => entry.member_id === member && entry.role === 'dual-received');
      const taught = dual.some((entry) =>
        day.some(
          (one) => one.member_id === by && one.role === 'instructor' && one.departed_at === entry.departed_at,
        ),
      );
      expect({ member, on, taught }).toEqual({ member, on, taught: true });
    }
  });
});

describe('meters and inspections', () => {
  it('never fall, and the Hobbs meter moves by what the log says', () => {
    for (const aircraft of FLEET) {
      for (const kind of ['hobbs', 'tachometer'] as const) {
        const readings = rows.meter_readings.filter(
          (one) => one.aircraft_id === aircraft.id && one.kind === kind,
        );
        for (const [before, after] of neighbours(
          readings,
          () => '',
          (one) => one.read_at,
        )) {
          expect(after.shown_tenths).toBeGreaterThanOrEqual(before.shown_tenths);
        }
        if (kind !== 'hobbs') continue;
        const flown = rows.log_entries
          .filter((entry) => entry.aircraft_id === aircraft.id && entry.role !== 'instructor')
          .reduce((sum, entry) => sum + entry.total_tenths, 0);
        const shown = readings.map((one) => one.shown_tenths);
        expect(Math.max(...shown) - Math.min(...shown)).toBe(flown);
      }
    }
  });

  it('has no 100 hours of instruction without an inspection (14 CFR 91.409(b))', () => {
    let intervals = 0;
    for (const item of rows.airworthiness_items.filter(({ kind }) => kind === 'hours-100')) {
      const done = rows.compliances.filter((one) => one.item_id === item.id).map((one) => one.done_tenths!);
      const now = Math.max(
        ...rows.meter_readings
          .filter((one) => one.aircraft_id === item.aircraft_id && one.kind === 'tachometer')
          .map((one) => one.shown_tenths),
      );
      const hours = [...done, now].sort((a, b) => a - b);
      hours.slice(1).forEach((at, index) => {
        intervals += 1;
        expect(at - hours[index]!).toBeLessThanOrEqual(1000);
      });
    }
    expect(intervals).toBeGreaterThan(10);
  });

  it('leaves the first trainer 2.4 hours', () => {
    const item = rows.airworthiness_items.find(
      (one) => one.kind === 'hours-100' && one.aircraft_id === FLEET[0]!.id,
    )!;
    const last = Math.max(
      ...rows.compliances.filter((one) => one.item_id === item.id).map((one) => one.done_tenths!),
    );
    const now = Math.max(
      ...rows.meter_readings
        .filter((one) => one.aircraft_id === FLEET[0]!.id && one.kind === 'tachometer')
        .map((one) => one.shown_tenths),
    );
    expect(last + 1000 - now).toBe(24);
  });
});

describe('the weeks ahead', () => {
  it('have nobody and no aircraft twice at a time', () => {
    const busy = [
      ...club.wishes.flatMap(({ ask, aircraftId, memberId, instructorId }) =>
        [aircraftId, memberId, ...(instructorId ? [instructorId] : [])].map((id) => ({
          id,
          from: ask.departs,
          to: ask.arrives,
        })),
      ),
      ...rows.bookings.map((block) => ({ id: block.aircraft_id, ...spanOf(block) })),
    ];
    const pairs = neighbours(
      busy,
      (one) => one.id,
      (one) => one.from,
    );
    expect(pairs.length).toBeGreaterThan(100);
    expect(pairs.filter(([before, after]) => before.to > after.from)).toEqual([]);
  });

  it('leave the times of the tries free', () => {
    for (const { ask, person } of club.tries) {
      for (const wish of club.wishes.filter(({ memberId }) => memberId === person.id)) {
        expect(wish.ask.arrives <= ask.departs || wish.ask.departs >= ask.arrives).toBe(true);
      }
    }
  });

  it('are plain data', () => {
    expect(JSON.parse(canonicalJson(club.wishes))).toEqual(club.wishes);
  });
});
