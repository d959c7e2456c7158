import { CAUTION, localDateOf, toInstant } from '../../rules/index.js';
import { TASK_NAMES } from '../rust/words.js';
import type { Task } from '../tolerances/index.js';
import type { Spans } from '../records/practice-record.entity.js';
import type { PracticeRecordDto } from '../records/practice.dto.js';
import type { PracticeProposal, Proposals } from '../track/propose.js';
import type { TrackAirfield } from '../track/index.js';
import type { TrackFile } from './read-file.js';
import type { TrackEventView, TrackPracticeView, TrackReadingView } from './track.dto.js';
import { CAVEATS, FACTORS, unseenSays } from './words.js';

const M_PER_FT = 0.3048;
const TASKS: Record<PracticeProposal['task'], Task> = {
  steep_turn: 'steep_turn',
  holding: 'holding',
  landing: 'normal_landing',
  go_around: 'go_around',
};

const instant = (seconds: number): string => toInstant(Math.round(seconds));
const round = (value: number, digits = 0): number => Number(value.toFixed(digits));

/** What the reading answers. */
export function readingView(of: {
  file: Extract<TrackFile, { ok: true }>;
  trackSha256: string;
  zone: string;
  airfields: readonly TrackAirfield[];
  onRecord: ReadonlySet<string>;
  loggedAlready: string | null;
}): TrackReadingView {
  const { file, zone, airfields, onRecord } = of;
  const { proposals } = file;
  return {
    ...{ trackSha256: of.trackSha256, from: instant(file.fromSeconds), to: instant(file.toSeconds) },
    ...{ points: file.points, loggedAlready: of.loggedAlready, caution: CAUTION },
    picture: file.picture.map(({ atSeconds, latitudeDeg, longitudeDeg, elevationM }) => ({
      ...{ at: instant(atSeconds), latitudeDeg: round(latitudeDeg, 5), longitudeDeg: round(longitudeDeg, 5) },
      elevationFt: elevationM === null ? null : round(elevationM / M_PER_FT),
    })),
    events: Object.entries(proposals.events)
      .map(([id, event]) => eventView(id, event))
      .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
    log: Object.entries(proposals.log).map(([field, { value, evidence, confidence, caveats }]) => ({
      ...{ field, value, evidence, confidence: round(confidence, 2) },
      caveats: caveats.map((caveat: keyof typeof CAVEATS) => CAVEATS[caveat]),
    })),
    practice: proposals.practice.map((one) => practiceView(one, { proposals, zone, airfields, onRecord })),
    unseen: file.unseen.map(unseenSays),
  };
}

function eventView(id: string, event: Proposals['events'][string]): TrackEventView {
  const none = {
    ...{ airfield: null, runway: null, fullStop: null, bankDeg: null },
    ...{ altitudeDevFt: null, windFromDeg: null, windKt: null },
  };
  const factors = event.confidence.parts.map(({ because, factor }) => ({
    says: FACTORS[because],
    factor: round(factor, 2),
  }));
  const head = { id, kind: event.kind, confidence: round(event.confidence.value, 2), factors };
  if (event.kind === 'steep-turn')
    return {
      ...{ ...none, ...head, at: instant(event.fromSeconds), until: instant(event.toSeconds) },
      ...{ bankDeg: round(event.bankDeg), altitudeDevFt: spanOf(event.altitudeDevFt) },
      ...{ windFromDeg: round(event.wind.fromDegTrue) % 360, windKt: round(event.wind.kt) },
    };
  if (event.kind === 'hold')
    return { ...none, ...head, at: instant(event.fromSeconds), until: instant(event.toSeconds) };
  return {
    ...{ ...none, ...head, at: instant(event.atSeconds), until: instant(event.atSeconds) },
    ...{ airfield: event.airfield, runway: event.runway },
    fullStop: event.kind === 'landing' ? event.fullStop : null,
  };
}

const spanOf = (value: number | { least: number; most: number } | null) =>
  value === null
    ? null
    : typeof value === 'number'
      ? { least: round(value, 1), most: round(value, 1) }
      : { least: round(value.least, 1), most: round(value.most, 1) };

function practiceView(
  one: PracticeProposal,
  of: {
    proposals: Proposals;
    zone: string;
    airfields: readonly TrackAirfield[];
    onRecord: ReadonlySet<string>;
  },
): TrackPracticeView {
  const manoeuvre = TASKS[one.task];
  const event = of.proposals.events[one.id];
  const runway =
    event && 'runway' in event
      ? of.airfields
          .find(({ code }) => code === event.airfield)
          ?.runways.find(({ designator }) => designator === event.runway)
      : undefined;
  const measured: Spans = Object.fromEntries(
    Object.entries(one.measured).map(([measure, value]) => [measure, spanOf(value)]),
  );
  const seconds = Math.round(event && 'atSeconds' in event ? event.atSeconds : event!.fromSeconds);
  const record: PracticeRecordDto = {
    ...{ flownOn: localDateOf(seconds, of.zone), manoeuvre, measured },
    // What the track does not show is left for the pilot to say.
    ...{ night: one.night, runwayFt: runway?.lengthFt ?? null },
  };
  return {
    ...{ event: one.id, title: TASK_NAMES[manoeuvre], record, confidence: round(one.confidence, 2) },
    caveats: one.caveats.map((caveat) => CAVEATS[caveat]),
    onRecord: of.onRecord.has(one.id),
  };
}
