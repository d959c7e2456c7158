import { Column, Entity, PrimaryColumn } from 'typeorm';
import { InstantColumn, TextColumn } from '../platform/database/columns.js';
import type { Jurisdiction } from '../rules/index.js';

/** A flying club: the tenant that every other row belongs to. */
@Entity('clubs')
export class Club {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  /** Short name in addresses and at sign-in. */
  @TextColumn('slug')
  slug: string;

  @TextColumn('name')
  name: string;

  /** IANA zone in which the club's days begin and end. */
  @TextColumn('zone')
  zone: string;

  @TextColumn('jurisdiction')
  jurisdiction: Jurisdiction;

  @Column({ name: 'row_version', type: 'integer', insert: false, update: false })
  rowVersion: number;

  @InstantColumn('recorded_at', { insert: false, update: false })
  recordedAt: string;
}
