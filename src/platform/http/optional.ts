import { Transform } from 'class-transformer';
import { applyDecorators } from '@nestjs/common';
import { IsUUID, ValidateIf, type ValidationOptions } from 'class-validator';

/**
 * The field may be left out, and only that: class-validator's IsOptional lets null past every other check, and null is
 * neither "unknown" nor a value.
 */
export const Optional = (): PropertyDecorator => ValidateIf((_body, value) => value !== undefined);

/**
 * An identifier. Written in lower case before it is checked, so that it equals the same identifier out of the database
 * however the client writes it (RFC 9562: UUIDs are case-insensitive on input).
 */
export function IsId(options?: ValidationOptions): PropertyDecorator {
  return applyDecorators(LowerCase(), IsUUID(undefined, options));
}

const lower = (value: unknown): unknown => (typeof value === 'string' ? value.toLowerCase() : value);

/** Texts, and lists of texts, in lower case; anything else as it is. */
export const LowerCase = (): PropertyDecorator =>
  Transform(({ value }) => (Array.isArray(value) ? value.map(lower) : lower(value)));
