import type { Type } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../accounts/current-user.js';
import type { FactRow } from '../platform/database/columns.js';
import {
  addRecord,
  editRecord,
  findRecord,
  pageOfRecords,
  type Records,
  removeRecord,
  type Where,
} from '../platform/database/records.js';
import type { TenantDb } from '../platform/database/tenant.js';
import type { Page, PageQuery } from '../platform/http/pages.js';
import { show } from '../platform/http/views.js';
import { AIRCRAFT } from './aircraft/aircraft.records.js';

/** A row that belongs to one aircraft. */
export interface AircraftPart extends FactRow {
  aircraftId: string;
}

/** Where a record of an aircraft is. */
export interface PartPlace {
  aircraftId: string;
  id: string;
}

/** What one kind of record is called and what keeps it from being deleted. */
export interface PartWords<Row> extends Records<Row> {
  /** Said when other records point at it. */
  inUse?: string;
}

/**
 * Records kept of one aircraft and edited in place: registrations, permits, equipment, differences, items. A record of
 * another aircraft is answered like an unknown one.
 */
export abstract class AircraftRecords<Row extends AircraftPart, Body extends object, View extends object> {
  protected constructor(
    protected readonly db: TenantDb,
    protected readonly of: PartWords<Row>,
    private readonly viewClass: Type<View>,
  ) {}

  list({ clubId }: SignedIn, aircraftId: string, page: PageQuery): Promise<Page<View>> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const { items, nextCursor } = await pageOfRecords(
        em,
        this.of,
        this.where(clubId, { aircraftId }),
        page,
      );
      return { items: await this.views(em, items), nextCursor };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  read({ clubId }: SignedIn, place: PartPlace): Promise<View> {
    const work = async (em: EntityManager) =>
      this.view(em, await findRecord(em, this.of, this.where(clubId, place)));
    return this.db.run(clubId, work, { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, aircraftId: string, body: Body): Promise<View> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      const values = { ...this.valuesOf(body), clubId, aircraftId } as Partial<Row> & { clubId: string };
      await this.check(em, values);
      const row = await addRecord(em, this.of, values);
      await this.after(em, { clubId, aircraftId });
      return this.view(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    place: PartPlace,
    version: number,
    changes: Partial<Body>,
  ): Promise<View> {
    const change = async (em: EntityManager, row: Row) => {
      const values = this.valuesOf(changes);
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      await this.check(em, { ...row, ...given });
      return values;
    };
    const work = async (em: EntityManager) => {
      const edit = { where: this.where(clubId, place), version, change: (row: Row) => change(em, row) };
      const row = await editRecord(em, this.of, edit);
      await this.after(em, { clubId, aircraftId: place.aircraftId });
      return this.view(em, row);
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  remove({ clubId, memberId }: SignedIn, place: PartPlace, version: number): Promise<void> {
    const inUse = this.of.inUse === undefined ? undefined : { detail: this.of.inUse };
    const work = async (em: EntityManager) => {
      await removeRecord(em, this.of, { where: this.where(clubId, place), version, inUse });
      await this.after(em, { clubId, aircraftId: place.aircraftId });
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Columns from a body; where names or units differ, a domain says how. */
  protected valuesOf(body: Partial<Body>): Partial<Row> {
    return { ...body } as unknown as Partial<Row>;
  }

  /** Holds the row as it would be against what no column can say. @throws ProblemException 422. */
  protected check(_em: EntityManager, _row: Partial<Row>): Promise<void> {
    return Promise.resolve();
  }

  /** Keeps in step what follows from these records. */
  protected after(_em: EntityManager, _of: { clubId: string; aircraftId: string }): Promise<void> {
    return Promise.resolve();
  }

  /** Answers for rows; a domain adds what the row does not hold. */
  protected views(_em: EntityManager, rows: Row[]): Promise<View[]> {
    return Promise.resolve(rows.map((row) => show(this.viewClass, row)));
  }

  private async view(em: EntityManager, row: Row): Promise<View> {
    return (await this.views(em, [row]))[0]!;
  }

  private where(clubId: string, rest: { aircraftId: string; id?: string }): Where<Row> {
    return { clubId, ...rest } as unknown as Where<Row>;
  }
}
