/** What judging one of the club's rules may cost. Beyond it the rule is in error, and an error is never a pass. */

/** Bounds at save. They are generous for a rule that a person can read. */
export const MOST = {
  /** Characters of one expression. */
  characters: 2000,
  /** Parts of one expression: values, names, operators, calls. */
  parts: 200,
  /** Depth of nesting. */
  depth: 24,
  /** Elements of a list written out. */
  listed: 50,
  /** Steps one expression can take at worst: its parts, those inside a list's `all` or `exists` once for each element. */
  steps: 10_000,
  /** Places in braces in a message. */
  slots: 8,
  /** Characters of a message. */
  message: 500,
} as const;

/** Bounds while judging. */
export const MOST_WHILE_JUDGING = {
  /** Values read, and records of the log looked through for them, by one rule on one flight. */
  work: 200_000,
  /** Elements of a list out of the facts. Longer ones are not judged. */
  elements: 100,
} as const;

/** Thrown when a rule costs more than it may. */
export class CostExceeded extends Error {
  constructor(what: string) {
    super(`the rule costs too much to judge: ${what}`);
    this.name = 'CostExceeded';
  }
}

/** Counts the work of judging one rule on one flight. Once it is over, the rule stays in error whatever is asked next. */
export class Meter {
  private work = 0;
  /** What went over; null while nothing did. */
  over: CostExceeded | null = null;

  /** @throws CostExceeded */
  spend(work: number): void {
    this.work += work;
    if (this.work > MOST_WHILE_JUDGING.work)
      this.refuse(`more than ${MOST_WHILE_JUDGING.work} records looked at`);
  }

  /** @throws CostExceeded */
  elements(count: number): void {
    if (count > MOST_WHILE_JUDGING.elements)
      this.refuse(`a list of more than ${MOST_WHILE_JUDGING.elements} elements`);
    this.spend(count);
  }

  private refuse(what: string): never {
    this.over ??= new CostExceeded(what);
    throw this.over;
  }
}
