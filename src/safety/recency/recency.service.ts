import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Pace } from '../../decisions/timeline/pace.js';
import { assertOwnOr, OFFICERS, READERS } from '../../members/members.access.js';
import { assertTaughtOr } from '../../members/students.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { CAUTION, daysBetween } from '../../rules/index.js';
import { BOARD_FLIGHTS } from '../board/board-flights.js';
import { gatherOwn, type OwnFacts } from './gather-own.js';
import type { RecencyQuery, RecencyView, RequirementView } from './recency.dto.js';
import { requirementsFor, together, type Requirement } from './requirements.js';

/** What lapses next of one person. Nothing is stored: this is no decision. */
@Injectable()
export class RecencyService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws ProblemException 403, and as `gatherOwn`. */
  async read(user: SignedIn, memberId: string, query: RecencyQuery): Promise<RecencyView> {
    assertOwnOr(user, memberId, READERS);
    const knownAt = this.clock.now();
    const asked = { memberId, on: query.on, knownAt };
    const gather = async (em: EntityManager) => {
      const facts = await gatherOwn(em, asked);
      await assertTaughtOr(em, user, memberId, { roles: OFFICERS, now: knownAt });
      return facts;
    };
    const facts = await this.db.run(user.clubId, gather, { readOnly: true });
    const pace = new Pace();
    const all: Requirement[] = [];
    for (const flight of query.flight ? [query.flight] : BOARD_FLIGHTS) {
      all.push(...requirementsFor(facts.person, flight, facts.followed(flight)));
      await pace.breathe();
    }
    const requirements = together(all)
      .map((one) => viewOf(one, facts))
      .sort(
        (a, b) => rank(a) - rank(b) || order(a.lapsesOn ?? '', b.lapsesOn ?? '') || order(a.title, b.title),
      );
    return { knownAt, on: facts.on, through: facts.through, requirements, caution: CAUTION };
  }
}

/** What lapses first, then what does not hold, then the rest. */
const rank = ({ lapsesOn, holds }: RequirementView): number => (lapsesOn !== null ? 0 : holds ? 2 : 1);
const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function viewOf(one: Requirement, { on, person, registrations }: OwnFacts): RequirementView {
  const { aircraftIds, counted, lapsesOn, ...rest } = one;
  const flown = new Set(person.log.known ? person.log.value.map(({ id }) => id) : []);
  return {
    ...{ ...rest, lapsesOn },
    aircraft:
      aircraftIds.length === registrations.size
        ? null
        : aircraftIds.map((id) => registrations.get(id)!).sort(),
    inDays: lapsesOn === null ? null : daysBetween(on, lapsesOn),
    counted: counted.map((each) => ({ id: each.id, on: each.on, what: each.what })),
    entryIds: [...new Set(counted.map(({ id }) => id).filter((id) => flown.has(id)))],
  };
}
