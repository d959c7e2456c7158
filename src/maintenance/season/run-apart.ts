import { onThread } from '../../platform/on-thread.js';
import { BUILT, projectPath } from '../../platform/paths.js';
import { planSeason, type Season, type Task } from '../plan/run.js';

/** Plans beside the service's own thread; from the sources, where there is no built worker, on it. */
export async function planApart(task: Task): Promise<Season> {
  if (!BUILT) return planSeason(task);
  const worker = projectPath('dist', 'src', 'maintenance', 'plan', 'worker.js');
  const { season, error } = await onThread<{ season?: Season; error?: string }>(worker, task);
  if (season) return season;
  throw new Error(error);
}
