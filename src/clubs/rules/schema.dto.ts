import { Shown } from '../../platform/http/fields.js';
import { MOST, SCHEMA_VERSION } from '../../rules/index.js';

/** One value that expressions may read. */
export class SchemaValueView {
  @Shown({ type: 'string', example: 'pilot.landingsInDays(days)', description: 'As it is written' })
  written: string;

  @Shown({ type: 'string', enum: ['bool', 'int', 'double', 'string', 'list<string>', 'Date', 'Days'] })
  type: string;

  @Shown({ type: 'string', nullable: true, example: 'h' })
  unit: string | null;

  @Shown({ type: 'string' })
  says: string;

  @Shown({ type: 'array', items: { type: 'string' }, nullable: true, description: 'The words it may be' })
  words: string[] | null;

  @Shown({ type: 'array', items: { type: 'string' }, description: 'Facts behind it' })
  reads: string[];

  @Shown({ type: 'boolean', description: 'Usually told shortly before departure only' })
  toldLate: boolean;
}

/** A name before the dot. */
export class SchemaOwnerView {
  @Shown({ type: 'string', example: 'pilot' })
  name: string;

  @Shown({ type: 'string' })
  says: string;

  @Shown({ type: () => SchemaValueView, isArray: true })
  values: SchemaValueView[];
}

/** A function or an operator. */
export class SchemaFunctionView {
  @Shown({ type: 'string', example: 'date("2026-03-31")' })
  written: string;

  @Shown({ type: 'string' })
  says: string;
}

/** An example. */
export class SchemaExampleView {
  @Shown({ type: 'string' })
  says: string;

  @Shown({ type: 'string' })
  appliesWhen: string;

  @Shown({ type: 'string' })
  requirement: string;
}

/** All that an expression may read and say. */
export class RuleSchemaView {
  @Shown({
    type: 'integer',
    example: SCHEMA_VERSION,
    description: 'Grows when values are added; none ever changes its meaning',
  })
  version: number;

  @Shown({ type: 'string' })
  language: string;

  @Shown({ type: () => SchemaOwnerView, isArray: true })
  owners: SchemaOwnerView[];

  @Shown({ type: () => SchemaFunctionView, isArray: true })
  functions: SchemaFunctionView[];

  @Shown({ type: () => SchemaExampleView, isArray: true })
  examples: SchemaExampleView[];

  @Shown({
    type: 'object',
    additionalProperties: { type: 'integer' },
    example: MOST,
    description: 'Bounds of one expression',
  })
  limits: Record<string, number>;
}
