import { ApiProblem } from '../api/client.js';

/** Runs a request and tells a refusal in words, with the field it is about. @returns whether it went through */
export async function attempt(
  tell: (problem: string | null) => void,
  request: () => Promise<void>,
): Promise<boolean> {
  tell(null);
  try {
    await request();
    return true;
  } catch (error) {
    if (!(error instanceof ApiProblem)) throw error;
    const { detail, errors } = error.problem;
    tell(errors?.[0]?.field ? `${errors[0].field}: ${errors[0].message}` : detail);
    return false;
  }
}
