/** How a field is described in the API and checked at once; the kinds of fields are in fields.ts. */
import { applyDecorators, type Type } from '@nestjs/common';
import { ApiProperty, type ApiPropertyOptions } from '@nestjs/swagger';
import { IsOptional, ValidateIf } from 'class-validator';

/** What every field may say about itself. */
export interface FieldOptions {
  description?: string;
  optional?: boolean;
  nullable?: boolean;
  example?: unknown;
}

const described = new WeakMap<object, Map<string, ApiPropertyOptions>>();

/** Fields of a class and of what it extends, with their descriptions. */
export function fieldsOf(source: Type<unknown>): Map<string, ApiPropertyOptions> {
  const all = new Map<string, ApiPropertyOptions>();
  for (
    let proto: object | null = source.prototype;
    proto;
    proto = Object.getPrototypeOf(proto) as object | null
  ) {
    for (const [key, options] of described.get(proto) ?? []) if (!all.has(key)) all.set(key, options);
  }
  return all;
}

/** Remembers some fields of one class as fields of another too, which took them over by other means. */
export function rememberFields(from: Type<unknown>, to: Type<unknown>, keys: readonly string[]): void {
  const fields = [...fieldsOf(from)].filter(([key]) => keys.includes(key));
  described.set(to.prototype as object, new Map(fields));
}

/** Describes a field and remembers it for `ViewOf` and `show`. */
function describe(options: ApiPropertyOptions): PropertyDecorator {
  return (target, key) => {
    const fields = described.get(target) ?? new Map<string, ApiPropertyOptions>();
    described.set(target, fields.set(String(key), options));
    ApiProperty(options)(target, key);
  };
}

/** A field with its description and its checks. */
export function field(
  api: ApiPropertyOptions,
  of: FieldOptions,
  ...checks: PropertyDecorator[]
): PropertyDecorator {
  const { optional = false, nullable = false, ...words } = of;
  const absent = nullable
    ? [IsOptional()]
    : optional
      ? [ValidateIf((_body, value) => value !== undefined)]
      : [];
  const options = { ...api, ...words, required: !(optional || nullable), ...(nullable ? { nullable } : {}) };
  return applyDecorators(describe(options as ApiPropertyOptions), ...absent, ...checks);
}

/** A field of an answer only: described, never checked. */
export const Shown = (options: ApiPropertyOptions): PropertyDecorator =>
  describe({ required: true, ...options } as ApiPropertyOptions);
