/**
 * One rule on one flight, as expressions see it: values are worked out when they are read, each once. What is not known,
 * what went wrong and which records gave something is kept, so that the verdict can tell.
 */
import type { Crew } from '../engine/crew.js';
import type { Moment } from '../engine/moment.js';
import type { Counted, FactView } from '../engine/rule.js';
import { UnknownFact } from '../engine/unknown.js';
import type { FactKey, FactValue } from '../facts/keys.js';
import { DateValue } from './dates.js';
import { CostExceeded, Meter } from './meter.js';
import { ownerOf, type Entry, type Owner, type Reading, type ValueType } from './schema/index.js';

/** Records named as evidence at most. */
const MOST_COUNTED = 60;

type Kept = { value: unknown } | { thrown: unknown };

/** What expressions read on one flight. */
export class Run {
  readonly meter = new Meter();
  /** Facts that were asked for and are not known, in the order in which they were asked. */
  readonly unknown: UnknownFact[] = [];
  /** The first value that could not be worked out for another reason. */
  failed: Error | null = null;
  private readonly kept = new Map<string, Kept>();
  private readonly evidence = new Map<string, Counted>();

  constructor(
    private readonly view: FactView,
    readonly moment: Moment,
  ) {}

  /** The value of an entry as CEL takes it. @throws UnknownFact, CostExceeded, Error */
  read(owner: Owner, entry: Entry, argument?: unknown): unknown {
    const key = `${owner}.${entry.name}(${argument === undefined ? '' : String(argument)})`;
    let kept = this.kept.get(key);
    if (kept === undefined) this.kept.set(key, (kept = this.workOut(owner, entry, argument)));
    if ('thrown' in kept) throw kept.thrown;
    return kept.value;
  }

  /** Records that gave something, in order of day and id. */
  counted(): Counted[] {
    const order = ({ on, id }: Counted): string => `${on ?? ''} ${id}`;
    return [...this.evidence.values()].sort((a, b) => (order(a) < order(b) ? 1 : -1)).slice(0, MOST_COUNTED);
  }

  private workOut(owner: Owner, entry: Entry, argument: unknown): Kept {
    try {
      this.meter.spend(1);
      const raw = entry.get(this.reading(owner), argument as never);
      const value = toCel(entry.type, raw);
      if (Array.isArray(value)) this.meter.elements(value.length);
      return { value };
    } catch (thrown) {
      if (thrown instanceof UnknownFact) this.unknown.push(thrown);
      else if (!(thrown instanceof CostExceeded))
        this.failed ??= thrown instanceof Error ? thrown : new Error(String(thrown));
      return { thrown };
    }
  }

  private reading(owner: Owner): Reading {
    const { view, moment, meter, evidence } = this;
    const { role } = ownerOf(owner);
    return {
      flight: view.flight,
      crew: view.crew as Crew,
      moment,
      person: (subject) => view.get(`${role!}.${subject}` as FactKey) as never,
      aircraft: (subject) => view.get(`aircraft.${subject}` as FactKey) as FactValue<never>,
      spend: (records) => meter.spend(records),
      counted(records) {
        for (const one of records) if (!evidence.has(one.id)) evidence.set(one.id, one);
      },
    };
  }
}

function toCel(type: ValueType, raw: unknown): unknown {
  switch (type) {
    case 'int':
      if (!Number.isSafeInteger(raw)) throw new Error(`${String(raw)} is no whole number`);
      return BigInt(raw as number);
    case 'double':
      if (!Number.isFinite(raw)) throw new Error(`${String(raw)} is no number`);
      return raw;
    case 'Date':
      if (raw instanceof DateValue) return raw;
      return raw === null ? DateValue.never : DateValue.on(raw as string);
    case 'list<string>':
      return [...(raw as readonly string[])];
    default:
      return raw;
  }
}
