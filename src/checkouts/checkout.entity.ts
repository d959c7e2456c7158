import { Column, Entity, PrimaryColumn } from 'typeorm';
import { DateColumn, InstantColumn, RecordedRow, TextColumn } from '../platform/database/columns.js';
import type { CheckoutCondition, CheckoutFact, EquipmentGroup } from '../rules/facts/person.js';

/** A club sign-off: signed once, never edited. */
@Entity('checkouts')
export class Checkout extends RecordedRow {
  @Column({ name: 'member_id', type: 'uuid' })
  memberId: string;

  @TextColumn('kind')
  kind: CheckoutFact['kind'];

  @Column({ name: 'model_id', type: 'uuid', nullable: true })
  modelId: string | null;

  @Column({ name: 'aircraft_id', type: 'uuid', nullable: true })
  aircraftId: string | null;

  @TextColumn('equipment_group', { nullable: true })
  equipmentGroup: EquipmentGroup | null;

  @TextColumn('condition', { nullable: true })
  condition: CheckoutCondition | null;

  /** What the club asked for it, where it had laid that down. */
  @Column({ name: 'version_id', type: 'uuid', nullable: true })
  versionId: string | null;

  /** The change that was shown under it. */
  @Column({ name: 'difference_id', type: 'uuid', nullable: true })
  differenceId: string | null;

  @DateColumn('signed_on')
  signedOn: string;

  @DateColumn('expires_on', { nullable: true })
  expiresOn: string | null;

  @Column({ name: 'signed_by', type: 'uuid' })
  signedBy: string;

  @TextColumn('remarks')
  remarks: string;
}

/** Takes a sign-off back. */
@Entity('checkout_voids')
export class CheckoutVoid {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'checkout_id', type: 'uuid' })
  checkoutId: string;

  @Column({ name: 'voided_by', type: 'uuid' })
  voidedBy: string;

  @TextColumn('reason')
  reason: string;

  @InstantColumn('recorded_at', { insert: false, update: false })
  recordedAt: string;
}
