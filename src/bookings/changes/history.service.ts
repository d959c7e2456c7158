import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { READERS } from '../../members/members.access.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { BookingChangesDto } from './changes.dto.js';
import { notYours } from './changes.problems.js';
import { historyOf, openBooking } from './changes.sql.js';

/** Tells what was done to a booking. */
@Injectable()
export class HistoryService {
  constructor(private readonly db: TenantDb) {}

  of(user: SignedIn, id: string): Promise<BookingChangesDto> {
    return this.db.run(
      user.clubId,
      async (em) => {
        const { row } = await openBooking(em, id);
        const history = await historyOf(em, id);
        const aboard = [
          ...row.people.map(({ memberId }) => memberId),
          ...history.items.flatMap(({ before }) => [
            before.memberId,
            before.instructorId,
            before.secondPilotId,
          ]),
        ];
        const ofFlight = row.kind === 'flight' || row.kind === 'hold';
        if (ofFlight && !aboard.includes(user.memberId) && !hasAnyRole(user, ...READERS))
          throw notYours(
            'Not yours to read',
            'Its history is for who is or was aboard, instructors and officers.',
          );
        return history;
      },
      { readOnly: true },
    );
  }
}
