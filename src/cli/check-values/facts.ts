/**
 * Reads the neutral facts of one entry, and remembers which were read. A key that a mapping never asks for might change
 * the meaning of the entry, so the run reports it instead of passing over it.
 */

/** A fact is of the wrong kind, or has a value the mapping has no meaning for. `place` is its path in the entry. */
export class BadFact extends Error {
  constructor(
    readonly place: string,
    because: string,
  ) {
    super(`${place}: ${because}`);
    this.name = 'BadFact';
  }
}

export class NeutralFacts {
  private readonly asked = new Set<string>();
  private readonly inner: NeutralFacts[] = [];

  constructor(
    private readonly values: Readonly<Record<string, unknown>>,
    private readonly place = 'facts',
  ) {}

  has(key: string): boolean {
    return key in this.values;
  }

  isFlag(key: string): boolean {
    return typeof this.values[key] === 'boolean';
  }

  number(key: string): number | undefined {
    return this.typed(key, 'number') as number | undefined;
  }

  flag(key: string): boolean | undefined {
    return this.typed(key, 'boolean') as boolean | undefined;
  }

  text(key: string): string | undefined {
    return this.typed(key, 'string') as string | undefined;
  }

  /** A date 'YYYY-MM-DD'. */
  date(key: string): string | undefined {
    const value = this.text(key);
    if (value !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(value))
      throw this.bad(key, `${value} is not a date`);
    return value;
  }

  /** A clock reading 'HH:MM', as minutes after midnight. */
  clockMinutes(key: string): number | undefined {
    const value = this.text(key);
    if (value === undefined) return undefined;
    const parts = /^(\d{1,2}):(\d{2})$/.exec(value);
    if (!parts) throw this.bad(key, `${value} is not a clock reading`);
    return Number(parts[1]) * 60 + Number(parts[2]);
  }

  /** The value of a key that stands for one of `known`; anything else is refused. */
  choice<T>(key: string, known: Readonly<Record<string, T>>): T | undefined {
    const value = this.text(key);
    if (value === undefined) return undefined;
    if (!Object.hasOwn(known, value))
      throw this.bad(key, `${value} is none of ${Object.keys(known).join(', ')}`);
    return known[value];
  }

  /** The first of several names of one fact that is present. Two at once are refused. */
  oneOf<T>(keys: readonly string[], read: (key: string) => T | undefined): T | undefined {
    const present = keys.filter((key) => this.has(key));
    if (present.length > 1) throw this.bad(present[1]!, `means the same as ${present[0]!}`);
    return present.length === 1 ? read(present[0]!) : undefined;
  }

  /** A key that only remarks on what the mapping takes for granted; any other value is refused. */
  remark(key: string, ...granted: readonly unknown[]): void {
    if (!this.has(key)) return;
    this.asked.add(key);
    const value = JSON.stringify(this.values[key]);
    if (!granted.some((one) => JSON.stringify(one) === value)) throw this.bad(key, `no meaning for ${value}`);
  }

  object(key: string): NeutralFacts | undefined {
    const value = this.take(key);
    if (value === undefined || value === null) return undefined;
    if (typeof value !== 'object' || Array.isArray(value)) throw this.bad(key, 'should be an object');
    return this.nest(value as Record<string, unknown>, `${this.place}.${key}`);
  }

  list(key: string): NeutralFacts[] | undefined {
    const value = this.take(key);
    if (value === undefined) return undefined;
    if (!Array.isArray(value)) throw this.bad(key, 'should be a list');
    return value.map((one: unknown, index) => {
      const place = `${this.place}.${key}[${index}]`;
      if (typeof one !== 'object' || one === null) throw new BadFact(place, 'should be an object');
      return this.nest(one as Record<string, unknown>, place);
    });
  }

  /** A list of points [latitude, longitude]. */
  points(key: string): [number, number][] | undefined {
    const value = this.take(key);
    if (value === undefined) return undefined;
    const isPoint = (one: unknown): one is [number, number] =>
      Array.isArray(one) && one.length === 2 && one.every((part) => typeof part === 'number');
    if (!Array.isArray(value) || !value.every(isPoint))
      throw this.bad(key, 'should be a list of [latitude, longitude]');
    return value;
  }

  /** A pair of numbers. */
  pair(key: string): [number, number] | undefined {
    const value = this.take(key);
    if (value === undefined) return undefined;
    const isPair =
      Array.isArray(value) && value.length === 2 && value.every((one) => typeof one === 'number');
    if (!isPair) throw this.bad(key, 'should be a pair of numbers');
    return value as [number, number];
  }

  /** Keys nobody asked for, with their places. */
  unread(): string[] {
    return [
      ...Object.keys(this.values)
        .filter((key) => !this.asked.has(key))
        .map((key) => `${this.place}.${key}`),
      ...this.inner.flatMap((one) => one.unread()),
    ];
  }

  bad(key: string, because: string): BadFact {
    return new BadFact(`${this.place}.${key}`, because);
  }

  /** A fact without which the entry means nothing. */
  need<T>(key: string, value: T | undefined): T {
    if (value === undefined) throw this.bad(key, 'is missing');
    return value;
  }

  private take(key: string): unknown {
    this.asked.add(key);
    return this.values[key];
  }

  private typed(key: string, type: 'number' | 'boolean' | 'string'): unknown {
    const value = this.take(key);
    if (value === undefined || value === null) return undefined;
    if (typeof value !== type) throw this.bad(key, `should be a ${type}`);
    return value;
  }

  private nest(values: Record<string, unknown>, place: string): NeutralFacts {
    const facts = new NeutralFacts(values, place);
    this.inner.push(facts);
    return facts;
  }
}
