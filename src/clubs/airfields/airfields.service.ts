import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  removeRecord,
} from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PageQuery } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { newId } from '../../platform/ids.js';
import {
  type AirfieldChanges,
  type AirfieldPage,
  AirfieldView,
  type NewAirfield,
  RunwayView,
} from './airfield.dto.js';
import { Airfield } from './airfield.entity.js';
import { Runway } from './runway.entity.js';

export const AIRFIELDS = { entity: Airfield, noun: 'airfield' };

/** Adds their runways, by designator, with one query for all airfields. */
async function views(em: EntityManager, clubId: string, airfields: Airfield[]): Promise<AirfieldView[]> {
  const airfieldId = In(airfields.map(({ id }) => id));
  const runways = await em.find(Runway, { where: { clubId, airfieldId }, order: { designator: 'ASC' } });
  return airfields.map((airfield) => {
    const own = runways.filter((runway) => runway.airfieldId === airfield.id);
    return show(AirfieldView, airfield, { runways: own.map((runway) => show(RunwayView, runway)) });
  });
}

const view = async (em: EntityManager, airfield: Airfield): Promise<AirfieldView> =>
  (await views(em, airfield.clubId, [airfield]))[0]!;

/** The club's airfields. */
@Injectable()
export class AirfieldsService {
  constructor(private readonly db: TenantDb) {}

  list(user: SignedIn, page: PageQuery): Promise<AirfieldPage> {
    const work = async (em: EntityManager) => {
      const { items, nextCursor } = await pageOfRecords(em, AIRFIELDS, { clubId: user.clubId }, page);
      return { items: await views(em, user.clubId, items), nextCursor };
    };
    return this.db.run(user.clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, id: string): Promise<AirfieldView> {
    const work = async (em: EntityManager) => view(em, await findRecord(em, AIRFIELDS, { clubId, id }));
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws ProblemException 409 when the code is taken or a designator comes twice. */
  add({ clubId, memberId }: SignedIn, body: NewAirfield): Promise<AirfieldView> {
    const work = async (em: EntityManager) => {
      const { runways = [], ...values } = body;
      const airfield = await addRecord(em, AIRFIELDS, { clubId, ...values });
      const rows = runways.map((runway) => ({ ...runway, clubId, id: newId(), airfieldId: airfield.id }));
      if (rows.length > 0) await em.insert(Runway, rows);
      return view(em, airfield);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: AirfieldChanges,
  ): Promise<AirfieldView> {
    const work = async (em: EntityManager) =>
      view(
        em,
        await editRecord(em, AIRFIELDS, { where: { clubId, id }, version, change: () => ({ ...changes }) }),
      );
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Deletes it with its runways, unless an aircraft is at home there. */
  remove({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRFIELDS, { clubId, id }, { lock: true });
      await em.delete(Runway, { clubId, airfieldId: id });
      const detail =
        'An aircraft is at home on this airfield. Give the aircraft another home airfield first.';
      await removeRecord(em, AIRFIELDS, { where: { clubId, id }, version, inUse: { detail } });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
