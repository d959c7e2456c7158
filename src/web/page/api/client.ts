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

/** Sends a request and reads the JSON answer. @throws ApiProblem */
export async function call<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<T> {
  let response = await send(method, path, body, headers);
  if (response.status === 401 && hasSession() && (await renew()))
    response = await send(method, path, body, headers);
  if (response.status === 401 && !path.startsWith('/auth/')) {
    forgetTokens();
    onSignedOut.tell();
  }
  return read<T>(response);
}

async function send(
  method: string,
  path: string,
  body: unknown,
  headers: Record<string, string>,
): Promise<Response> {
  try {
    return await fetch(BASE + path, {
      method,
      headers: {
        Accept: 'application/json',
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...(access ? { Authorization: `Bearer ${access}` } : {}),
        ...headers,
      },
      body: body === undefined ? undefined : JSON.stringify(body),
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
