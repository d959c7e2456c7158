import type { EntityManager } from 'typeorm';
import { toInstant, toSeconds, type EpochSeconds } from '../../rules/index.js';
import { keepReports } from '../../weather/reports/keep-reports.js';
import { readReport } from '../../weather/decode/read-report.js';
import { demoId } from '../ids.js';
import { byKey, type Person } from '../people/person.js';
import { DUNFERN, TANSY, type Place } from '../places.js';
import type { When } from '../when.js';

const HOUR = 3600;
const DAY = 24 * HOUR;

/** Day of the month, hour and minute as reports write them, in UTC. */
const stamp = (seconds: EpochSeconds, minutes = true): string =>
  toInstant(seconds)
    .slice(8, minutes ? 16 : 13)
    .replace(/[T:]/g, '');
/** The latest time of the kind up to an instant: so many seconds after every whole step. */
const latest = (now: EpochSeconds, step: number, after: number): EpochSeconds =>
  Math.floor((now - after) / step) * step + after;

/** Invented reports of invented airfields, in the form of the real ones: observed at 53 past, forecast four times a day. */
export function reportTexts(now: EpochSeconds): { place: Place; kind: 'metar' | 'taf'; text: string }[] {
  const observed = stamp(latest(now, HOUR, 53 * 60));
  const issued = latest(now, 6 * HOUR, 5.5 * HOUR);
  const from = issued + HOUR / 2;
  const turns = from + 9 * HOUR;
  // It holds for a day; the end of a day is written as its 24th hour (WMO manual on codes, from memory).
  const ends = from % DAY === 0 ? `${stamp(from, false).slice(0, 2)}24` : stamp(from + DAY, false);
  return [
    { place: DUNFERN, kind: 'metar', text: `METAR XQDF ${observed}Z 12009KT 10SM FEW090 11/M02 A3004` },
    {
      ...{ place: DUNFERN, kind: 'taf' },
      text:
        `TAF XQDF ${stamp(issued)}Z ${stamp(from, false)}/${ends} 12009KT P6SM FEW090 ` +
        `FM${stamp(turns)} 30014G22KT P6SM SCT080 BKN120`,
    },
    { place: TANSY, kind: 'metar', text: `METAR XQTB ${observed}Z 15006KT 8SM SCT070 12/01 A3003` },
  ];
}

/** A member pasted what was reported for the airfields round about. */
export async function pastedWeather(em: EntityManager, people: readonly Person[], when: When): Promise<void> {
  const memberId = byKey(people, 'luis').id;
  const reports = reportTexts(toSeconds(when.asOf)).map(({ kind, text }) =>
    readReport(kind, text, when.asOf),
  );
  const pasted = { memberId, pastedBy: memberId };
  await keepReports(em, reports, { obtainedAt: when.asOf, pasted }, ({ airfield, kind }) =>
    demoId('report', airfield, kind),
  );
}
