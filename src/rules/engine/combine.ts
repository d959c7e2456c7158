/** Turns findings into an answer. Nothing is judged here; judging and combining never mix. */
import type { Crew } from './crew.js';
import type { Answer, Finding } from './finding.js';

/** Does this finding stand in the way? Unknown and error do, under law and club alike: the engine fails closed. */
export function blocks(finding: Finding): boolean {
  if (finding.weight === 'advice' || finding.status === 'met' || finding.status === 'not-applicable')
    return false;
  // An unknown that the law lets be settled before departure comes with its condition instead.
  return !(finding.status === 'unknown' && finding.conditions.length > 0);
}

/** On a flight whose instructor is not named yet, what binds the pilot in command waits for the name. */
function waitsForInstructor(finding: Finding, crew: Crew): boolean {
  return (
    crew.instruction && crew.picId === null && (finding.binds === 'pilot' || finding.binds === 'instructor')
  );
}

/** Does this finding alone make the answer a no, whoever might be asked? */
export function refuses(finding: Finding, crew: Crew): boolean {
  return blocks(finding) && !finding.overridable && !waitsForInstructor(finding, crew);
}

/** The answer on the flight as asked, before other ways of flying it are tried. */
export function answerAsAsked(findings: readonly Finding[], crew: Crew): Answer {
  const inTheWay = findings.filter(blocks).filter((finding) => !waitsForInstructor(finding, crew));
  if (inTheWay.some((finding) => !finding.overridable)) return 'no';
  if (inTheWay.length > 0) return 'ask-officer';
  if (crew.instruction && crew.picId === null) return 'dual-only';
  return conditionsOf(findings).length > 0 ? 'yes-with-conditions' : 'yes';
}

/** All conditions, each once, in order of the findings. */
export function conditionsOf(findings: readonly Finding[]): string[] {
  return [
    ...new Set(
      findings.flatMap((finding) =>
        finding.status === 'met' || finding.status === 'unknown' ? finding.conditions : [],
      ),
    ),
  ];
}

const SAYS: Record<Answer, string> = {
  yes: 'Every rule that applies to this flight is met.',
  'yes-with-conditions': 'You may book it; settle the conditions before departure.',
  'dual-only':
    'Not on your own, but with an instructor as pilot in command the rest is met. Name an instructor who may give it.',
  'ask-officer': 'The law is met; a club rule is not. An officer may allow it, with a reason.',
  no: 'At least one rule is not met, or cannot be shown to be met.',
};

export const answerSays = (answer: Answer): string => SAYS[answer];
