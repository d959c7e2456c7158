/**
 * Fields of request and answer bodies: each decorator both checks the value and describes it in the API, so that the two
 * cannot part. `optional`: may be left out. `nullable`: may be null, or left out.
 */
import { applyDecorators, type Type } from '@nestjs/common';
import { ApiPropertyOptional, type ApiPropertyOptions } from '@nestjs/swagger';
import { Transform, Type as Nested } from 'class-transformer';
import {
  ArrayMaxSize,
  ArrayUnique,
  IsArray,
  IsBoolean,
  IsIn,
  IsInt,
  IsNumber,
  IsString,
  isObject,
  IsUUID,
  Matches,
  Max,
  MaxLength,
  Min,
  ValidateBy,
  ValidateNested,
} from 'class-validator';
import { IsHoursTenths } from './hours.decorator.js';
import { IsInstant, IsLocalDate } from './instants.decorator.js';
import { field, type FieldOptions } from './field-description.js';
import { LowerCase, Optional } from './optional.js';
import { IsZone } from './zone.decorator.js';

export { type FieldOptions, fieldsOf, Shown } from './field-description.js';

/** A text that says something: trimmed, not blank, at most `max` characters. */
export const TextField = (
  of: FieldOptions & { max?: number; pattern?: RegExp; says?: string } = {},
): PropertyDecorator => {
  const { max = 200, pattern, says, ...rest } = of;
  const form = pattern ? [Matches(pattern, { message: `$property must be ${says}` })] : [];
  const api = {
    type: 'string',
    minLength: 1,
    maxLength: max,
    ...(pattern ? { pattern: pattern.source } : {}),
  } as const;
  return field(
    api,
    rest,
    Trimmed(),
    IsString(),
    MaxLength(max),
    Matches(/\S/, { message: '$property must not be blank' }),
    ...form,
  );
};

/** A text that may be empty, kept as it is. */
export const NoteField = (of: FieldOptions & { max?: number } = {}): PropertyDecorator => {
  const { max = 4000, ...rest } = of;
  return field({ type: 'string', maxLength: max }, rest, IsString(), MaxLength(max));
};

const Trimmed = () => Transform(({ value }) => (typeof value === 'string' ? value.trim() : value));

/** One of a list of words. */
export const WordField = (words: readonly string[], of: FieldOptions = {}): PropertyDecorator =>
  field(
    { type: 'string', enum: [...words] },
    of,
    IsIn([...words], { message: `$property must be one of ${words.join(', ')}` }),
  );

/** Some of a list of words, each once. */
export const WordsField = (
  words: readonly string[],
  of: FieldOptions & { least?: number } = {},
): PropertyDecorator => {
  const { least = 0, ...rest } = of;
  const api = {
    type: 'array',
    items: { type: 'string', enum: [...words] },
    minItems: least,
    uniqueItems: true,
  } as ApiPropertyOptions;
  const checks = [IsArray(), ArrayMaxSize(words.length), ArrayUnique(), AtLeast(least)];
  return field(
    api,
    rest,
    ...checks,
    IsIn([...words], { each: true, message: `each of $property must be one of ${words.join(', ')}` }),
  );
};

const AtLeast = (least: number) =>
  ValidateBy({
    name: 'atLeast',
    validator: {
      validate: (value) => Array.isArray(value) && value.length >= least,
      defaultMessage: (args) => `${args?.property} must hold at least ${least}`,
    },
  });

/** A whole number. */
export const WholeField = (of: FieldOptions & { min?: number; max?: number } = {}): PropertyDecorator => {
  const { min = 0, max = 1_000_000, ...rest } = of;
  const message = `$property must be a whole number from ${min} to ${max}`;
  return field(
    { type: 'integer', minimum: min, maximum: max },
    rest,
    IsInt({ message }),
    Min(min, { message }),
    Max(max, { message }),
  );
};

/** A number. */
export const NumberField = (of: FieldOptions & { min?: number; max?: number } = {}): PropertyDecorator => {
  const { min = 0, max = 1_000_000, ...rest } = of;
  const message = `$property must be a number from ${min} to ${max}`;
  const checks = [
    IsNumber({ allowNaN: false, allowInfinity: false }, { message }),
    Min(min, { message }),
    Max(max, { message }),
  ];
  return field({ type: 'number', minimum: min, maximum: max }, rest, ...checks);
};

/** Hours to a tenth. */
export const HoursField = (of: FieldOptions = {}): PropertyDecorator =>
  field({ type: 'number', minimum: 0, maximum: 99_999.9, multipleOf: 0.1 }, of, IsHoursTenths());

/** True or false. */
export const FlagField = (of: FieldOptions = {}): PropertyDecorator =>
  field({ type: 'boolean' }, of, IsBoolean());

/** `true` or `false` in an address, which may be left out. */
export const SwitchField = (of: { description: string; default?: false }): PropertyDecorator =>
  applyDecorators(
    ApiPropertyOptional({ type: Boolean, ...of }),
    Optional(),
    Transform(({ value }) => (value === 'true' ? true : value === 'false' ? false : value)),
    IsBoolean({ message: '$property must be true or false' }),
  );

/** A calendar date, 'YYYY-MM-DD'. */
export const DayField = (of: FieldOptions = {}): PropertyDecorator =>
  field({ type: 'string', format: 'date' }, of, IsLocalDate());

/** An instant, RFC 3339. */
export const InstantField = (of: FieldOptions = {}): PropertyDecorator =>
  field({ type: 'string', format: 'date-time' }, of, IsInstant());

/** The id of another record. */
export const IdField = (of: FieldOptions = {}): PropertyDecorator =>
  field(
    { type: 'string', format: 'uuid' },
    of,
    LowerCase(),
    IsUUID(undefined, { message: '$property must be an identifier (UUID)' }),
  );

/** A name of a zone in the IANA time zone database. */
export const ZoneField = (of: FieldOptions = {}): PropertyDecorator =>
  field({ type: 'string', example: 'America/Chicago' }, of, IsZone());

// The API generator tells a class from a function that returns one by the function's name, which must be `type`: hence
// `type: () => part()` and not `type: part`.

/** Another body inside this one. */
export const PartField = (part: () => Type<unknown>, of: FieldOptions = {}): PropertyDecorator =>
  field(
    { type: () => part() } as ApiPropertyOptions,
    of,
    Nested(part),
    ValidateBy({
      name: 'isPart',
      validator: { validate: isObject, defaultMessage: () => '$property must be an object' },
    }),
    ValidateNested(),
  );

/** A list of bodies inside this one. */
export const PartsField = (
  part: () => Type<unknown>,
  of: FieldOptions & { max?: number } = {},
): PropertyDecorator => {
  const { max = 100, ...rest } = of;
  return field(
    { type: () => part(), isArray: true, maxItems: max } as ApiPropertyOptions,
    rest,
    Nested(part),
    IsArray(),
    ArrayMaxSize(max),
    // A list inside the list would pass for a part: ValidateNested looks through it.
    ValidateBy({
      name: 'areParts',
      validator: {
        validate: (value) => Array.isArray(value) && value.every(isObject),
        defaultMessage: () => 'each of $property must be an object',
      },
    }),
    ValidateNested({ each: true }),
  );
};

/** Some short texts, each once and each saying something. */
export const TextsField = (
  of: FieldOptions & { max?: number; pattern?: RegExp; says?: string; example?: string[] } = {},
): PropertyDecorator => {
  const { max = 300, pattern, says, ...rest } = of;
  const api = { type: 'array', items: { type: 'string', minLength: 1, maxLength: max }, maxItems: 20 };
  const message = `each of $property must be ${says}`;
  return field(
    api as ApiPropertyOptions,
    rest,
    IsArray(),
    ArrayMaxSize(20),
    ArrayUnique(),
    IsString({ each: true }),
    MaxLength(max, { each: true }),
    Matches(/\S/, { each: true, message: 'each of $property must say something' }),
    ...(pattern ? [Matches(pattern, { each: true, message })] : []),
  );
};

/** Ids of other records, each once. */
export const IdsField = (of: FieldOptions & { max?: number } = {}): PropertyDecorator => {
  const { max = 100, ...rest } = of;
  const api = { type: 'array', items: { type: 'string', format: 'uuid' }, maxItems: max, uniqueItems: true };
  return field(
    api as ApiPropertyOptions,
    rest,
    IsArray(),
    ArrayMaxSize(max),
    ArrayUnique(),
    IsUUID(undefined, { each: true, message: 'each of $property must be an identifier (UUID)' }),
  );
};
