import { useEffect, useState } from 'preact/hooks';
import { ApiProblem, picture } from '../api/client.js';
import type { Squawk } from './types.js';

/** The photos of a squawk. */
export function PhotoRow({ of }: { of: Squawk }) {
  if (of.photos.length === 0) return null;
  return (
    <ul class="photos" aria-label="Photos">
      {of.photos.map(({ id }, index) => (
        <li key={id}>
          <Photo
            path={`/aircraft/${of.aircraftId}/squawks/${of.id}/attachments/${id}`}
            alt={`Photo ${index + 1} of “${of.title}”`}
          />
        </li>
      ))}
    </ul>
  );
}

function Photo({ path, alt }: { path: string; alt: string }) {
  const [source, setSource] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    picture(path).then(setSource, (error: unknown) => {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    });
  }, [path]);
  if (problem) return <p class="problem">{problem}</p>;
  return source ? <img src={source} alt={alt} /> : <p class="hint">Loading…</p>;
}
