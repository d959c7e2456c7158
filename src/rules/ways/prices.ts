import type { LocalDate } from '../calendar/dates.js';
import type { ParameterBook } from '../engine/parameters.js';
import type { ParameterValue } from '../parameters/parameter.js';

/**
 * Reads the club's prices and lead times as they stand on a day. A club that never set one is priced by what a new club
 * starts with: prices put ways in order, no answer hangs on them.
 */
export class Prices {
  private readonly read = new Map<string, ParameterValue>();

  constructor(
    private readonly book: ParameterBook,
    private readonly day: LocalDate,
  ) {}

  number(id: string): number {
    const value = this.value(id);
    if (typeof value !== 'number') throw new TypeError(`${id} is not a number`);
    return value;
  }

  text(id: string): string {
    return String(this.value(id));
  }

  private value(id: string): ParameterValue {
    const known = this.read.get(id);
    if (known !== undefined) return known;
    const declared = this.book.declaration(id);
    if (!declared) throw new Error(`no price ${id} is declared`);
    const starting = declared.values[0]!.value!;
    let value: ParameterValue = starting;
    for (const dated of this.book.history(id)) {
      if (dated.from === null || dated.from <= this.day) value = dated.value ?? starting;
    }
    // A text where a number belongs cannot be priced with; the policy service refuses such values.
    if (typeof value !== typeof starting) value = starting;
    this.read.set(id, value);
    return value;
  }
}
