import { Shown } from '../../../platform/http/fields.js';
import { SquawkView } from '../squawk.dto.js';

/** An open squawk that may be the same fault. */
export class SimilarSquawk {
  @Shown({ type: () => SquawkView })
  squawk: SquawkView;

  @Shown({ type: 'number', description: 'Likeness of the words, 0 to 1, more for the same equipment' })
  likeness: number;

  @Shown({ type: 'boolean', description: 'It names the same piece of equipment' })
  sameEquipment: boolean;
}

/** Open squawks that may be the same fault, the likest first. */
export class SimilarSquawks {
  @Shown({ type: () => SimilarSquawk, isArray: true, description: 'Five at most' })
  items: SimilarSquawk[];
}
