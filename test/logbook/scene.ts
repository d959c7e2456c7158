/** What a file of flights is read by, for specs. */
import {
  readLogFile,
  type Known,
  type LogFile,
  type LogFileReading,
} from '../../src/logbook/import/read-log.js';
import type { Choices } from '../../src/logbook/import/choices.js';
import { sumOf } from '../../src/logbook/import/sums.js';

export const NOW = '2026-03-10T15:00:00Z';

/** A club in Chicago's zone with one aircraft, one more model and an airfield an hour further east. */
export const KNOWN: Known = {
  ...{ zone: 'America/Chicago', today: '2026-03-10', log: [], before: sumOf([]) },
  airfields: [
    { code: 'XQHB', zone: 'America/Chicago' },
    { code: 'XQEA', zone: 'America/New_York' },
  ],
  aircraft: [
    {
      ...{ aircraftId: 'a1', registration: 'N-0001', modelId: 'm1', makeModel: 'Harrow Lark 160' },
      ...{ category: 'airplane', class: 'single-engine-land', typeRating: null, tailwheel: false },
    },
    {
      ...{ aircraftId: null, registration: null, modelId: 'm2', makeModel: 'Harrow Twin' },
      ...{ category: 'airplane', class: 'multi-engine-land', typeRating: null, tailwheel: false },
    },
  ],
};

/** A file read, with the role given where it is not asked about. */
export function read(
  file: string | Uint8Array,
  choices: Choices | null = { role: 'pilot-in-command' },
  known: Known = KNOWN,
): LogFileReading {
  const answer = refusable(file, choices, known);
  if (!answer.ok) throw new Error(answer.refused);
  return answer.reading;
}

export const refusable = (
  file: string | Uint8Array,
  choices: Choices | null = { role: 'pilot-in-command' },
  known: Known = KNOWN,
): LogFile =>
  readLogFile(
    {
      ...{ choices, known, remembered: {}, now: NOW },
      bytes: typeof file === 'string' ? new TextEncoder().encode(file) : file,
    },
    () => undefined,
  );

/** The reasons for which rows are bad, by line. */
export const reasons = ({ bad }: LogFileReading): Record<number, string> =>
  Object.fromEntries(bad.map(({ line, faults }) => [line, faults.map(({ because }) => because).join(' ')]));
