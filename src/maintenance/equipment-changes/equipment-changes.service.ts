import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { withBookingEffects } from '../../bookings/standing-answers.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { flagOn } from '../../decisions/policy-flag.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { Equipment } from '../../fleet/equipment/equipment.entity.js';
import { MetersService } from '../../fleet/meters/meters.service.js';
import { AircraftModel } from '../../fleet/models/aircraft-model.entity.js';
import { notToCome } from '../../fleet/not-to-come.js';
import { Clock } from '../../platform/clock.js';
import { findRecord, pageOfRecords } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { CAUTION, digestOf, type EquipmentKind } from '../../rules/index.js';
import { type Done, writeChange } from './change-in-hand.js';
import type { NewEquipmentChange, TakeBack } from './equipment-change.dto.js';
import { EquipmentChange } from './equipment-change.entity.js';
import { previewStale } from './equipment-changes.problems.js';
import type {
  EquipmentChangePage,
  EquipmentChangeResult,
  EquipmentChangeView,
  MemberToShow,
  WeightAfter,
} from './equipment-change-view.dto.js';
import { withCapabilities } from '../trials/capability.js';
import { membersToShow } from './members-to-show.js';
import type { EmptyWeight } from './new-weight.js';
import { kindsOf } from './parts.js';
import { takeChangeBack } from './take-back.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

const CHANGES = { entity: EquipmentChange, noun: 'equipment change' };

/** Does the shared club rule let a checkout on the same equipment elsewhere count? */
const ELSEWHERE_COUNTS = 'club.differences-checkout.elsewhere-counts';

/** Changes of equipment, each with all that follows from it, in one transaction. */
@Injectable()
export class EquipmentChangesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly meters: MetersService,
  ) {}

  list({ clubId }: SignedIn, aircraftId: string, page: PageQuery): Promise<EquipmentChangePage> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { items, nextCursor } = await pageOfRecords(em, CHANGES, { clubId, aircraftId }, page, true);
      return { items: await views(em, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** What the change would do, found out by doing it and undoing it. Nothing is kept. */
  async preview(
    user: SignedIn,
    aircraftId: string,
    body: NewEquipmentChange,
  ): Promise<EquipmentChangeResult> {
    const result = await this.db.run(user.clubId, (em) => this.work(em, user, aircraftId, body), {
      actorId: user.memberId,
      rehearse: true,
    });
    return { ...result, changeId: null };
  }

  /** Makes the change. @throws ProblemException 409 when it is not what its preview showed. */
  make(user: SignedIn, aircraftId: string, body: NewEquipmentChange): Promise<EquipmentChangeResult> {
    const work = async (em: EntityManager) => {
      const result = await this.work(em, user, aircraftId, body);
      if (body.preview !== undefined && body.preview !== result.preview) throw previewStale();
      return result;
    };
    return this.db.run(user.clubId, work, { actorId: user.memberId });
  }

  /** @throws ProblemException 409 once something rests on it. */
  takeBack(
    { clubId, memberId }: SignedIn,
    place: { aircraftId: string; id: string },
    { reason }: TakeBack,
  ): Promise<EquipmentChangeView> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: place.aircraftId }, { lock: true });
      const change = await findRecord(em, CHANGES, { clubId, ...place }, { lock: true });
      await takeChangeBack(em, change, { memberId, reason, now: this.clock.now() });
      return (await views(em, [await findRecord(em, CHANGES, { clubId, ...place })]))[0]!;
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  private async work(
    em: EntityManager,
    { clubId, memberId }: SignedIn,
    aircraftId: string,
    body: NewEquipmentChange,
  ): Promise<EquipmentChangeResult> {
    const now = this.clock.now();
    const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
    await notToCome(em, clubId, { field: 'doneOn', on: body.doneOn, now });
    if (body.removes.length + body.installs.length === 0)
      throw valueRefused('installs', 'A change removes or installs something. Name at least one piece.');
    const kindsBefore = await kindsNow(em, { clubId, aircraftId });
    const {
      result: { result, bookings, changed },
      kinds,
    } = await withCapabilities(em, { aircraftId, memberId, now }, () =>
      withBookingEffects(em, { aircraftIds: [aircraftId], now }, () =>
        writeChange(em, this.meters, { clubId, aircraftId, memberId, now }, body),
      ),
    );
    const kindsAfter = await kindsNow(em, { clubId, aircraftId });
    const model = await em.findOneByOrFail(AircraftModel, { clubId, id: aircraft.modelId });
    const told = {
      weight: weightChange(result, model.maxTakeoffLb),
      lost: [...kindsBefore].filter((kind) => !kindsAfter.has(kind)).sort(),
      gained: [...kindsAfter].filter((kind) => !kindsBefore.has(kind)).sort(),
      kinds,
      itemsEnded: result.ended.map(({ id, title }) => ({ id, title })),
      itemsBegun: result.begun.map(({ title }) => ({ id: null, title })),
      members: await this.toShow(em, aircraftId, body, now),
      bookingsJudged: bookings,
      bookings: changed,
    };
    return { changeId: result.changeId, preview: digestOf(told), ...told, caution: CAUTION };
  }

  private async toShow(
    em: EntityManager,
    aircraftId: string,
    { difference, doneOn }: NewEquipmentChange,
    now: string,
  ): Promise<MemberToShow[]> {
    if (!difference) return [];
    const { policy, zone } = await gatherClub(em, now);
    const elsewhereCounts = flagOn(policy, ELSEWHERE_COUNTS, { knownAt: now, zone });
    const { equipmentGroup } = difference;
    return membersToShow(em, { aircraftId, equipmentGroup, on: doneOn, elsewhereCounts });
  }
}

async function kindsNow(
  em: EntityManager,
  of: { clubId: string; aircraftId: string },
): Promise<Set<EquipmentKind>> {
  const pieces = await em.findBy(Equipment, of);
  return kindsOf(pieces.filter(({ removedOn }) => removedOn === null));
}

function weightChange({ before, after }: Done, maxTakeoffLb: number | null): EquipmentChangeResult['weight'] {
  return {
    before: weightAfter(before, maxTakeoffLb),
    after: weightAfter(after.known ? after.weight : null, maxTakeoffLb),
    because: after.known ? null : after.because,
  };
}

function weightAfter(weight: EmptyWeight | null, maxTakeoffLb: number | null): WeightAfter {
  const { emptyWeightLb = null, emptyArmIn = null } = weight ?? {};
  return {
    emptyWeightLb,
    emptyArmIn,
    emptyMomentLbIn: emptyWeightLb === null || emptyArmIn === null ? null : emptyWeightLb * emptyArmIn,
    usefulLoadLb: emptyWeightLb === null || maxTakeoffLb === null ? null : maxTakeoffLb - emptyWeightLb,
  };
}

async function views(em: EntityManager, changes: readonly EquipmentChange[]): Promise<EquipmentChangeView[]> {
  const ids = changes.flatMap(({ effects }) => [...effects.removed, ...effects.installed]);
  const pieces =
    ids.length === 0 ? [] : await em.findBy(Equipment, { clubId: changes[0]!.clubId, id: In(ids) });
  const names = new Map(pieces.map(({ id, name }) => [id, name]));
  const named = (of: readonly string[]) => of.map((id) => names.get(id)).filter((name) => name !== undefined);
  return changes.map(({ effects, ...change }) => ({
    ...{ id: change.id, aircraftId: change.aircraftId, title: change.title, doneOn: change.doneOn },
    ...{ statement: change.statement, signedBy: change.signedBy, documents: change.documents },
    removed: named(effects.removed),
    installed: named(effects.installed),
    ...{ madeBy: change.madeBy, takenBackAt: change.takenBackAt, takenBackReason: change.takenBackReason },
    recordedAt: change.recordedAt,
  }));
}
