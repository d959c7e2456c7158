import type { ApiPropertyOptions } from '@nestjs/swagger';
import { ValidateBy } from 'class-validator';
import { field } from '../../platform/http/field-description.js';
import type { FieldOptions } from '../../platform/http/fields.js';

interface Bounds {
  min: number;
  max: number;
  most: number;
}

const isRow = (value: unknown, { min, max, most }: Bounds): boolean =>
  Array.isArray(value) &&
  value.length >= 1 &&
  value.length <= most &&
  value.every((one) => typeof one === 'number' && Number.isFinite(one) && one >= min && one <= max);

/** A list of numbers. */
export function NumbersField(of: FieldOptions & Bounds): PropertyDecorator {
  const { min, max, most, ...rest } = of;
  const api = {
    ...{ type: 'array', minItems: 1, maxItems: most },
    items: { type: 'number', minimum: min, maximum: max },
  };
  const says = `1 to ${most} numbers from ${min} to ${max}`;
  return field(
    api as ApiPropertyOptions,
    rest,
    checked('numbers', says, (value) => isRow(value, of)),
  );
}

/** Rows of numbers. */
export function TableField(of: FieldOptions & Bounds): PropertyDecorator {
  const { min, max, most, ...rest } = of;
  const row = {
    ...{ type: 'array', minItems: 1, maxItems: most },
    items: { type: 'number', minimum: min, maximum: max },
  };
  const api = { type: 'array', minItems: 1, maxItems: most, items: row };
  const says = `1 to ${most} rows of as many numbers from ${min} to ${max}`;
  const is = (value: unknown): boolean =>
    Array.isArray(value) && value.length >= 1 && value.length <= most && value.every((one) => isRow(one, of));
  return field(api as ApiPropertyOptions, rest, checked('table', says, is));
}

const checked = (name: string, says: string, validate: (value: unknown) => boolean) =>
  ValidateBy({
    name,
    validator: { validate, defaultMessage: (args) => `${args?.property} must be ${says}` },
  });
