import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { withBookingEffects } from '../../bookings/standing-answers.js';
import type { PartPlace } from '../../fleet/aircraft-records.js';
import { ClosingService } from '../../fleet/squawks/closing.service.js';
import { requireOpen } from '../../fleet/squawks/squawk-states.js';
import { SQUAWKS } from '../../fleet/squawks/squawks.service.js';
import { TriageService } from '../../fleet/squawks/triage.service.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { CAUTION } from '../../rules/index.js';
import { KIND_TITLES } from '../trials/kinds-of-flight.js';
import { effectOf, type SquawkEffect } from './squawk-effect.js';
import type { KindEffect, SquawkEffects, SquawkStep } from './squawk-effects.dto.js';
import { trialSheets, type TrialSheet } from '../trials/trial-sheets.js';

/** Words that a rehearsed fix is signed with; they are rolled back with it. */
const REHEARSED = { correctiveAction: 'Rehearsal', signedBy: 'Rehearsal' };

/** What a step at triage would do to flights and bookings, found out by doing it and undoing it. */
@Injectable()
export class SquawkEffectsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly triage: TriageService,
    private readonly closing: ClosingService,
  ) {}

  /** @throws ProblemException as the step itself would. */
  preview(user: SignedIn, place: PartPlace, body: SquawkStep): Promise<SquawkEffects> {
    const now = this.clock.now();
    const of = { aircraftId: place.aircraftId, memberId: user.memberId, now };
    const work = async (em: EntityManager): Promise<SquawkEffects> => {
      const squawk = await findRecord(em, SQUAWKS, { clubId: user.clubId, ...place }, { lock: true });
      requireOpen(squawk.state);
      const before = await trialSheets(em, of);
      const { bookings, changed } = await withBookingEffects(
        em,
        { aircraftIds: [place.aircraftId], now },
        () => this.act(em, user, place, body),
      );
      const after = await trialSheets(em, of);
      return {
        step: body.step,
        kinds: before.map((one, index) => kindEffect(one, after[index]!, place.id)),
        ...{ bookingsJudged: bookings, bookings: changed, caution: CAUTION },
      };
    };
    return this.db.run(user.clubId, work, { actorId: user.memberId, rehearse: true });
  }

  private async act(
    em: EntityManager,
    user: SignedIn,
    place: PartPlace,
    { step, deferral }: SquawkStep,
  ): Promise<void> {
    if (step === 'ground') await this.triage.groundIn(em, user, place);
    if (step === 'fix') await this.closing.fixIn(em, user, place, REHEARSED);
    if (step !== 'defer') return;
    if (deferral === undefined)
      throw new ProblemException('value-refused', {
        field: 'deferral',
        detail: 'Say which steps of the deferral would be recorded; each may be left open.',
      });
    await this.triage.deferIn(em, user, place, deferral);
  }
}

function kindEffect(before: TrialSheet, after: TrialSheet, squawkId: string): KindEffect {
  const effect = (trial: TrialSheet): SquawkEffect | null =>
    'because' in trial ? null : effectOf(trial.sheet, trial.policy, squawkId);
  return {
    ...{ kind: before.kind, title: KIND_TITLES[before.kind], departs: before.departs },
    because: 'because' in before ? before.because : null,
    ...{ now: effect(before), then: effect(after) },
  };
}
