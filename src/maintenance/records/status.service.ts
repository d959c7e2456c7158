import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import {
  addDays,
  CAUTION,
  localDateOf,
  startOfDay,
  toInstant,
  toSeconds,
  type Jurisdiction,
  type LocalDate,
} from '../../rules/index.js';
import { cautionsOf } from './status-cautions.js';
import type { StatusView } from './status.dto.js';
import { statusFacts } from './status-lines.js';
import { dayToCome } from './status.problems.js';
import { statusRows } from './status-rows.js';

/** Said on every status. */
const STATUS_CAUTION = `This page is a copy of what is on record; the maintenance records themselves decide. ${CAUTION}`;

/** A status, and what only some of its forms need. */
export interface Printed {
  status: StatusView;
  jurisdiction: Jurisdiction;
}

/** The status of an aircraft as of a day. Reads only. */
@Injectable()
export class StatusService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws ProblemException 404; 422 for a day to come. */
  print(user: SignedIn, aircraftId: string, on: LocalDate | undefined): Promise<Printed> {
    const now = this.clock.now();
    const work = (em: EntityManager) => statusOf(em, { user, aircraftId, on, now });
    return this.db.run(user.clubId, work, { readOnly: true });
  }
}

/** The same inside the caller's transaction. */
export async function statusOf(
  em: EntityManager,
  of: { user: SignedIn; aircraftId: string; on?: LocalDate; now: string },
): Promise<Printed> {
  const { user, aircraftId, now } = of;
  const { zone, jurisdiction } = await gatherClub(em, now);
  const today = localDateOf(toSeconds(now), zone);
  const on = of.on ?? today;
  if (on > today) throw dayToCome(on, today);
  const until = toInstant(startOfDay(addDays(on, 1), zone));
  const rows = await statusRows(em, { clubId: user.clubId, aircraftId, on, until, now });
  const facts = statusFacts(rows, { on, today, jurisdiction });
  const status = {
    ...{ on, zone, ...facts },
    cautions: cautionsOf(facts, { on, today, zone, jurisdiction }),
    caution: STATUS_CAUTION,
    printedBy: await nameOf(em, user.memberId),
    printedAt: now,
  };
  return { status, jurisdiction };
}

async function nameOf(em: EntityManager, memberId: string): Promise<string> {
  const rows: { name: string }[] = await em.query(
    'SELECT name FROM members WHERE club_id = bellcrank_club() AND id = $1',
    [memberId],
  );
  return rows[0]?.name ?? '';
}
