import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubZone } from '../../clubs/club-time.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr } from '../../members/members.access.js';
import { assertTaughtOr } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { addDays, localDateOf, toSeconds, type LocalDate } from '../../rules/index.js';
import { nightSpans, type NightSpan } from '../../rules/sky/nights.js';
import { levelsOf, practiceStands } from '../records/practice-rows.js';
import { PracticeRecord } from '../records/practice-record.entity.js';
import { buildPlan, DRILLS, rustOf, watchedFor } from '../rust/index.js';
import { planView, rustListView } from './advice-views.js';
import type { PlanPracticeDto, PracticePlanView, RustListView } from './advice.dto.js';
import { equipmentIn, flownOf } from './flown.js';
import { needsOf } from './needs.js';
import { asUsable, practicePolicy } from './policy.js';

/** What is rusty, and what the next practice flight might hold. Advice: it gates nothing. */
@Injectable()
export class AdviceService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws 403, 404, 409 */
  rust(person: SignedIn, memberId: string, on?: LocalDate): Promise<RustListView> {
    return this.read(person, memberId, async (em, today) => {
      const day = on ?? today;
      const { policy, levels, flown } = await knownOf(em, person.clubId, memberId, day);
      const watched = watchedFor(levels, policy.limits, equipmentIn(flown));
      const rusts = watched.map((one) => rustOf(one.manoeuvre, one.condition, flown, policy.decay, day));
      return rustListView({ on: day, levels, rusts, decay: policy.decay });
    });
  }

  /** @throws 403, 404, 409, 422 */
  plan(person: SignedIn, memberId: string, body: PlanPracticeDto): Promise<PracticePlanView> {
    return this.read(person, memberId, async (em, today, zone) => {
      const { clubId } = person;
      const on = body.on ?? today;
      if (on < today) throw valueRefused('on', `A flight is planned for today (${today}) or later.`);
      if (on > addDays(today, 366)) throw valueRefused('on', 'A flight is planned at most a year ahead.');
      const { policy, levels, flown } = await knownOf(em, clubId, memberId, on);
      const { limits } = policy;
      const needs = await needsOf(em, { clubId, memberId, now: this.clock.now(), zone, limits });
      const { minutes, instructor, transitMinutes = policy.transitMinutes } = body;
      const {
        night = null,
        crosswindKt = null,
        gustSpreadKt = null,
        runwayFt = null,
        equipment = null,
      } = body;
      const plan = asUsable(() =>
        buildPlan({
          levels,
          offer: {
            on,
            minutes,
            transitMinutes,
            instructor,
            night,
            crosswindKt,
            gustSpreadKt,
            runwayFt,
            equipment,
          },
          drills: DRILLS,
          watched: watchedFor(levels, limits, equipmentIn(flown)),
          ...{ bookings: needs.bookings, checkouts: needs.lacks, settings: policy.plan },
          rustOf: (manoeuvre, condition) => rustOf(manoeuvre, condition, flown, policy.decay, on),
        }),
      );
      return planView(plan, {
        on,
        zone,
        home: await nightAtHome(em, clubId, on, zone),
        checkouts: needs.checkouts,
      });
    });
  }

  private read<T>(
    person: SignedIn,
    memberId: string,
    work: (em: EntityManager, today: LocalDate, zone: string) => Promise<T>,
  ): Promise<T> {
    // What somebody is rusty in is for them and who teaches them; officers have the club's numbers (safety/practice-gaps).
    assertOwnOr(person, memberId, ['instructor']);
    const { clubId } = person;
    return this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        await assertTaughtOr(em, person, memberId, { roles: [], now: this.clock.now() });
        const zone = await clubZone(em, clubId);
        return work(em, localDateOf(toSeconds(this.clock.now()), zone), zone);
      },
      { readOnly: true },
    );
  }
}

async function knownOf(em: EntityManager, clubId: string, memberId: string, on: LocalDate) {
  const policy = await practicePolicy(em, clubId, on);
  const rows = await em
    .createQueryBuilder(PracticeRecord, 'record')
    .where('record.clubId = :clubId AND record.memberId = :memberId', { clubId, memberId })
    .andWhere(practiceStands('record'))
    .getMany();
  return {
    policy,
    levels: await levelsOf(em, clubId, memberId),
    flown: rows.map((row) => flownOf(row, policy)),
  };
}

/** The first night that begins on the day, where most of the club's aircraft live. */
async function nightAtHome(
  em: EntityManager,
  clubId: string,
  on: LocalDate,
  zone: string,
): Promise<{ code: string; night: NightSpan } | null> {
  const [home] = await em.query<{ code: string; latitudeDeg: number; longitudeDeg: number }[]>(
    `SELECT f.code, f.latitude_deg AS "latitudeDeg", f.longitude_deg AS "longitudeDeg"
       FROM airfields f JOIN aircraft a ON a.club_id = f.club_id AND a.home_airfield_id = f.id
      WHERE f.club_id = $1 GROUP BY f.club_id, f.id ORDER BY count(*) DESC, f.code LIMIT 1`,
    [clubId],
  );
  if (!home) return null;
  const noon = toSeconds(`${on}T00:00:00Z`);
  const night = nightSpans('passenger', home, noon, noon + 3 * 86_400).find(
    ({ from }) => localDateOf(from, zone) === on && from > noon,
  );
  return night ? { code: home.code, night } : null;
}
