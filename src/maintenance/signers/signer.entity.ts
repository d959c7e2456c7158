import { Entity } from 'typeorm';
import { DateColumn, FactRow, TextColumn } from '../../platform/database/columns.js';

/** What entitles somebody to approve an aircraft for return to service (14 CFR 43.7). */
export const HOLDS = [
  'mechanic',
  'inspection-authorization',
  'repair-station',
  'manufacturer',
  'pilot',
] as const;
export type Holds = (typeof HOLDS)[number];

/** Somebody the club has on record as entitled to sign for work. The record grants nothing. */
@Entity('signers')
export class Signer extends FactRow {
  @TextColumn('name')
  name: string;

  @TextColumn('certificate')
  certificate: string;

  @TextColumn('holds')
  holds: Holds;

  @DateColumn('valid_from')
  validFrom: string;

  /** Last day; null: no end is on record. */
  @DateColumn('valid_through', { nullable: true })
  validThrough: string | null;
}
