/** A club with flights booked, and things that happen to its facts, chosen by a seeded number. */
import { newId } from '../../src/platform/ids.js';
import { addDays, toInstant, toSeconds } from '../../src/rules/index.js';
import type { Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

/** Numbers from a seed, 0 ≤ n < 1 (mulberry32, public domain). */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** What the events are about. */
export interface Scene {
  api: Api;
  ready: ReadyClub;
  pilots: Session[];
  aircraftIds: string[];
  officer: Session;
}

type Event = [name: string, happens: (scene: Scene, draw: Draw) => Promise<void>];

/** Chances of one event. */
export class Draw {
  constructor(private readonly next: () => number) {}
  one<T>(of: readonly T[]): T {
    return of[Math.floor(this.next() * of.length)]!;
  }
  whole(from: number, to: number): number {
    return from + Math.floor(this.next() * (to - from + 1));
  }
  chance(share: number): boolean {
    return this.next() < share;
  }
}

const today = ({ api }: Scene): string => api.clock.now().slice(0, 10);
const put = ({ api, ready }: Scene, table: string, values: Record<string, unknown>): Promise<void> =>
  insertInto(api.sql, ready.club.clubId)(table, { id: newId(), ...values });
const pilot = ({ pilots }: Scene, draw: Draw): string => draw.one(pilots).memberId;
const craft = ({ aircraftIds }: Scene, draw: Draw): string => draw.one(aircraftIds);
const seen = (scene: Scene) => ({ verified_by: scene.officer.memberId, verified_at: scene.api.clock.now() });
/** Changes one row of a table of the club, of those a condition picks; none is no harm. */
const change = ({ api, ready }: Scene, table: string, set: string, pick: string, ...params: unknown[]) =>
  api.sql(
    `UPDATE ${table} SET ${set} WHERE club_id = $1 AND id = (SELECT id FROM ${table} WHERE club_id = $1 AND ${pick}
       ORDER BY id DESC LIMIT 1)`,
    [ready.club.clubId, ...params],
  );
const remove = ({ api, ready }: Scene, table: string, pick: string, ...params: unknown[]) =>
  api.sql(
    `DELETE FROM ${table} WHERE club_id = $1 AND id = (SELECT id FROM ${table} WHERE club_id = $1 AND ${pick} ORDER BY id DESC LIMIT 1)`,
    [ready.club.clubId, ...params],
  );

/** A day's flight of somebody in something, asked for as a member would; refused bookings are part of it. */
export async function book(scene: Scene, draw: Draw, inDays = draw.whole(1, 60)): Promise<void> {
  const who = draw.one(scene.pilots);
  const departs = toInstant(
    toSeconds(`${addDays(today(scene), inDays)}T15:00:00Z`) + 3600 * draw.whole(0, 10),
  );
  const purpose = draw.one(['solo', 'passengers', 'solo'] as const);
  await who
    .post('/bookings', {
      ...{ departs, arrives: toInstant(toSeconds(departs) + 3600 * draw.whole(1, 3)), purpose },
      ...{ personsOnBoard: purpose === 'solo' ? 1 : 2, aircraftId: craft(scene, draw) },
      ...(draw.chance(0.2) ? { route: ['XQHB', 'XQPD', 'XQHB'] } : {}),
    })
    .set('Idempotency-Key', newId());
}

export const EVENTS: Event[] = [
  [
    'time passes',
    async ({ api }, draw) => {
      api.clock.set(toInstant(toSeconds(api.clock.now()) + 3600 * draw.whole(1, 9)));
    },
  ],
  ['a flight is booked', book],
  ['a flight is booked', book],
  [
    'a flight is cancelled',
    (scene) =>
      change(
        scene,
        'bookings',
        "status = 'cancelled', cancelled_at = now()",
        "status = 'booked' AND kind = 'flight'",
      ) as never,
  ],
  [
    'a block is put in',
    async (scene, draw) => {
      const from = `${addDays(today(scene), draw.whole(1, 40))}T12:00:00Z`;
      await scene.officer.post('/bookings/blocks', {
        ...{ aircraftId: craft(scene, draw), kind: 'maintenance', note: 'Oil change', from },
        to: toInstant(toSeconds(from) + 7200),
      });
    },
  ],
  [
    'a squawk',
    (scene, draw) =>
      put(scene, 'squawks', {
        ...{ aircraft_id: craft(scene, draw), title: 'Something is amiss', reported_by: pilot(scene, draw) },
        ...{ reported_at: scene.api.clock.now(), state: draw.one(['reported', 'grounding', 'reported']) },
      }),
  ],
  [
    'a squawk is closed',
    (scene) =>
      change(
        scene,
        'squawks',
        "state = 'fixed', closed_from = state, closed_at = $2, corrective_action = 'Mended', signed_by = 'A mechanic'",
        'closed_at IS NULL',
        scene.api.clock.now(),
      ) as never,
  ],
  [
    'meters',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO meter_readings (club_id, id, aircraft_id, kind, shown_tenths, read_at, source)
       SELECT club_id, $3, aircraft_id, kind, shown_tenths + $4, read_at + interval '1 minute', 'coordinator' FROM meter_readings
        WHERE club_id = $1 AND aircraft_id = $2 ORDER BY read_at DESC LIMIT 1`,
        [scene.ready.club.clubId, craft(scene, draw), newId(), draw.whole(0, 120)],
      ) as never,
  ],
  [
    'an inspection is done',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO compliances (club_id, id, item_id, done_on, done_tenths, statement, signed_by)
       SELECT i.club_id, $3, i.id, $4::date, (SELECT max(total_tenths) FROM meter_readings r WHERE r.club_id = i.club_id AND r.aircraft_id = i.aircraft_id),
         'Inspected', 'A mechanic' FROM airworthiness_items i WHERE i.club_id = $1 AND i.aircraft_id = $2 ORDER BY md5(i.id::text || $4::text) LIMIT 1`,
        [scene.ready.club.clubId, craft(scene, draw), newId(), today(scene)],
      ) as never,
  ],
  [
    'an inspection is taken back',
    (scene) =>
      change(
        scene,
        'compliances',
        'voided_at = $2',
        "voided_at IS NULL AND statement = 'Inspected'",
        scene.api.clock.now(),
      ) as never,
  ],
  [
    'a new item',
    (scene, draw) =>
      put(scene, 'airworthiness_items', {
        ...{ aircraft_id: craft(scene, draw), kind: 'club', title: `Look at it ${newId()}`, scope: 'all' },
        fixed_due_on: addDays(today(scene), draw.whole(-5, 40)),
      }),
  ],
  ['an item goes', (scene) => remove(scene, 'airworthiness_items', "kind = 'club'") as never],
  [
    'equipment comes out',
    (scene, draw) =>
      change(
        scene,
        'equipment',
        'removed_on = $2',
        'removed_on IS NULL AND aircraft_id = $3',
        addDays(today(scene), draw.whole(0, 20)),
        craft(scene, draw),
      ) as never,
  ],
  [
    'equipment goes back in',
    (scene) => change(scene, 'equipment', 'removed_on = NULL', 'removed_on IS NOT NULL') as never,
  ],
  [
    'an equipment change',
    (scene, draw) =>
      put(scene, 'differences', {
        ...{
          aircraft_id: craft(scene, draw),
          title: 'Panel',
          since: addDays(today(scene), draw.whole(-9, 9)),
          equipment_group: draw.one(['glass panel', 'autopilot']),
        },
      }),
  ],
  [
    'a change is over',
    (scene) =>
      change(
        scene,
        'differences',
        'ended_on = $2',
        'ended_on IS NULL AND since <= $2',
        today(scene),
      ) as never,
  ],
  [
    'out of service',
    (scene, draw) =>
      change(scene, 'aircraft', "status = 'out-of-service'", 'id = $2', craft(scene, draw)) as never,
  ],
  [
    'in service',
    (scene) => change(scene, 'aircraft', "status = 'in-service'", "status = 'out-of-service'") as never,
  ],
  [
    'the model changes',
    (scene, draw) => change(scene, 'aircraft_models', 'tailwheel = $2', 'true', draw.chance(0.5)) as never,
  ],
  [
    'a registration',
    (scene, draw) =>
      change(
        scene,
        'registrations',
        'ended_on = $2',
        'aircraft_id = $3',
        draw.chance(0.5) ? addDays(today(scene), 10) : null,
        craft(scene, draw),
      ) as never,
  ],
  [
    'a permit',
    (scene, draw) =>
      put(scene, 'permits', {
        aircraft_id: craft(scene, draw),
        valid_from: today(scene),
        valid_through: addDays(today(scene), 9),
        purpose: 'Ferry',
      }),
  ],
  [
    'weighed',
    (scene, draw) =>
      put(scene, 'weighings', {
        ...{ aircraft_id: craft(scene, draw), effective_on: today(scene), source: 'weighing' },
        ...{ empty_weight_lb: draw.whole(1400, 1500), empty_arm_in: 39 },
      }),
  ],
  [
    'a medical',
    (scene, draw) =>
      put(scene, 'medicals', {
        member_id: pilot(scene, draw),
        class: 3,
        exam_on: addDays(today(scene), -draw.whole(0, 900)),
        ...(draw.chance(0.7) ? seen(scene) : {}),
      }),
  ],
  [
    'a medical goes',
    (scene, draw) => remove(scene, 'medicals', 'member_id = $2', pilot(scene, draw)) as never,
  ],
  [
    'a paper is verified',
    (scene) =>
      change(
        scene,
        'medicals',
        'verified_by = $2, verified_at = $3',
        'verified_at IS NULL',
        scene.officer.memberId,
        scene.api.clock.now(),
      ) as never,
  ],
  [
    'a flight review',
    (scene, draw) =>
      put(scene, 'reviews', {
        member_id: pilot(scene, draw),
        kind: 'flight-review',
        reviewed_on: addDays(today(scene), -draw.whole(0, 800)),
        ground_tenths: 10,
        flight_tenths: 10,
        ...seen(scene),
      }),
  ],
  ['a review goes', (scene, draw) => remove(scene, 'reviews', 'member_id = $2', pilot(scene, draw)) as never],
  [
    'a certificate is suspended',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO suspensions (club_id, id, certificate_id, suspended_from, suspended_to)
       SELECT club_id, $3, id, $4, $5 FROM certificates WHERE club_id = $1 AND member_id = $2 LIMIT 1`,
        [
          scene.ready.club.clubId,
          pilot(scene, draw),
          newId(),
          today(scene),
          addDays(today(scene), draw.whole(1, 30)),
        ],
      ) as never,
  ],
  ['a suspension is lifted', (scene) => remove(scene, 'suspensions', 'true') as never],
  ['a rating goes', (scene) => remove(scene, 'certificate_ratings', "kind = 'category-class'") as never],
  [
    'a rating comes',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO certificate_ratings (club_id, id, certificate_id, kind, category, class)
       SELECT club_id, $3, id, 'category-class', 'airplane', 'single-engine-land' FROM certificates WHERE club_id = $1 AND member_id = $2 LIMIT 1
       ON CONFLICT DO NOTHING`,
        [scene.ready.club.clubId, pilot(scene, draw), newId()],
      ) as never,
  ],
  [
    'an endorsement',
    (scene, draw) =>
      put(scene, 'endorsements', {
        member_id: pilot(scene, draw),
        kind: 'tailwheel',
        endorsed_on: today(scene),
        ...seen(scene),
      }),
  ],
  [
    'BasicMed papers',
    (scene, draw) => put(scene, 'basic_med', { member_id: pilot(scene, draw), exam_on: today(scene) }),
  ],
  [
    'a flight is logged',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO log_entries (club_id, id, member_id, model_id, aircraft_words, category, class, tailwheel, departed_at, arrived_at,
         flown_on, from_airfield, to_airfield, role, sole_manipulator, takeoffs, landings, full_stop_landings, night_takeoffs,
         night_full_stop_landings, total_tenths)
       VALUES ($1, $2, $3, $4, 'Harrow Lark 160', 'airplane', 'single-engine-land', $5, $6::timestamptz - interval '3 hours',
         $6::timestamptz - interval '2 hours', $6::timestamptz::date, 'XQHB', 'XQHB', 'pilot-in-command', true, 3, 3, 3, $7, $7, 10)`,
        [
          scene.ready.club.clubId,
          newId(),
          pilot(scene, draw),
          scene.ready.modelId,
          draw.chance(0.3),
          scene.api.clock.now(),
          draw.whole(0, 3),
        ],
      ) as never,
  ],
  [
    'a log entry is void',
    (scene, draw) =>
      change(
        scene,
        'log_entries',
        'voided_at = $2',
        'voided_at IS NULL AND member_id = $3',
        scene.api.clock.now(),
        pilot(scene, draw),
      ) as never,
  ],
  [
    'a sign-off',
    (scene, draw) =>
      put(scene, 'checkouts', {
        ...{ member_id: pilot(scene, draw), signed_on: today(scene), signed_by: scene.officer.memberId },
        ...draw.one([
          { kind: 'annual-check' },
          { kind: 'model', model_id: scene.ready.modelId },
          { kind: 'differences', aircraft_id: craft(scene, draw) },
        ]),
      }),
  ],
  [
    'a sign-off is taken back',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO checkout_voids (club_id, checkout_id, voided_by, reason)
       SELECT club_id, id, signed_by, 'By mistake' FROM checkouts WHERE club_id = $1 AND member_id = $2 ORDER BY id DESC LIMIT 1
       ON CONFLICT DO NOTHING`,
        [scene.ready.club.clubId, pilot(scene, draw)],
      ) as never,
  ],
  [
    'standing with the club',
    (scene, draw) =>
      change(
        scene,
        'members',
        'standing = $2, standing_since = $3',
        'id = $4',
        draw.one(['good', 'good', 'arrears', 'suspended']),
        today(scene),
        pilot(scene, draw),
      ) as never,
  ],
  [
    'policy',
    (scene, draw) =>
      scene.api.sql(
        `INSERT INTO policy_values (club_id, id, parameter_id, valid_from, value, reference) VALUES ($1, $2, $3, $4, $5, 'Board')
       ON CONFLICT DO NOTHING`,
        [
          scene.ready.club.clubId,
          newId(),
          ...draw.one([
            [
              'club.model-recency.landings',
              addDays(today(scene), draw.whole(0, 20)),
              String(draw.whole(0, 4)),
            ],
            [
              'club.annual-check.days',
              addDays(today(scene), draw.whole(0, 20)),
              String(draw.whole(100, 400)),
            ],
            [
              'club.papers.unverified-count',
              addDays(today(scene), draw.whole(0, 20)),
              String(draw.chance(0.5)),
            ],
            [
              'club.model-checkout.required',
              addDays(today(scene), draw.whole(0, 20)),
              String(draw.chance(0.5)),
            ],
          ]),
        ],
      ) as never,
  ],
  [
    'an airfield is moved up',
    (scene, draw) =>
      change(scene, 'airfields', 'elevation_ft = $2', "code = 'XQPD'", draw.whole(0, 9000)) as never,
  ],
  [
    'an airfield is named anew',
    (scene) =>
      change(
        scene,
        'airfields',
        "code = CASE code WHEN 'XQPD' THEN 'XQPE' ELSE 'XQPD' END",
        "code IN ('XQPD', 'XQPE')",
      ) as never,
  ],
  [
    'a runway is lit or not',
    (scene, draw) =>
      change(
        scene,
        'runways',
        'lit = $2, length_ft = $3',
        'true',
        draw.chance(0.5),
        draw.whole(900, 5000),
      ) as never,
  ],
];

/** Six pilots, four aircraft, and a second airfield. */
export async function plantScene(api: Api): Promise<Scene> {
  const ready = await readyClub(api);
  const pilots = [ready.member];
  for (const name of ['Ada', 'Bo', 'Cy', 'Di', 'Ed']) {
    const pilot = await ready.club.signInAs('member', { name });
    await ready.makePilot(pilot.memberId);
    pilots.push(pilot);
  }
  const aircraftIds = [ready.aircraftId];
  for (const registration of ['NX102B', 'NX103B', 'NX104B'])
    aircraftIds.push(await ready.addAircraft(registration));
  await insertInto(api.sql, ready.club.clubId)('airfields', {
    ...{ id: newId(), code: 'XQPD', name: 'Pond', zone: ready.club.zone },
    ...{ latitude_deg: 40.5, longitude_deg: -95.5, elevation_ft: 900 },
  });
  const officer = await ready.club.signInAs('administrator', { name: 'Olga Officer' });
  return { api, ready, pilots, aircraftIds, officer };
}

/** One thing happens. @returns what the database refused: a fourth rating or a span turned round is no event; null: it happened */
export async function happen(scene: Scene, draw: Draw): Promise<string | null> {
  const [name, happens] = draw.one(EVENTS);
  try {
    await happens(scene, draw);
    return null;
  } catch (error) {
    const { message } = error as Error;
    if (!/violates|refuse|duplicate|must /i.test(message))
      throw new Error(`${name}: ${message}`, { cause: error });
    return `${name}: ${message.split('\n')[0]}`;
  }
}
