import { applyDecorators } from '@nestjs/common';
import { Transform } from 'class-transformer';
import { ValidateBy, type ValidationOptions } from 'class-validator';
import { Temporal } from 'temporal-polyfill';

const RFC3339 = /^(\d{4})-(\d{2})-(\d{2})[Tt](\d{2}):(\d{2}):(\d{2})(?:\.0+)?([Zz]|[+-]\d{2}:\d{2})$/;
const LOCAL_DATE = /^\d{4}-\d{2}-\d{2}$/;

const inRange = (year: number) => year >= 1900 && year <= 2199;

/**
 * Reads an RFC 3339 date-time and returns the same instant in UTC with whole seconds; null when it is not one.
 * Refused: missing offset, impossible dates and times (30 February, 24:00, second 60), a fraction of a second other
 * than zeros, years outside 1900 to 2199.
 */
export function parseInstant(value: unknown): string | null {
  const parts = typeof value === 'string' ? RFC3339.exec(value) : null;
  if (!parts) return null;
  const [, year, month, day, hour, minute, second, offset] = parts;
  if (!inRange(Number(year)) || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) return null;
  if (/[+-]/.test(offset!) && (Number(offset!.slice(1, 3)) > 23 || Number(offset!.slice(4)) > 59))
    return null;
  if (parseLocalDate(`${year}-${month}-${day}`) === null) return null;
  try {
    const text = `${year}-${month}-${day}T${hour}:${minute}:${second}${offset!.toUpperCase().replace('-00:00', 'Z')}`;
    return Temporal.Instant.from(text).toString({ smallestUnit: 'second' });
  } catch {
    return null;
  }
}

/** Returns the value when it is a date that exists, 'YYYY-MM-DD' between 1900 and 2199; else null. */
export function parseLocalDate(value: unknown): string | null {
  if (typeof value !== 'string' || !LOCAL_DATE.test(value) || !inRange(Number(value.slice(0, 4))))
    return null;
  try {
    Temporal.PlainDate.from(value, { overflow: 'reject' });
    return value;
  } catch {
    return null;
  }
}

/**
 * An RFC 3339 date-time with offset or Z. Rewritten to UTC with whole seconds before it is checked, so handlers see
 * '2026-11-25T13:00:00Z' whatever the client's offset. A fraction of zeros is dropped; any other fraction is refused.
 */
export function IsInstant(options?: ValidationOptions): PropertyDecorator {
  return applyDecorators(
    Transform(({ value }) =>
      Array.isArray(value) ? value.map((v) => parseInstant(v) ?? v) : (parseInstant(value) ?? value),
    ),
    ValidateBy(
      {
        name: 'isInstant',
        validator: {
          validate: (value) => parseInstant(value) !== null,
          defaultMessage: (args) =>
            `${args?.property} must be a date and time with an offset and whole seconds that exists, such as 2026-11-25T13:00:00Z`,
        },
      },
      options,
    ),
  );
}

/** A calendar date that exists: 'YYYY-MM-DD'. */
export function IsLocalDate(options?: ValidationOptions): PropertyDecorator {
  return ValidateBy(
    {
      name: 'isLocalDate',
      validator: {
        validate: (value) => parseLocalDate(value) !== null,
        defaultMessage: (args) => `${args?.property} must be a date that exists, such as 2026-11-25`,
      },
    },
    options,
  );
}
