import { Column } from 'typeorm';
import { FactRow, TextColumn } from '../../platform/database/columns.js';

/** A sheet out of the handbook: of a model, or of one aircraft that differs from it. */
export abstract class SheetRow extends FactRow {
  @Column({ name: 'model_id', type: 'uuid', nullable: true })
  modelId: string | null;

  @Column({ name: 'aircraft_id', type: 'uuid', nullable: true })
  aircraftId: string | null;

  /** Document and section the figures are from. */
  @TextColumn('source')
  source: string;
}
