/** CEL as the club's rules speak it: the published schema declared to the library, and the few functions beside it. */
import { Environment } from '@marcbachmann/cel-js';
import { DateValue, DaysValue } from './dates.js';
import { MOST } from './meter.js';
import type { Run } from './run.js';
import { SCHEMA, type ArgumentKind, type Entry, type Owner } from './schema/index.js';

/** What stands before a dot while an expression is evaluated; its properties are read from the run. */
interface Subject {
  readonly run: Run;
}

/** CEL type of a method's argument. */
const ARGUMENT: Record<ArgumentKind, string> = { days: 'int', hours: 'int', clock: 'string', Date: 'Date' };
/** The argument as entries take it. */
const argumentOf = (kind: ArgumentKind, value: unknown): unknown =>
  kind === 'days' || kind === 'hours' ? Number(value) : value;

/** A class of one owner's values; CEL tells types apart by their classes. */
function subjectClass(owner: Owner, entries: readonly Entry[]): new (run: Run) => Subject {
  const Of = class implements Subject {
    constructor(readonly run: Run) {}
  };
  for (const entry of entries) {
    if (entry.takes) continue;
    Object.defineProperty(Of.prototype, entry.name, {
      get(this: Subject) {
        return this.run.read(owner, entry);
      },
    });
  }
  return Of;
}

const CLASSES = new Map(SCHEMA.map(({ owner, entries }) => [owner, subjectClass(owner, entries)]));
const SYNC = { async: false };

/** 'Pilot' for `pilot`: the name of the type in what the check says. */
export const typeName = (owner: Owner): string => owner.charAt(0).toUpperCase() + owner.slice(1);

/** The language with the schema declared. */
export const ENVIRONMENT = makeEnvironment();

function makeEnvironment(): Environment {
  const env = new Environment({
    limits: {
      maxAstNodes: MOST.parts,
      maxDepth: MOST.depth,
      maxListElements: MOST.listed,
      maxMapEntries: 0,
      maxCallArguments: 3,
    },
  });
  declareDates(env);
  declareDays(env);
  for (const { owner, entries } of SCHEMA) {
    const type = typeName(owner);
    const values = entries.filter((entry) => !entry.takes);
    const fields = Object.fromEntries(values.map((entry) => [entry.name, entry.type]));
    env.registerType(type, { ctor: CLASSES.get(owner)!, fields });
    env.registerVariable(owner, type);
    for (const entry of entries) {
      if (!entry.takes) continue;
      const { kind } = entry.takes;
      const handler = (of: Subject, value: unknown) => of.run.read(owner, entry, argumentOf(kind, value));
      env.registerFunction(`${type}.${entry.name}(${ARGUMENT[kind]}): ${entry.type}`, handler, SYNC as never);
    }
  }
  return env;
}

function declareDates(env: Environment): void {
  env.registerType('Date', { ctor: DateValue as never, fields: {} });
  env.registerFunction('date(string): Date', (day: string) => DateValue.on(day), SYNC as never);
  env.registerFunction('string(Date): string', (date: DateValue) => date.toString(), SYNC as never);
  env.registerFunction(
    'Date.plusDays(int): Date',
    (date: DateValue, days: bigint) => date.plusDays(Number(days)),
    SYNC as never,
  );
  env.registerFunction(
    'Date.plusMonths(int): Date',
    (date: DateValue, months: bigint) => date.plusMonths(Number(months)),
    SYNC as never,
  );
  env.registerOperator('Date < Date', (a: DateValue, b: DateValue) => a.isBefore(b));
  env.registerOperator('Date <= Date', (a: DateValue, b: DateValue) => !b.isBefore(a));
  env.registerOperator('Date > Date', (a: DateValue, b: DateValue) => b.isBefore(a));
  env.registerOperator('Date >= Date', (a: DateValue, b: DateValue) => !a.isBefore(b));
  env.registerOperator('Date == Date', (a: DateValue, b: DateValue) => a.equals(b));
}

/** Days are compared with whole numbers as questions to the moment, and with each other as numbers. */
function declareDays(env: Environment): void {
  env.registerType('Days', { ctor: DaysValue as never, fields: {} });
  env.registerFunction('int(Days): int', (days: DaysValue) => BigInt(days.resolve()), SYNC as never);
  env.registerFunction('string(Days): string', (days: DaysValue) => days.toString(), SYNC as never);
  env.registerOperator('Days <= int', (a: DaysValue, n: bigint) => a.atMost(Number(n)));
  env.registerOperator('Days < int', (a: DaysValue, n: bigint) => a.atMost(Number(n) - 1));
  env.registerOperator('Days > int', (a: DaysValue, n: bigint) => !a.atMost(Number(n)));
  env.registerOperator('Days >= int', (a: DaysValue, n: bigint) => !a.atMost(Number(n) - 1));
  env.registerOperator('int >= Days', (n: bigint, a: DaysValue) => a.atMost(Number(n)));
  env.registerOperator('int > Days', (n: bigint, a: DaysValue) => a.atMost(Number(n) - 1));
  env.registerOperator('int < Days', (n: bigint, a: DaysValue) => !a.atMost(Number(n)));
  env.registerOperator('int <= Days', (n: bigint, a: DaysValue) => !a.atMost(Number(n) - 1));
  env.registerOperator('Days == int', (a: DaysValue, n: bigint) => a.is(Number(n)));
  env.registerOperator('Days < Days', (a: DaysValue, b: DaysValue) => a.resolve() < b.resolve());
  env.registerOperator('Days <= Days', (a: DaysValue, b: DaysValue) => a.resolve() <= b.resolve());
  env.registerOperator('Days > Days', (a: DaysValue, b: DaysValue) => a.resolve() > b.resolve());
  env.registerOperator('Days >= Days', (a: DaysValue, b: DaysValue) => a.resolve() >= b.resolve());
  env.registerOperator('Days == Days', (a: DaysValue, b: DaysValue) => a.resolve() === b.resolve());
}

/** What an expression is evaluated in: each owner is made when it is first named. */
export function contextOf(run: Run): Record<string, unknown> {
  const context = new Map<string, unknown>();
  const of: Record<string, unknown> = {};
  for (const [owner, Of] of CLASSES) {
    Object.defineProperty(of, owner, {
      get: () => context.get(owner) ?? context.set(owner, new Of(run)).get(owner),
    });
  }
  return of;
}
