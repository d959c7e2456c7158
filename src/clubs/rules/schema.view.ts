/** The published schema as people and programs read it. */
import { MOST, MOST_DAYS, readsOf, SCHEMA, SCHEMA_VERSION } from '../../rules/index.js';
import type { RuleSchemaView, SchemaExampleView, SchemaFunctionView } from './schema.dto.js';

const LANGUAGE =
  'Common Expression Language (CEL, github.com/google/cel-spec), checked against these types before it is kept. What is ' +
  'not on record is not known: the rule then comes out unknown, unless the rest settles it (true || unknown is true).';

const FUNCTIONS: SchemaFunctionView[] = [
  { written: '&&  ||  !  ? :', says: 'And, or, not; one or the other.' },
  {
    written: '==  !=  <  <=  >  >=',
    says: 'Comparison. A number with a fraction is compared for equality with 2.0, not with 2.',
  },
  { written: '+  -  *  /  %', says: 'Arithmetic; the divisor is written out.' },
  { written: 'x in ["a", "b"]', says: 'Is it one of them?' },
  {
    written: 'list.exists(x, ...)',
    says: 'Does it hold for one element? Also all, exists_one, filter, map.',
  },
  { written: 'size(x)', says: 'Characters of a text, elements of a list.' },
  { written: 'text.startsWith("x")', says: 'Also endsWith, contains.' },
  {
    written: 'date("2026-03-31")',
    says: 'A date. Dates compare with dates; one that never was is before all others.',
  },
  { written: 'day.plusDays(30)', says: 'A date so many days later; negative for earlier.' },
  {
    written: 'day.plusMonths(24)',
    says: 'The same day so many months later; the last day of a shorter month.',
  },
  { written: 'string(x)', says: "A number, a date or a truth as text; 'never' for a day that never was." },
  { written: 'double(x)', says: 'A whole number as one with a fraction.' },
  { written: 'int(x)', says: 'A number cut to a whole one.' },
];

const EXAMPLES: SchemaExampleView[] = [
  {
    says: 'After 60 days without a flight in the model, the first one is with an instructor.',
    appliesWhen: '!flight.instruction',
    requirement: 'flight.daysSince(pilot.lastFlightInModelOn) <= 60',
  },
  {
    says: 'Passengers from 50 hours on, ten of them in the model.',
    appliesWhen: 'flight.passengers > 0',
    requirement: 'pilot.totalHours >= 50.0 && pilot.hoursInModel >= 10.0',
  },
  {
    says: 'No landing with the wind from behind on a short field.',
    appliesWhen: 'flight.shortestRunwayFt < 2500',
    requirement: 'wind.landingTailwindKt == 0.0',
  },
  {
    says: 'Grass is closed in winter.',
    appliesWhen: 'flight.unpavedOnly',
    requirement: 'flight.month >= 4 && flight.month <= 10',
  },
];

/** One source with the type check and the facts rules declare to read: src/rules/club-rules/schema. */
export function schemaView(): RuleSchemaView {
  return {
    version: SCHEMA_VERSION,
    language: LANGUAGE,
    owners: SCHEMA.map(({ owner, says, entries }) => ({
      name: owner,
      says,
      values: entries.map((entry) => ({
        written: `${owner}.${entry.name}${entry.takes ? `(${entry.takes.name})` : ''}`,
        type: entry.type,
        unit: entry.unit ?? null,
        says: entry.says,
        words: entry.words ? [...entry.words] : null,
        reads: readsOf(owner, entry),
        toldLate: entry.toldLate ?? false,
      })),
    })),
    functions: FUNCTIONS,
    examples: EXAMPLES,
    limits: { ...MOST, days: MOST_DAYS },
  };
}
