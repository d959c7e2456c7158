import { ValidateBy, type ValidationOptions } from 'class-validator';

const LARGEST_HOURS = 99_999.9;

/** Is this a number of hours from 0 to 99999.9 with at most one decimal? Meters and logs count in tenths. */
export function isHoursTenths(value: unknown): value is number {
  if (typeof value !== 'number' || !Number.isFinite(value) || value < 0 || value > LARGEST_HOURS)
    return false;
  // 1.1 has no exact binary form: compare with the number that "one decimal" really denotes.
  return Math.round(value * 10) / 10 === value;
}

/** Hours to a tenth, not negative. */
export function IsHoursTenths(options?: ValidationOptions): PropertyDecorator {
  return ValidateBy(
    {
      name: 'isHoursTenths',
      validator: {
        validate: isHoursTenths,
        defaultMessage: (args) =>
          `${args?.property} must be hours from 0 to ${LARGEST_HOURS} with at most one decimal, such as 1.4`,
      },
    },
    options,
  );
}
