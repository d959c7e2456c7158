/** The reader of files on its thread, as it is built: needs `npm run build`. */
import { onThread } from '../../src/platform/on-thread.js';
import { projectPath } from '../../src/platform/paths.js';
import type { LogFile, Progress } from '../../src/logbook/import/read-log.js';
import { KNOWN, NOW } from './scene.js';

const WORKER = projectPath('dist', 'src', 'logbook', 'import', 'worker.js');
const run = (text: string, memoryMb: number, tell: (progress: Progress) => void) =>
  onThread<LogFile, Progress>(
    WORKER,
    {
      ...{ choices: { role: 'solo' }, known: KNOWN, remembered: {}, now: NOW },
      bytes: new TextEncoder().encode(text),
    },
    { memoryMb, longestMs: 240_000, tooLate: () => new Error('too late') },
    tell,
  );

it('20,000 rows of 30 columns are read within 256 MB, telling how far it is', async () => {
  const others = Array.from({ length: 25 }, (_none, at) => `Other ${at}`);
  const rows = Array.from({ length: 20_000 }, (_none, index) => {
    const day = new Date(Date.UTC(1960, 0, 1 + index)).toISOString().slice(0, 10);
    return [day, 'XQHB', 'XQHB', 'N-0001', '1.5', ...others.map((words) => `${words} of ${index}`)].join(',');
  });
  const steps: number[] = [];
  const file = [['Date', 'From', 'To', 'Registration', 'Total', ...others].join(','), ...rows].join('\n');
  // Ten million characters.
  expect(file.length).toBeGreaterThan(8_000_000);
  const read = await run(file, 256, ({ row }) => steps.push(row));
  if (!read.ok) throw new Error(read.refused);
  expect(read.reading.drafts).toHaveLength(20_000);
  expect(steps.length).toBeGreaterThan(30);
}, 300_000);

it('what asks for more than it may have ends alone', async () => {
  const greedy = `Date,Registration,Total\n${'2026-01-01,N-0001,1\n'.repeat(19_000)}`;
  await expect(run(greedy, 4, () => undefined)).rejects.toMatchObject({ code: 'ERR_WORKER_OUT_OF_MEMORY' });
}, 60_000);
