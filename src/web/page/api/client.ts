/** Talks to the service: signs requests, renews the access token once when it has run out, and throws problems. */
import type { Problem } from './types.js';

const BASE = '/api/v1';
const STORE = 'bellcrank.refresh';

let access: string | null = null;
let renewal: Promise<boolean> | null = null;

/** A refusal of the service, with what to do. */
export class ApiProblem extends Error {
  constructor(readonly problem: Problem) {
    super(problem.detail);
  }
}

/** Called when the session has ended for good. */
export const onSignedOut: { tell: () => void } = { tell: () => undefined };

export interface Tokens {
  accessToken: string;
  refreshToken: string;
}

export function keepTokens(tokens: Tokens): void {
  access = tokens.accessToken;
  sessionStorage.setItem(STORE, tokens.refreshToken);
}

export function forgetTokens(): void {
  access = null;
  sessionStorage.removeItem(STORE);
}

export const hasSession = (): boolean => sessionStorage.getItem(STORE) !== null;
export const refreshToken = (): string | null => sessionStorage.getItem(STORE);

const NO_ANSWER: Problem = {
  type: 'about:blank',
  title: 'No answer',
  status: 0,
  code: 'no-answer',
  detail: 'The service did not answer. Check your connection and try again; nothing has been lost.',
};

/** Sends a request and reads the JSON answer; a form goes as it is. @throws ApiProblem */
export async function call<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<T> {
  return read<T>(await answered(method, path, body, headers));
}

/** Sends a form and hears the answer's lines of JSON as they come. @throws ApiProblem */
export async function callForLines<T>(path: string, form: FormData, hear: (line: T) => void): Promise<void> {
  const response = await answered('POST', path, form, {
    Accept: 'application/x-ndjson, application/problem+json',
  });
  if (!response.ok) return read<void>(response);
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  try {
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      const lines = (rest + part.value).split('\n');
      rest = lines.pop()!;
      for (const line of lines) hear(JSON.parse(line) as T);
    }
  } catch {
    throw new ApiProblem(NO_ANSWER);
  }
}

/** A picture as an address that stands for itself: pictures are for signed-in people, and an <img> cannot sign. @throws ApiProblem */
export async function picture(path: string): Promise<string> {
  const response = await answered('GET', path, undefined, { Accept: 'image/*, application/problem+json' });
  if (!response.ok) return read<string>(response);
  const blob = await response.blob();
  return new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result as string);
    reader.onerror = () => failed(new ApiProblem(NO_ANSWER));
    reader.readAsDataURL(blob);
  });
}

/** A file for signed-in people: a print, an export. @throws ApiProblem */
export async function fetchFile(path: string): Promise<Blob> {
  const response = await answered('GET', path, undefined, { Accept: '*/*' });
  return response.ok ? response.blob() : read<Blob>(response);
}

/** A stream of events, from behind the last one that was heard. @throws ApiProblem */
export async function openStream(
  path: string,
  lastId: string | null,
  signal: AbortSignal,
): Promise<ReadableStream<Uint8Array>> {
  const headers = {
    Accept: 'text/event-stream, application/problem+json',
    ...(lastId === null ? {} : { 'Last-Event-ID': lastId }),
  };
  const response = await answered('GET', path, undefined, headers, signal);
  return response.ok ? response.body! : read<ReadableStream<Uint8Array>>(response);
}

async function answered(
  method: string,
  path: string,
  body: unknown,
  headers: Record<string, string>,
  signal?: AbortSignal,
): Promise<Response> {
  let response = await send(method, path, body, headers, signal);
  if (response.status === 401 && hasSession() && (await renew()))
    response = await send(method, path, body, headers, signal);
  if (response.status === 401 && !path.startsWith('/auth/')) {
    forgetTokens();
    onSignedOut.tell();
  }
  return response;
}

async function send(
  method: string,
  path: string,
  body: unknown,
  headers: Record<string, string>,
  signal?: AbortSignal,
): Promise<Response> {
  try {
    return await fetch(BASE + path, {
      ...{ method, signal },
      headers: {
        Accept: 'application/json',
        ...(body === undefined || body instanceof FormData ? {} : { 'Content-Type': 'application/json' }),
        ...(access ? { Authorization: `Bearer ${access}` } : {}),
        ...headers,
      },
      body: body === undefined || body instanceof FormData ? body : JSON.stringify(body),
    });
  } catch {
    throw new ApiProblem(NO_ANSWER);
  }
}

async function read<T>(response: Response): Promise<T> {
  const text = await response.text();
  const json: unknown = text === '' ? undefined : JSON.parse(text);
  if (!response.ok) throw new ApiProblem(json as Problem);
  return json as T;
}

/** Renews the access token; calls that arrive meanwhile wait for the same renewal, since a refresh token serves once. */
export function renew(): Promise<boolean> {
  renewal ??= (async () => {
    try {
      const response = await send('POST', '/auth/refresh', { refreshToken: refreshToken() }, {});
      if (!response.ok) return false;
      keepTokens(await read<Tokens>(response));
      return true;
    } catch {
      return false;
    } finally {
      renewal = null;
    }
  })();
  return renewal;
}
