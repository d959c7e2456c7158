import { Column, Entity } from 'typeorm';
import { DateColumn, FactRow, FlagColumn, TextColumn } from '../../platform/database/columns.js';

/** The steps of 14 CFR 91.213(d) as recorded for one squawk. Null = not recorded. */
@Entity('deferrals')
export class Deferral extends FactRow {
  @Column({ name: 'squawk_id', type: 'uuid' })
  squawkId: string;

  @DateColumn('deferred_on')
  deferredOn: string;

  @DateColumn('deadline_on', { nullable: true })
  deadlineOn: string | null;

  @FlagColumn('required_by_type_design', { nullable: true })
  requiredByTypeDesign: boolean | null;

  @FlagColumn('required_by_equipment_list', { nullable: true })
  requiredByEquipmentList: boolean | null;

  @FlagColumn('required_by_directive', { nullable: true })
  requiredByDirective: boolean | null;

  @FlagColumn('removed_or_deactivated', { nullable: true })
  removedOrDeactivated: boolean | null;

  @FlagColumn('placarded', { nullable: true })
  placarded: boolean | null;

  @FlagColumn('recorded', { nullable: true })
  recorded: boolean | null;

  @TextColumn('no_hazard_determined_by', { nullable: true })
  noHazardDeterminedBy: string | null;

  /** Item of the approved minimum equipment list it is deferred under (14 CFR 91.213(a)). */
  @TextColumn('equipment_list_item', { nullable: true })
  equipmentListItem: string | null;
}
