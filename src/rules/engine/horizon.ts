/**
 * Until when does the answer hold? Walks from change point to change point: at each, only the rules that named it are
 * judged again, so the cost grows with the change points and not with the days.
 */
import { toInstant, type EpochSeconds } from '../calendar/instants.js';
import type { FactSheet } from '../facts/sheet.js';
import { answerAsAsked, answerWithDual, refuses, weighable } from './combine.js';
import type { Answer, Horizon } from './finding.js';
import { Instances, type Held } from './follow.js';
import { earlier, type Judged, type Ruleset } from './judge.js';
import type { Rule } from './rule.js';
import { verdictDiffers, type Verdict } from './run.js';
import { weigh, type Weighed } from './weigh.js';

/** How far the search for the horizon looks. */
export interface HorizonLimits {
  days: number;
  stepsPerRule: number;
}

interface Track {
  rule: Rule;
  /** The flight it is followed on. */
  instances: Instances;
  asAsked: boolean;
  /** The verdict at `asOf`. */
  first: Held;
  now: Verdict;
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
  const start = (judged: readonly Judged[], of: FactSheet, asAsked: boolean): Track[] => {
    const instances = new Instances(of, ruleset);
    return judged.map(({ finding, nextChange }, index) => {
      const { status, branch, conditions } = finding;
      const now = { status, branch, conditions, nextChange };
      return { rule: ruleset.rules[index]!, instances, asAsked, first: now, now, changed: null, steps: 0 };
    });
  };
  const asked = start(weighed.judged, sheet, true);
  const dual = weighed.withInstructor
    ? start(weighed.withInstructor.judged, weighed.withInstructor.sheet, false)
    : [];
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
      const before = track.now;
      track.now = track.instances.verdictAt(track.rule, at);
      track.steps += 1;
      if (track.changed === null && verdictDiffers(track.now, track.first)) track.changed = at;
      if (verdictDiffers(track.now, before)) moved.push(track);
    }
    if (following && cutAt === null && moved.length > 0) {
      const answer = answerWithDual(answerOf(asked, at), weighed.withInstructor ? answerOf(dual, at) : null);
      if (answer !== weighed.answer) {
        answerChange = { at, because: [...new Set(moved.map((track) => track.rule.id))] };
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

/** The answer from the verdicts as they stand; each flight's own crew weighs them. */
function answerOf(tracks: readonly Track[], at: EpochSeconds): Answer {
  const { crew } = tracks[0]!.instances.at(at);
  const findings = tracks.map(({ rule, now }) => weighable(rule, now));
  return answerAsAsked(findings, crew);
}
