import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/index.js';
import { catalogueOf, explainRule, listedRule } from '../../rules/explain/index.js';
import {
  CAUTION,
  localDateOf,
  rulesetFor,
  toSeconds,
  type Jurisdiction,
  type LocalDate,
  type Ruleset,
} from '../../rules/index.js';
import { gatherClub } from '../gather/club.js';
import type { RuleBookDto, RuleInBookDto } from './rule.dto.js';

/** Reads the rule book of a club: the rules that would judge its flights, and the numbers in force on a day. */
@Injectable()
export class RuleBookService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** The whole book, as of a day or of today in the club's zone. */
  async read(clubId: string, day: LocalDate | null): Promise<RuleBookDto> {
    const { ruleset, on, jurisdiction } = await this.bookOf(clubId, day);
    return { on, jurisdiction, items: catalogueOf(ruleset, on).map(listedRule), caution: CAUTION };
  }

  /** One rule. @throws ProblemException 404 for a rule the club's book does not have. */
  async rule(clubId: string, id: string, day: LocalDate | null): Promise<RuleInBookDto> {
    const { ruleset, on } = await this.bookOf(clubId, day);
    const rule = ruleset.rules.find((one) => one.id === id);
    if (!rule) {
      throw new ProblemException('not-found', {
        detail: "The club's rule book has no such rule. Take its id from GET /api/v1/rules.",
      });
    }
    return { on, rule: explainRule(rule, ruleset, on), caution: CAUTION };
  }

  private async bookOf(
    clubId: string,
    day: LocalDate | null,
  ): Promise<{ ruleset: Ruleset; on: LocalDate; jurisdiction: Jurisdiction }> {
    const { jurisdiction, policy, zone } = await this.db.run(clubId, gatherClub, { readOnly: true });
    const on = day ?? localDateOf(toSeconds(this.clock.now()), zone);
    return { ruleset: rulesetFor(jurisdiction, policy), on, jurisdiction };
  }
}
