/** Thrown by the accessors when a rule needs a fact that is not on record; the engine turns it into an `unknown` finding. */
export class UnknownFact extends Error {
  constructor(
    /** Name of the fact or parameter. */
    readonly fact: string,
    /** What is missing, in words for people. */
    readonly because: string,
    /** For what may be settled before departure: the condition told instead of a refusal. The rule's own stands without it. */
    readonly condition?: string,
  ) {
    // Every sheet lacks something, and nobody reads where in a rule it was asked for: a stack would cost more than the rule.
    const limit = Error.stackTraceLimit;
    Error.stackTraceLimit = 0;
    super(because);
    Error.stackTraceLimit = limit;
  }
}

/** Gives `value` unless it is null or undefined: then the rule cannot tell. `because` completes "Cannot tell: ...". */
export function need<T>(value: T | null | undefined, fact: string, because: string): T {
  if (value === null || value === undefined) throw new UnknownFact(fact, because);
  return value;
}
