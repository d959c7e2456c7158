import { performance } from 'node:perf_hooks';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/index.js';
import { toSeconds } from '../../rules/index.js';
import { findWays, type WaysToYes } from '../../rules/ways/index.js';
import type { Decided } from '../decision-store.js';
import { DecisionsService } from '../decisions.service.js';
import { recordsOpenTo } from '../privacy.js';
import type { StoredDecision } from '../stored-decision.js';
import { gatherWithinReach } from './gather-ways.js';
import { waysAsSeenBy } from './privacy.js';
import type { WaysDto } from './ways.dto.js';

/** States and time a search may take; it says when it stopped at one of them. */
const NODES = 3000;
const MILLISECONDS = 400;

/** Searches for the ways to yes of a stored decision. */
@Injectable()
export class WaysService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly decisions: DecisionsService,
  ) {}

  /** The ways for a question about one aircraft whose answer is no plain yes; null for any other. */
  async ofAnswers(user: SignedIn, decided: readonly Decided[]): Promise<WaysDto | null> {
    const [one, another] = decided;
    if (!one || another || one.decision.answer.startsWith('yes')) return null;
    const { departs } = one.sheet.flight;
    return toSeconds(departs) > toSeconds(this.clock.now()) ? this.of(user, one.id) : null;
  }

  /**
   * The ways to yes of a decision, on its stored facts, with the rules and the aircraft of now. Nothing is done before
   * now, and no way touches the record of somebody the viewer may not read.
   *
   * @throws ProblemException 404 for a decision the viewer may not see; 422 when its flight has begun.
   */
  async of(user: SignedIn, decisionId: string): Promise<WaysDto> {
    const stored = await this.decisions.find(user, decisionId);
    refuseTheBegun(stored, this.clock.now());
    return { decisionId, ...(await this.search(user, stored)) };
  }

  /** The same search on a sheet at hand: a booked flight with its facts as they are now. */
  async search(
    user: SignedIn,
    of: Pick<StoredDecision, 'sheet' | 'policy' | 'decision'>,
  ): Promise<WaysToYes> {
    const now = this.clock.now();
    const { sheet, policy } = of;
    const reach = await this.db.run(user.clubId, (em) => gatherWithinReach(em, sheet, now), {
      readOnly: true,
    });
    const open = recordsOpenTo(user, [sheet.flight.memberId]);
    const stopAt = performance.now() + MILLISECONDS;
    const found = findWays({
      ...{ sheet, policy, from: now },
      ...reach,
      closedRecords: [...Object.keys(sheet.people), ...reach.instructors.map(({ id }) => id)].filter(
        (id) => open !== null && !open.includes(id),
      ),
      limits: { nodes: NODES, shouldStop: () => performance.now() > stopAt },
    });
    return waysAsSeenBy(user, of, found);
  }
}

function refuseTheBegun({ sheet }: StoredDecision, now: string): void {
  if (toSeconds(sheet.flight.departs) > toSeconds(now)) return;
  throw new ProblemException('flight-invalid', {
    status: 422,
    title: 'The flight has begun',
    detail: `The flight of this decision was to leave at ${sheet.flight.departs} (it is ${now}); ask for one to come.`,
  });
}
