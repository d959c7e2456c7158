/** The form a file comes in, with its text fields held to the same checks as any body. */
import { findUnsound } from '../../platform/http/no-nul.js';
import { oneFile } from '../../platform/http/one-file.interceptor.js';
import { RequestValidationPipe } from '../../platform/http/validation.pipe.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import type { Choices } from './choices.js';
import { LogImportChoices } from './log-import.dto.js';
import { fileMissing, fileTooLarge, LOG_FILE_LIMIT_BYTES } from './log-import.problems.js';

/** What was sent. */
export interface LogForm {
  file: Buffer | undefined;
  fields: Record<string, unknown> | undefined;
}

export interface ReadForm {
  file: Buffer | undefined;
  choices: Choices | null;
  preview: string | null;
}

/** Reads one file of flights of a form into memory, with `choices` and `preview` beside it. */
export const LogFileInterceptor = oneFile({
  ...{ field: 'file', limitBytes: LOG_FILE_LIMIT_BYTES, texts: { most: 2, limitBytes: 200_000 } },
  ...{ tooLarge: fileTooLarge, missing: fileMissing },
});

const pipe = new RequestValidationPipe();
const KNOWN = ['choices', 'preview'];

/** @throws 400, 422 naming the field at fault */
export async function formOf({ file, fields = {} }: LogForm): Promise<ReadForm> {
  for (const name of Object.keys(fields))
    if (!KNOWN.includes(name))
      throw valueRefused(name.slice(0, 60), 'This field is not known here. Remove it.');
  const { choices, preview } = fields;
  return {
    file,
    choices: choices === undefined ? null : await choicesOf(choices),
    preview: typeof preview === 'string' ? preview : null,
  };
}

async function choicesOf(text: unknown): Promise<Choices> {
  const value = jsonOf(text);
  // Neither zero bytes nor halves of characters can be stored.
  if (value === undefined || findUnsound(value) !== null || /\p{Surrogate}/u.test(allText(value)))
    throw valueRefused('choices', 'Send the choices as a JSON object in a text field.');
  return (await pipe.transform(value, { type: 'body', metatype: LogImportChoices })) as Choices;
}

function jsonOf(text: unknown): unknown {
  try {
    return typeof text === 'string' ? JSON.parse(text) : undefined;
  } catch {
    return undefined;
  }
}

const allText = (value: unknown): string =>
  typeof value === 'string'
    ? value
    : typeof value === 'object' && value !== null
      ? Object.values(value).map(allText).join(' ')
      : '';
