import { ValidateBy, type ValidationOptions } from 'class-validator';

/** Names only: an offset such as '+01:00' knows no summer time. */
export function isZone(value: unknown): boolean {
  if (typeof value !== 'string' || value.length > 60 || !/^[A-Za-z]/.test(value)) return false;
  try {
    return new Intl.DateTimeFormat('en', { timeZone: value }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

/** A name of the IANA time zone database. */
export function IsZone(options?: ValidationOptions): PropertyDecorator {
  return ValidateBy(
    {
      name: 'isZone',
      validator: {
        validate: isZone,
        defaultMessage: (args) =>
          `${args?.property} must be a zone of the IANA time zone database, such as 'America/Chicago'`,
      },
    },
    options,
  );
}
