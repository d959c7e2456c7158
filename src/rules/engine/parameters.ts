import type { LocalDate } from '../calendar/dates.js';
import type { Policy } from '../facts/sheet.js';
import type { Parameter, ParameterValue } from '../parameters/parameter.js';
import { UnknownFact } from './unknown.js';
import type { Moment } from './moment.js';

/** A parameter as it was read for a finding. */
export interface ParameterRead {
  id: string;
  value: ParameterValue;
  from: LocalDate | null;
  reference: string;
}

/** All parameters a judgement may read: the law's by id, then the club's dated policy over the club parameters' ids. */
export class ParameterBook {
  private readonly byId: Map<string, Parameter>;
  private readonly policyById = new Map<
    string,
    { from: LocalDate | null; value: ParameterValue | null; reference: string }[]
  >();

  constructor(parameters: readonly Parameter[], policy: Policy) {
    this.byId = new Map(parameters.map((parameter) => [parameter.id, parameter]));
    for (const value of policy.values) {
      const list = this.policyById.get(value.id) ?? [];
      list.push({ from: value.from, value: value.value, reference: value.reference });
      this.policyById.set(value.id, list);
    }
    for (const list of this.policyById.values())
      list.sort((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1));
  }

  /** The parameter's declaration, for staleness and documentation. */
  declaration(id: string): Parameter | undefined {
    return this.byId.get(id);
  }

  /** A club's values stand over the declared ones; the law's have no policy rows (the service refuses them). */
  history(id: string): { from: LocalDate | null; value: ParameterValue | null; reference: string }[] {
    const declared = this.byId.get(id);
    if (id.startsWith('club.')) return this.policyById.get(id) ?? [];
    return declared ? declared.values : [];
  }
}

/** Reads parameters for one rule on one flight, and keeps what was read. */
export class Parameters {
  readonly reads: ParameterRead[] = [];

  constructor(
    private readonly book: ParameterBook,
    private readonly moment: Moment,
    private readonly declared: readonly string[],
  ) {}

  number(id: string): number {
    return this.typed(id, 'number') as number;
  }

  flag(id: string): boolean {
    return this.typed(id, 'boolean') as boolean;
  }

  text(id: string): string {
    return this.typed(id, 'string') as string;
  }

  /** The value in force on the flight's departure date; throws UnknownFact when there is none. */
  private typed(id: string, type: 'number' | 'boolean' | 'string'): ParameterValue {
    // Asked again for the next record of a list: the moment has watched its dates already.
    for (const read of this.reads) if (read.id === id && typeof read.value === type) return read.value;
    if (!this.declared.includes(id)) throw new Error(`the rule reads parameter ${id} without declaring it`);
    let inForce: { from: LocalDate | null; value: ParameterValue | null; reference: string } | undefined;
    for (const value of this.book.history(id)) {
      if (value.from === null || this.moment.startsOnOrAfter(value.from)) inForce = value;
    }
    if (!inForce || inForce.value === null)
      throw new UnknownFact(
        id,
        `the number “${this.book.declaration(id)?.title ?? id}” has no value on the day of the flight`,
      );
    if (typeof inForce.value !== type) throw new UnknownFact(id, `${id} should be a ${type}`);
    this.reads.push({ id, value: inForce.value, from: inForce.from, reference: inForce.reference });
    return inForce.value;
  }
}
