import { ApiProblem, callForLines } from '../../api/client.js';
import type { Choices, Line, Preview } from './types.js';

const BROKEN_OFF = 'The answer broke off before the preview was whole. Try again; nothing has been written.';

const formWith = (file: File, fields: Record<string, string>): FormData => {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.append(name, value);
  form.append('file', file);
  return form;
};

/** Looks at a file; `tell` hears how far it is, 0 to 1. @throws ApiProblem */
export async function lookAt(
  at: string,
  file: File,
  choices: Choices | null,
  tell: (part: number) => void,
): Promise<Preview> {
  const form = formWith(file, choices ? { choices: JSON.stringify(choices) } : {});
  let preview: Preview | null = null;
  let problem: string | null = null;
  await callForLines<Line>(`${at}/preview`, form, (line) => {
    if ('row' in line) tell(line.of === 0 ? 0 : line.row / line.of);
    else if ('error' in line) problem = line.error.detail;
    else preview = line;
  });
  if (preview !== null) return preview;
  throw new ApiProblem({
    ...{ type: 'about:blank', title: 'Not whole', status: 0, code: 'no-answer' },
    detail: problem ?? BROKEN_OFF,
  });
}

/** The form that takes a file over as it was looked at. */
export const takeForm = (file: File, preview: Preview): FormData =>
  formWith(file, { choices: JSON.stringify(preview.choices), preview: preview.preview ?? '' });
