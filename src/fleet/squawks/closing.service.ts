import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord, writeRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { PartPlace } from '../aircraft-records.js';
import { Deferral } from './deferral.entity.js';
import { requireDuplicateOf } from './duplicates/duplicate-of.js';
import { SquawkPart } from './part.entity.js';
import type { SquawkCleared, SquawkDuplicate, SquawkFix, SquawkReopened, SquawkView } from './squawk.dto.js';
import type { Squawk } from './squawk.entity.js';
import { reopenedState } from './squawk-states.js';
import { squawkView } from './squawk.views.js';
import { SQUAWKS } from './squawks.service.js';
import { stepIn } from './triage.service.js';

const PARTS = { entity: SquawkPart, noun: 'part' };

/** How squawks end, and begin again. Who signed is kept as entered: the record grants nobody authority. */
@Injectable()
export class ClosingService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  fix(user: SignedIn, place: PartPlace, body: SquawkFix): Promise<SquawkView> {
    return this.run(user, (em) => this.fixIn(em, user, place, body));
  }

  /** As `fix`, in the caller's transaction: for a shop visit that closes several, or a rehearsal. */
  fixIn(em: EntityManager, user: SignedIn, place: PartPlace, body: SquawkFix): Promise<SquawkView> {
    const { correctiveAction, signedBy, signedCertificate = null, parts = [] } = body;
    return stepIn(em, user, place, 'fixed', async (squawk) => {
      const closed = this.closed(squawk);
      const { clubId, id: squawkId } = squawk;
      for (const part of parts)
        await addRecord(em, PARTS, { ...part, clubId, squawkId, closing: closed.closings });
      return { ...closed, correctiveAction, signedBy, signedCertificate };
    });
  }

  clear(user: SignedIn, place: PartPlace, body: SquawkCleared): Promise<SquawkView> {
    const { finding, signedBy, signedCertificate = null } = body;
    return this.run(user, (em) =>
      stepIn(em, user, place, 'no-fault-found', async (squawk) => ({
        ...this.closed(squawk),
        ...{ correctiveAction: finding, signedBy, signedCertificate },
      })),
    );
  }

  /** Closes it as a duplicate of one that stays open. @throws ProblemException 422 where something would be lost. */
  duplicate(user: SignedIn, place: PartPlace, { ofSquawkId }: SquawkDuplicate): Promise<SquawkView> {
    return this.run(user, (em) =>
      stepIn(em, user, place, 'duplicate', async (squawk) => {
        await requireDuplicateOf(em, squawk, ofSquawkId);
        return { ...this.closed(squawk), duplicateOf: ofSquawkId };
      }),
    );
  }

  /** Opens it again: grounding if it was, else to be looked at. A deferral it had is withdrawn; its history keeps all. */
  reopen(user: SignedIn, place: PartPlace, { because }: SquawkReopened): Promise<SquawkView> {
    const { clubId } = user;
    return this.run(user, async (em) => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place }, { lock: true });
      const state = reopenedState(squawk);
      await em.delete(Deferral, { clubId, squawkId: squawk.id });
      const row = await writeRecord(em, SQUAWKS, squawk, {
        ...{ state, reopenedBecause: because, closedAt: null, closedFrom: null, duplicateOf: null },
        ...{ correctiveAction: null, signedBy: null, signedCertificate: null },
      });
      return squawkView(em, row);
    });
  }

  private closed({ state, closings }: Squawk): Pick<Squawk, 'closedAt' | 'closedFrom' | 'closings'> {
    return { closedAt: this.clock.now(), closedFrom: state as Squawk['closedFrom'], closings: closings + 1 };
  }

  private run<T>({ clubId, memberId }: SignedIn, work: (em: EntityManager) => Promise<T>): Promise<T> {
    return this.db.run(clubId, work, { actorId: memberId });
  }
}
