import { Shown } from '../../platform/http/fields.js';
import type { Answered, GuideStep } from './guide-steps.js';

export const OUTCOMES = ['no-deferral', 'open', 'complete', 'by-list', 'club-procedure'] as const;
export type GuideOutcome = (typeof OUTCOMES)[number];

/** A step of the guide. */
export class GuideStepView implements GuideStep {
  @Shown({ type: 'string' })
  id: string;

  @Shown({ type: 'string', description: 'Where it stands in the section' })
  paragraph: string;

  @Shown({ type: 'string' })
  question: string;

  @Shown({ type: 'string', enum: ['yes', 'no', 'open'] })
  answer: Answered;

  @Shown({
    type: 'string',
    enum: ['record', 'rules', 'person'],
    description: "Who answers: the aircraft's record, the rules asked about flights, a person",
  })
  by: GuideStep['by'];

  @Shown({
    type: 'string',
    nullable: true,
    description: "Field of the deferral that keeps a person's answer",
  })
  field: string | null;

  @Shown({ type: 'boolean', description: 'This answer rules a deferral out' })
  stops: boolean;

  @Shown({ type: 'string' })
  says: string;
}

/** The way to a deferral, step by step. */
export class DeferralGuide {
  @Shown({
    type: 'string',
    enum: [...OUTCOMES],
    description:
      'no-deferral: repaired, not deferred; open: steps are unanswered; complete: every step is answered; by-list: the approved list decides; club-procedure: the law of this club is not held here',
  })
  outcome: GuideOutcome;

  @Shown({ type: 'string' })
  says: string;

  @Shown({ type: () => GuideStepView, isArray: true, description: 'In the order of the section' })
  steps: GuideStepView[];

  @Shown({
    type: 'string',
    format: 'date',
    nullable: true,
    description: "Last day by the club's policy, if deferred today",
  })
  deadlineOn: string | null;

  @Shown({ type: 'string', description: 'What it rests on, and how that is known' })
  source: string;

  @Shown({ type: 'string', description: 'The usual caution' })
  caution: string;
}
