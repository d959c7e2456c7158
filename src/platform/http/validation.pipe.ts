import { Injectable, ValidationPipe, type ArgumentMetadata, type ValidationError } from '@nestjs/common';
import { ProblemException, type FieldError } from '../problems/problem-exception.js';
import { fieldName } from './no-nul.js';

/** Faults told at once. A hostile list of thousands must not come back many times its size. */
const MOST_ERRORS = 50;

/**
 * Checks bodies and queries against their DTO classes: unknown fields are refused, types converted only where the DTO
 * says so. Failures become one problem that lists every field.
 */
@Injectable()
export class RequestValidationPipe extends ValidationPipe {
  constructor() {
    super({
      transform: true,
      whitelist: true,
      forbidNonWhitelisted: true,
      forbidUnknownValues: true,
      validationError: { target: false, value: false },
      exceptionFactory: (errors) =>
        new ProblemException('validation-failed', { errors: flatten(errors).slice(0, MOST_ERRORS) }),
    });
  }

  override async transform(value: unknown, metadata: ArgumentMetadata): Promise<unknown> {
    const place = placeOf(metadata);
    if (
      place === 'body' &&
      this.toValidate(metadata) &&
      (typeof value !== 'object' || value === null || Array.isArray(value))
    ) {
      const message = 'Send a JSON object as the body.';
      throw new ProblemException('validation-failed', {
        detail: message,
        errors: [{ field: 'body', pointer: '', in: 'body', message }],
      });
    }
    try {
      return await super.transform(value, metadata);
    } catch (error) {
      if (error instanceof ProblemException && place) for (const fault of error.errors) fault.in = place;
      throw error;
    }
  }
}

function placeOf(metadata: ArgumentMetadata): FieldError['in'] {
  if (metadata.type === 'param') return 'path';
  return metadata.type === 'custom' ? undefined : metadata.type;
}

/** Nested errors as a flat list; a field with several faults has one entry per fault. */
export function flatten(errors: ValidationError[], path: string[] = []): FieldError[] {
  return errors.flatMap((error) => {
    const here = [...path, error.property];
    const pointer = here.map((part) => `/${part.replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
    const own = Object.entries(error.constraints ?? {}).map(([rule, text]) => ({
      field: fieldName(here),
      pointer,
      message: rule === 'whitelistValidation' ? 'This field is not known here. Remove it.' : sentence(text),
    }));
    return [...own, ...flatten(error.children ?? [], here)];
  });
}

const sentence = (text: string) =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
