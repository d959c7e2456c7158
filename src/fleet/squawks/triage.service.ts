import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, editRecord, findRecord, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PartPlace } from '../aircraft-records.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { requireEquipment } from '../references.js';
import type { DeferralChanges, DeferralView, NewDeferral } from './deferral.dto.js';
import { Deferral } from './deferral.entity.js';
import { type DeferralOf, requireDeferrable } from './deferral-steps.js';
import type { SquawkCleared, SquawkFix, SquawkView } from './squawk.dto.js';
import { Squawk } from './squawk.entity.js';
import { requireOpen, requireStep } from './squawk-states.js';
import { deferralView, squawkView } from './squawk.views.js';
import { SQUAWKS } from './squawks.service.js';

const DEFERRALS = { entity: Deferral, noun: 'deferral' };

/** What the coordinator decides about a squawk. */
@Injectable()
export class TriageService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Grounds the aircraft. A deferral it had is withdrawn; the audit log keeps it. */
  ground(user: SignedIn, place: PartPlace): Promise<SquawkView> {
    return this.step(user, place, 'grounding', async (em, { clubId, id }) => {
      await em.delete(Deferral, { clubId, squawkId: id });
      return {};
    });
  }

  /** @throws ProblemException 422 when 14 CFR 91.213(d) rules it out, naming the step. */
  defer(user: SignedIn, place: PartPlace, body: NewDeferral): Promise<SquawkView> {
    return this.step(user, place, 'deferred', async (em, squawk) => {
      requireDeferrable(body, await deferralOf(em, squawk));
      await addRecord(em, DEFERRALS, { ...body, clubId: squawk.clubId, squawkId: squawk.id });
      return {};
    });
  }

  fix(user: SignedIn, place: PartPlace, { correctiveAction, signedBy }: SquawkFix): Promise<SquawkView> {
    return this.step(user, place, 'fixed', async () => ({
      correctiveAction,
      signedBy,
      closedAt: this.clock.now(),
    }));
  }

  clear(user: SignedIn, place: PartPlace, { finding, signedBy }: SquawkCleared): Promise<SquawkView> {
    const closing = async () => ({ correctiveAction: finding, signedBy, closedAt: this.clock.now() });
    return this.step(user, place, 'no-fault-found', closing);
  }

  readDeferral({ clubId }: SignedIn, place: PartPlace): Promise<DeferralView> {
    const work = async (em: EntityManager) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place });
      const { aircraft } = await deferralOf(em, squawk);
      return deferralView(await findRecord(em, DEFERRALS, { clubId, squawkId: squawk.id }), aircraft);
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Records further steps, or another deadline. @throws as `defer`; 409 once the squawk is closed. */
  editDeferral(
    { clubId, memberId }: SignedIn,
    place: PartPlace,
    version: number,
    changes: DeferralChanges,
  ): Promise<DeferralView> {
    const work = async (em: EntityManager) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place }, { lock: true });
      const of = await deferralOf(em, squawk);
      const change = async (row: Deferral) => {
        requireOpen(squawk.state);
        const given = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
        requireDeferrable({ ...row, ...given }, of);
        return { ...changes };
      };
      const edited = await editRecord(em, DEFERRALS, {
        where: { clubId, squawkId: squawk.id },
        version,
        change,
      });
      return deferralView(edited, of.aircraft);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** One step of the state machine, on a locked row. */
  private step(
    { clubId, memberId }: SignedIn,
    place: PartPlace,
    state: Squawk['state'],
    also: (em: EntityManager, squawk: Squawk) => Promise<Partial<Squawk>>,
  ): Promise<SquawkView> {
    const work = async (em: EntityManager) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place }, { lock: true });
      requireStep(squawk.state, state);
      const more = await also(em, squawk);
      return squawkView(em, await writeRecord(em, SQUAWKS, squawk, { ...more, state }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

/** The aircraft and the equipment that a squawk's deferral is held against. */
async function deferralOf(
  em: EntityManager,
  { clubId, aircraftId, equipmentId }: Squawk,
): Promise<DeferralOf> {
  const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
  return { aircraft, equipment: await requireEquipment(em, { clubId, aircraftId, id: equipmentId }) };
}
