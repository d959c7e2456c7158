/**
 * Watches a rule while it judges: which facts it asked for, which fields of the request, the crew, the
 * aircraft's type, whether it asked about the sun.
 * The rule knows nothing of it; what is asked to make remedies, after the verdict, is left out.
 */
import type { Crew } from '../engine/crew.js';
import type { Body, FactView, Rule } from '../engine/rule.js';
import type { Fact } from '../facts/fact.js';
import type { FlightFacts } from '../facts/flight.js';
import type { FactKey, FactValue } from '../facts/keys.js';

/** What a rule asked for before it chose its branch. */
export interface Trace {
  /** Facts by name, with the fields that were read of those that are one record. */
  facts: Map<FactKey, Set<string>>;
  flight: Set<string>;
  crew: Set<string>;
  /** It asked whether part of the flight is at night. */
  sun: boolean;
}

/** The same rule, and what it asks for the next time it judges. */
export function traced(rule: Rule): { rule: Rule; trace: Trace } {
  const trace: Trace = { facts: new Map(), flight: new Set(), crew: new Set(), sun: false };
  const watch = (body: Body<FactKey, string>): Body<FactKey, string> => ({
    ...body,
    judge(facts, moment, parameters, take) {
      const view = new TracedView(facts, trace);
      const watch = moment.watch.bind(moment);
      moment.watch = (ask) =>
        watch((span) => {
          const told = ask(span);
          // What is asked for a sentence or a remedy knows no end; the night's answer does, and so does the clock's.
          if (view.watching && !told.clock && Number.isFinite(told.knownTo)) trace.sun = true;
          return told;
        });
      try {
        return body.judge(view, moment, parameters, take);
      } finally {
        view.stop();
      }
    },
  });
  return { rule: { ...rule, bodies: rule.bodies.map(watch) }, trace };
}

class TracedView implements FactView {
  watching = true;
  private readonly watched = new Map<object, object>();

  constructor(
    private readonly of: FactView,
    private readonly trace: Trace,
  ) {}

  /** From here on nothing more is noted. */
  stop(): void {
    this.watching = false;
  }

  get flight(): Omit<FlightFacts, 'departs' | 'arrives'> {
    return this.noting(this.of.flight, this.trace.flight);
  }

  get crew(): Crew {
    return this.noting(this.of.crew, this.trace.crew);
  }

  get<Q extends FactKey>(key: Q): FactValue<Q> {
    const fields = this.asked(key);
    return this.noted(this.of.get(key), fields);
  }

  peek<Q extends FactKey>(key: Q): Fact<FactValue<Q>> {
    const fields = this.asked(key);
    const fact = this.of.peek(key);
    return fact.known ? { ...fact, value: this.noted(fact.value, fields) } : fact;
  }

  private asked(key: FactKey): Set<string> {
    if (!this.watching) return new Set();
    let fields = this.trace.facts.get(key);
    if (!fields) this.trace.facts.set(key, (fields = new Set()));
    return fields;
  }

  /** Lists and dates are read whole; of a single record each field is noted. */
  private noted<T>(value: T, fields: Set<string>): T {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    return this.noting(value, fields);
  }

  private noting<T extends object>(value: T, fields: Set<string>): T {
    let watched = this.watched.get(value);
    if (!watched) {
      watched = new Proxy(value, {
        get: (of, field, self) => {
          if (this.watching && typeof field === 'string') fields.add(field);
          return Reflect.get(of, field, self) as unknown;
        },
      });
      this.watched.set(value, watched);
    }
    return watched as T;
  }
}
