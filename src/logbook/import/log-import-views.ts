import { CAUTION } from '../../rules/index.js';
import { hoursOf } from '../../platform/http/views.js';
import type { BadRowsView, LogImportPreview, LogSumsView } from './log-import-view.dto.js';
import { MOST_KINDS } from './log-import.dto.js';
import { faultsSay } from './log-import.problems.js';
import type { BadRow, LogFileReading } from './read-log.js';
import type { Sums } from './sums.js';

/** Rows shown one by one, and reasons. */
const MOST_ROWS = 200;
const MOST_REASONS = 50;

/** Whether it can be taken over as it was read. */
export const isReady = ({ questions, bad, drafts, choices }: LogFileReading): boolean =>
  questions.length === 0 && drafts.length > 0 && (bad.length === 0 || choices.leaveOutBad === true);

export function previewView(reading: LogFileReading, digest: string): LogImportPreview {
  const { duplicates, drafts, totals, columns, questions } = reading;
  const of = (kind: string): number => duplicates.filter((one) => one.kind === kind).length;
  const days = drafts.map(({ flownOn }) => flownOn).sort();
  return {
    preview: isReady(reading) ? digest : null,
    ...{ encoding: reading.encoding, delimiter: reading.delimiter, headingLine: reading.headingLine },
    ...{ remembered: reading.remembered, choices: reading.choices, columns, questions },
    kinds: reading.kinds.slice(0, MOST_KINDS),
    counts: {
      ...{ rows: reading.rows, toWrite: drafts.length, bad: reading.bad.length, same: of('same') },
      ...{
        alike: of('alike'),
        sums: reading.sums.length,
        untimed: reading.untimed,
        rounded: reading.rounded,
      },
    },
    badReasons: reasonsOf(reading.bad),
    bad: reading.bad.slice(0, MOST_ROWS).map(({ line, faults }) => ({ line, because: faultsSay(faults) })),
    repeated: duplicates.slice(0, MOST_ROWS),
    ...{ firstFlownOn: days[0] ?? null, lastFlownOn: days.at(-1) ?? null, hoursInFile: reading.hoursInFile },
    totals: {
      ...{ before: sumsView(totals.before), added: sumsView(totals.added), after: sumsView(totals.after) },
    },
    ...{ notes: notesOf(reading), caution: CAUTION },
  };
}

export const sumsView = (sums: Sums): LogSumsView => ({
  ...{ flights: sums.flights, totalH: hoursOf(sums.totalTenths), nightH: hoursOf(sums.nightTenths) },
  crossCountryH: hoursOf(sums.crossCountryTenths),
  actualInstrumentH: hoursOf(sums.actualInstrumentTenths),
  simulatedInstrumentH: hoursOf(sums.simulatedInstrumentTenths),
  ...{ dualGivenH: hoursOf(sums.dualGivenTenths), takeoffs: sums.takeoffs, landings: sums.landings },
});

/** What a cell holds is another in every row; the reason behind it is not. */
function reasonsOf(bad: readonly BadRow[]): BadRowsView[] {
  const reasons = new Map<string, BadRowsView>();
  for (const { faults } of bad) {
    const told = new Map(faults.map((fault) => [`${fault.column}\n${fault.because}`, fault]));
    for (const [key, { column, because }] of told) {
      const reason = reasons.get(key) ?? { column, because, rows: 0 };
      reason.rows += 1;
      reasons.set(key, reason);
    }
  }
  return [...reasons.values()].sort((a, b) => b.rows - a.rows).slice(0, MOST_REASONS);
}

function notesOf({
  columns,
  choices,
  untimed,
  rounded,
  drafts,
  hoursInFile,
  totals,
}: LogFileReading): string[] {
  const has = new Set(columns.map(({ field }) => field));
  const entered = totals.added.totalTenths / 10;
  const notes: (string | false)[] = [
    untimed > 0 &&
      `${untimed} of the flights have no times. They count from the end of their day, and no check against sunset can be made for them.`,
    rounded > 0 &&
      `The log keeps tenths of an hour: ${rounded} totals are rounded, ${hoursInFile} h in the file become ${entered} h.`,
    (has.has('nightTakeoffs') || has.has('nightFullStopLandings')) &&
      'Take-offs and full-stop landings at night count as such from one hour after sunset to one hour before sunrise (14 CFR 61.57(b)). If the file counts another night, do not take these columns over.',
    has.has('nightLandings') &&
      !has.has('nightFullStopLandings') &&
      'Night landings that are not told to be full stops are counted as landings only.',
    !has.has('soleManipulator') &&
      choices.soleManipulator !== true &&
      'The file does not say who handled the controls, so its landings do not count towards carrying passengers (14 CFR 61.57(a)).',
    !has.has('takeoffs') &&
      !has.has('dayTakeoffs') &&
      choices.takeoffsAsLandings !== true &&
      'The file does not count take-offs, so none are entered but those at night.',
    !has.has('fullStopLandings') &&
      !has.has('dayFullStopLandings') &&
      'The file does not tell full-stop landings by day, so none are entered.',
    choices.clock === 'zone' && `Times are read by the clock of ${choices.zone}.`,
  ];
  return drafts.length === 0 ? [] : notes.filter((note) => note !== false);
}
