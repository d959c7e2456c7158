/**
 * Until when does the answer hold? Walks from change point to change point: at each, only the rules that named it are
 * judged again, so the cost grows with the change points and not with the days.
 */
import { toInstant, type EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { refuses } from './combine.js';
import type { Finding, Horizon } from './finding.js';
import { crewAt, earlier, judgeRule, type Judged, type Ruleset } from './judge.js';
import { answerOf, weigh, type Weighed } from './weigh.js';

/** How far the search for the horizon looks. */
export interface HorizonLimits {
  days: number;
  stepsPerRule: number;
}

interface Track {
  sheet: FactSheet;
  index: number;
  asAsked: boolean;
  now: Judged;
  /** First departure at which the verdict differs from the one at `asOf`. */
  changed: EpochSeconds | null;
  steps: number;
}

/** The horizon of the answer, and per rule (in the set's order) the departure at which its own verdict changes. */
export function searchHorizon(
  sheet: FactSheet,
  ruleset: Ruleset,
  departs: EpochSeconds,
  weighed: Weighed,
  limits: HorizonLimits,
): { horizon: Horizon; untils: (EpochSeconds | null)[] } {
  const end = departs + limits.days * 86_400;
  const start = (judged: readonly Judged[], of: FactSheet, asAsked: boolean): Track[] =>
    judged.map((now, index) => ({ sheet: of, index, asAsked, now, changed: null, steps: 0 }));
  const asked = start(weighed.judged, sheet, true);
  const dual = weighed.withInstructor
    ? start(weighed.withInstructor.judged, weighed.withInstructor.sheet, false)
    : [];
  const first = [...asked, ...dual].map((track) => track.now.finding);
  const tracks = [...asked, ...dual];

  let answerChange: { at: EpochSeconds; because: string[] } | null = null;
  let cutAt: EpochSeconds | null = null;
  // A refusal that no time cures stays one: then only the verdicts themselves are worth following.
  let following = !refusedForGood(weighed);

  for (;;) {
    let at: EpochSeconds | null = null;
    for (const track of tracks) {
      if (following || (track.asAsked && track.changed === null)) at = earlier(at, track.now.nextChange);
    }
    if (at === null || at >= end) break;
    const moved: Track[] = [];
    for (const track of tracks) {
      if (track.now.nextChange !== at) continue;
      if (track.steps >= limits.stepsPerRule) {
        // Nothing differed up to here; say so rather than look for ever. What the answer does after it is not known.
        track.changed ??= at;
        track.now = { ...track.now, nextChange: null };
        if (following) cutAt = earlier(cutAt, at);
        continue;
      }
      const before = track.now.finding;
      step(track, ruleset, at);
      if (verdictDiffers(track.now.finding, first[tracks.indexOf(track)]!)) track.changed ??= at;
      if (verdictDiffers(track.now.finding, before)) moved.push(track);
    }
    if (following && cutAt === null && moved.length > 0) {
      const answer = answerOf(
        asked.map((track) => track.now),
        crewAt(sheet, ruleset, at).crew,
        weighed.withInstructor && { ...weighed.withInstructor, judged: dual.map((track) => track.now) },
      );
      if (answer !== weighed.answer) {
        answerChange = { at, because: [...new Set(moved.map((track) => track.now.finding.rule))] };
      }
    }
    if (answerChange !== null || cutAt !== null) following = false;
  }

  // Beyond the end of the search a verdict still stands until its next change point.
  const untils = asked.map((track) => track.changed ?? track.now.nextChange);
  if (answerChange) {
    const becomes = weigh(sheet, ruleset, answerChange.at).answer;
    const until = toInstant(answerChange.at);
    return { horizon: { until, becomes, because: answerChange.because, searchedTo: until }, untils };
  }
  return {
    horizon: { until: null, becomes: null, because: [], searchedTo: toInstant(cutAt ?? end) },
    untils,
  };
}

/** Does something stand in the way, of the flight as asked and with an instructor, that time alone never moves? */
function refusedForGood({ crew, judged, withInstructor }: Weighed): boolean {
  const stuck = (of: readonly Judged[], by: Weighed['crew']): boolean =>
    of.some(({ finding, nextChange }) => nextChange === null && refuses(finding, by));
  return (
    stuck(judged, crew) && (withInstructor === null || stuck(withInstructor.judged, withInstructor.crew))
  );
}

function step(track: Track, ruleset: Ruleset, at: EpochSeconds): void {
  const { crew, nextChange } = crewAt(track.sheet, ruleset, at);
  const judged = judgeRule(ruleset.rules[track.index]!, track.sheet, ruleset, crew, at);
  track.now = { ...judged, nextChange: earlier(judged.nextChange, nextChange) };
  track.steps += 1;
}

/** A verdict is its status and the conditions that go with it; a sentence that counts days is not a change. */
function verdictDiffers(a: Finding, b: Finding): boolean {
  return a.status !== b.status || a.conditions.join('\n') !== b.conditions.join('\n');
}
