import { Worker } from 'node:worker_threads';
import { BUILT, projectPath } from '../../platform/paths.js';
import { planSeason, type Season, type Task } from '../plan/run.js';

/** Plans beside the service's own thread; from the sources, where there is no built worker, on it. */
export function planApart(task: Task): Promise<Season> {
  if (!BUILT) return planSeason(task);
  return new Promise((resolve, reject) => {
    const worker = new Worker(projectPath('dist', 'src', 'maintenance', 'plan', 'worker.js'), {
      workerData: task,
    });
    worker.once('message', ({ season, error }: { season?: Season; error?: string }) => {
      if (season) resolve(season);
      else reject(new Error(error));
    });
    worker.once('error', reject);
    worker.once('exit', (code) => {
      if (code !== 0) reject(new Error(`the planner ended with ${code}`));
    });
  });
}
