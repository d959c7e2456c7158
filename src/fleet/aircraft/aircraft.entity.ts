import { Column, Entity } from 'typeorm';
import {
  DateColumn,
  FactRow,
  FlagColumn,
  IntegerColumn,
  RealColumn,
  TextColumn,
} from '../../platform/database/columns.js';
import type { AircraftUse, MeterKind } from '../../rules/index.js';

/** One aircraft of the club, and how the club uses it. */
@Entity('aircraft')
export class Aircraft extends FactRow {
  @TextColumn('registration')
  registration: string;

  @Column({ name: 'model_id', type: 'uuid' })
  modelId: string;

  @Column({ name: 'home_airfield_id', type: 'uuid' })
  homeAirfieldId: string;

  /** Seats fitted, pilots' included. */
  @IntegerColumn('seats')
  seats: number;

  @IntegerColumn('occupants_certificated')
  occupantsCertificated: number;

  /** The maker's; directives apply by it. */
  @TextColumn('serial_number', { nullable: true })
  serialNumber: string | null;

  @RealColumn('empty_weight_lb', { nullable: true })
  emptyWeightLb: number | null;

  /** 14 CFR 91.205(b)(11): anti-collision lights by day. */
  @FlagColumn('certificated_after_1996_03_11')
  certificatedAfter19960311: boolean;

  /** Keeps its rated power to altitude (14 CFR 1.1). Null = not entered, here and below. */
  @FlagColumn('altitude_engine', { nullable: true })
  altitudeEngine: boolean | null;

  @DateColumn('manufactured_on', { nullable: true })
  manufacturedOn: string | null;

  /** Certificated with an engine-driven electrical system (14 CFR 91.215(b)(3), (5)). */
  @FlagColumn('engine_driven_electrical', { nullable: true })
  engineDrivenElectrical: boolean | null;

  /** Flown under an approved minimum equipment list (14 CFR 91.213(a)). */
  @FlagColumn('approved_equipment_list', { nullable: true })
  approvedEquipmentList: boolean | null;

  @TextColumn('status')
  status: AircraftUse['status'];

  @FlagColumn('instruction_for_hire')
  instructionForHire: boolean;

  @FlagColumn('carries_for_hire')
  carriesForHire: boolean;

  /** The meter that inspections count by. */
  @TextColumn('inspection_meter')
  inspectionMeter: MeterKind;
}
