import { useEffect, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import { attempt } from '../parts/attempt.js';

/** A sheet on record under an address: read, put in place of another, taken off. `undefined`: not read yet; null: there is none. */
export function useSheet<T extends { rowVersion: number }>(path: string) {
  const [sheet, setSheet] = useState<T | null | undefined>(undefined);
  const [problem, setProblem] = useState<string | null>(null);
  const read = () =>
    attempt(setProblem, async () => {
      try {
        setSheet(await call<T>('GET', path));
      } catch (error) {
        if (!(error instanceof ApiProblem) || error.problem.status !== 404) throw error;
        setSheet(null);
      }
    });
  useEffect(() => {
    setSheet(undefined);
    void read();
  }, [path]);
  const matching: Record<string, string> = sheet ? { 'If-Match': `"${sheet.rowVersion}"` } : {};
  return {
    sheet,
    problem,
    refuse: setProblem,
    save: (body: object) =>
      attempt(setProblem, async () => setSheet(await call<T>(sheet ? 'PUT' : 'POST', path, body, matching))),
    remove: () =>
      attempt(setProblem, async () => {
        await call('DELETE', path, undefined, matching);
        setSheet(null);
      }),
  };
}
