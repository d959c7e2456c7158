import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { policyNumber } from '../../clubs/policy/policy-number.js';
import { addRecord, editRecord, findRecord, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { addDays, type LocalDate } from '../../rules/index.js';
import type { PartPlace } from '../aircraft-records.js';
import { AIRCRAFT } from '../aircraft/aircraft.records.js';
import { requireEquipment } from '../references.js';
import type { DeferralChanges, DeferralView, NewDeferral } from './deferral.dto.js';
import { Deferral } from './deferral.entity.js';
import { type DeferralOf, requireDeferrable } from './deferral-steps.js';
import type { SquawkView } from './squawk.dto.js';
import { Squawk } from './squawk.entity.js';
import { requireOpen, requireStep } from './squawk-states.js';
import { deferralView, squawkView } from './squawk.views.js';
import { SQUAWKS } from './squawks.service.js';

const DEFERRALS = { entity: Deferral, noun: 'deferral' };
/** Days a deferral lasts where it names no last day. */
const DEFERRAL_DAYS = 'club.squawks.deferral-days';

/** What the coordinator decides about an open squawk. The forms with `In` run in the caller's transaction, so that they can be rehearsed. */
@Injectable()
export class TriageService {
  constructor(private readonly db: TenantDb) {}

  ground(user: SignedIn, place: PartPlace): Promise<SquawkView> {
    return this.run(user, (em) => this.groundIn(em, user, place));
  }

  /** @throws ProblemException 422 when 14 CFR 91.213(d) rules it out, naming the step. */
  defer(user: SignedIn, place: PartPlace, body: NewDeferral): Promise<SquawkView> {
    return this.run(user, (em) => this.deferIn(em, user, place, body));
  }

  /** Grounds the aircraft. A deferral it had is withdrawn; its history keeps it. */
  groundIn(em: EntityManager, user: SignedIn, place: PartPlace): Promise<SquawkView> {
    return stepIn(em, user, place, 'grounding', async ({ clubId, id }) => {
      await em.delete(Deferral, { clubId, squawkId: id });
      return {};
    });
  }

  deferIn(em: EntityManager, user: SignedIn, place: PartPlace, body: NewDeferral): Promise<SquawkView> {
    return stepIn(em, user, place, 'deferred', async (squawk) => {
      requireDeferrable(body, await deferralOf(em, squawk));
      const { clubId, id: squawkId } = squawk;
      const deadlineOn =
        body.deadlineOn === undefined ? await clubDeadline(em, clubId, body.deferredOn) : body.deadlineOn;
      await addRecord(em, DEFERRALS, { ...body, deadlineOn, clubId, squawkId });
      return {};
    });
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
    user: SignedIn,
    place: PartPlace,
    version: number,
    changes: DeferralChanges,
  ): Promise<DeferralView> {
    const { clubId } = user;
    return this.run(user, async (em) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place }, { lock: true });
      const of = await deferralOf(em, squawk);
      const change = async (row: Deferral) => {
        requireOpen(squawk.state);
        const given = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
        requireDeferrable({ ...row, ...given }, of);
        return { ...changes };
      };
      const where = { clubId, squawkId: squawk.id };
      return deferralView(await editRecord(em, DEFERRALS, { where, version, change }), of.aircraft);
    });
  }

  private run<T>({ clubId, memberId }: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

/** One step of the state machine, on a locked row. */
export async function stepIn(
  em: EntityManager,
  { clubId }: SignedIn,
  place: PartPlace,
  state: Squawk['state'],
  also: (squawk: Squawk) => Promise<Partial<Squawk>>,
): Promise<SquawkView> {
  const squawk = await findRecord(em, SQUAWKS, { clubId, ...place }, { lock: true });
  requireStep(squawk.state, state);
  const more = await also(squawk);
  return squawkView(em, await writeRecord(em, SQUAWKS, squawk, { ...more, state }));
}

/** The last day by the club's policy; null where it sets none. */
export async function clubDeadline(
  em: EntityManager,
  clubId: string,
  on: LocalDate,
): Promise<LocalDate | null> {
  const days = await policyNumber(em, { clubId, parameterId: DEFERRAL_DAYS, on });
  return days === null || days === 0 ? null : addDays(on, days);
}

/** The aircraft and the equipment that a squawk's deferral is held against. */
async function deferralOf(
  em: EntityManager,
  { clubId, aircraftId, equipmentId }: Squawk,
): Promise<DeferralOf> {
  const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
  return { aircraft, equipment: await requireEquipment(em, { clubId, aircraftId, id: equipmentId }) };
}
