import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { requireVersion } from '../../platform/http/index.js';
import { ProblemException } from '../../platform/problems/index.js';
import type { BlockDto } from '../booking.dto.js';
import type { BookingRow } from '../booking.entity.js';
import { noAircraft, noBooking } from '../bookings.problems.js';
import { findBooking, insertBlock, lockAircraft } from '../bookings.sql.js';
import { lockForChange, noteChange } from '../changes/changes.sql.js';
import { requireOpen } from '../changes/edit.service.js';
import { blockTimes, makeRoom, noteDisplaced, type DisplacedFlight } from '../displacements/displace.js';
import type { EditBlockDto } from './blocks.dto.js';

/** A block as it stands, and who made room. */
export interface Blocked {
  row: BookingRow;
  displaced: DisplacedFlight[];
}

/** Takes aircraft off the calendar for maintenance or club use. Flights in the way stop it, or make room and are told. */
@Injectable()
export class BlocksService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  add(user: SignedIn, block: BlockDto): Promise<Blocked> {
    const now = this.clock.now();
    const { from, to } = blockTimes({ ...block, now });
    const { aircraftId, kind, note, displace = false } = block;
    const { clubId, memberId } = user;
    return this.db.run(
      clubId,
      async (em) => {
        if (!(await lockAircraft(em, aircraftId))) throw noAircraft(aircraftId);
        const displaced = await makeRoom(em, { clubId, aircraftId, memberId, from, to, now, displace });
        const id = await insertBlock(em, { kind, aircraftId, memberId, departs: from, arrives: to, note });
        await noteDisplaced(em, displaced, { aircraftId, blockId: id, from, to, now });
        return { row: (await findBooking(em, id))!, displaced };
      },
      { actorId: memberId },
    );
  }

  edit(user: SignedIn, of: { id: string; ifMatch: number; edit: EditBlockDto }): Promise<Blocked> {
    const { id, ifMatch, edit } = of;
    const { clubId, memberId } = user;
    return this.db.run(
      clubId,
      async (em) => {
        const now = this.clock.now();
        const { row } = await lockForChange(em, id);
        if (row.kind !== 'maintenance' && row.kind !== 'club') throw noBooking(id);
        requireVersion(row.rowVersion, ifMatch);
        requireOpen(row, now);
        await requireNoShop(em, id);
        const { kind = row.kind, note = row.note, displace = false } = edit;
        const { from, to } = blockTimes({ from: edit.from ?? row.departs, to: edit.to ?? row.arrives, now });
        const also = note === row.note ? [] : ['note'];
        const before = { kind: row.kind as string, departs: row.departs, arrives: row.arrives };
        const after = { kind, departs: from, arrives: to };
        if (JSON.stringify(before) === JSON.stringify(after) && also.length === 0)
          throw new ProblemException('nothing-to-change');
        const room = { clubId, aircraftId: row.aircraftId, memberId, from, to, now, displace, exceptId: id };
        const displaced = await makeRoom(em, room);
        await em.query(
          `UPDATE bookings SET kind = $2, during = tstzrange($3, $4, '[)'), note = $5
            WHERE club_id = bellcrank_club() AND id = $1`,
          [id, kind, from, to, note],
        );
        const { aircraftId } = row;
        await noteDisplaced(em, displaced, { aircraftId, blockId: id, from, to, now });
        await noteChange(em, { bookingId: id, act: 'edited', byId: memberId, before, after, also, at: now });
        return { row: (await findBooking(em, id))!, displaced };
      },
      { actorId: memberId },
    );
  }
}

/** The time of a visit to the shop is the visit's. */
async function requireNoShop(em: EntityManager, id: string): Promise<void> {
  const found: unknown[] = await em.query(
    'SELECT 1 FROM work_orders WHERE club_id = bellcrank_club() AND booking_id = $1',
    [id],
  );
  if (found.length > 0) throw new ProblemException('block-of-shop');
}
