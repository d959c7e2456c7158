import { NumberField, TextField } from '../../platform/http/fields.js';

/** A part that a repair used. */
export class PartUsed {
  @TextField({ max: 80, description: 'Part number as on its tag' })
  partNumber: string;

  @TextField({ max: 80, nullable: true, description: 'Serial number, where it has one' })
  serialNumber?: string | null;

  @TextField({ max: 200 })
  name: string;

  @NumberField({ min: 0.001, max: 10_000, description: 'Pieces, or whatever the part is counted in' })
  quantity: number;
}
