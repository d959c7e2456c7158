import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import { notThere } from '../platform/database/records.js';
import { TenantDb } from '../platform/database/tenant.js';
import { requireVersion } from '../platform/http/versions.js';
import { show } from '../platform/http/views.js';
import { type ClubChanges, ClubView } from './club.dto.js';
import { Club } from './club.entity.js';

const view = (club: Club): ClubView => show(ClubView, club, { id: club.clubId });

/** The club as its tenant row says. */
export async function readClub(em: EntityManager, clubId: string, lock = false): Promise<Club> {
  const club = await em.findOne(Club, {
    where: { clubId },
    ...(lock ? { lock: { mode: 'pessimistic_write' } } : {}),
  });
  if (!club) throw notThere('club');
  return club;
}

/** The signed-in person's own club; others cannot be seen. */
@Injectable()
export class ClubsService {
  constructor(private readonly db: TenantDb) {}

  read(user: SignedIn): Promise<ClubView> {
    return this.db.run(user.clubId, async (em) => view(await readClub(em, user.clubId)), { readOnly: true });
  }

  edit(user: SignedIn, version: number, changes: ClubChanges): Promise<ClubView> {
    const work = async (em: EntityManager) => {
      const club = await readClub(em, user.clubId, true);
      requireVersion(club.rowVersion, version);
      const defined = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
      if (Object.keys(defined).length > 0) await em.update(Club, { clubId: user.clubId }, defined);
      return view(await readClub(em, user.clubId));
    };
    return this.db.run(user.clubId, work, { actorId: user.memberId });
  }
}
