/** Questions of the demo club's quizzes: invented figures of invented aircraft. */
import type { ModelKey } from '../fleet/models.js';
import type { QuestionRow } from '../rows.js';

export type DemoQuestion = Pick<QuestionRow, 'topic' | 'kind' | 'text' | 'reference'> & {
  choices?: string[];
  /** Letters of the right choices, or the number with its tolerance and unit. */
  right: string[] | [value: number, tolerance: number, unit: string];
};

const number = (
  topic: DemoQuestion['topic'],
  text: string,
  right: [number, number, string],
  section: number,
): DemoQuestion => ({
  topic,
  kind: 'number',
  text,
  right,
  reference: `Invented handbook, section ${section}`,
});
const choice = (
  topic: DemoQuestion['topic'],
  text: string,
  choices: string[],
  right: string,
  section: number,
): DemoQuestion => ({
  ...{ topic, kind: right.length > 1 ? 'multiple' : 'single', text, choices, right: [...right] },
  reference: `Invented handbook, section ${section}`,
});

const FIRE = choice(
  'emergency-memory',
  'The engine is on fire in flight. Which of these are done from memory?',
  ['Mixture to cut-off', 'Fuel off', 'Transponder off', 'Cabin heat off'],
  'abd',
  3,
);
const ROUGH = choice(
  'emergency-memory',
  'The engine runs rough and the air is damp and cool. What comes first, from memory?',
  ['Carburettor heat full hot', 'Mixture lean', 'Primer unlocked'],
  'a',
  3,
);

export const QUESTIONS: Partial<Record<ModelKey, DemoQuestion[]>> = {
  sprig: [
    number('limits', 'Speed never to be exceeded?', [141, 0, 'kt indicated'], 2),
    number('limits', 'Most that may be taken off with?', [1670, 0, 'lb'], 2),
    number('limits', 'Crosswind shown in its tests?', [14, 0, 'kt'], 2),
    number('systems', 'Usable fuel, both tanks full?', [26, 0.5, 'US gal'], 7),
    choice(
      'systems',
      'Which instruments stop when the air pump does?',
      ['Attitude and heading', 'Airspeed and altimeter', 'Turn coordinator'],
      'a',
      7,
    ),
    number('emergency-memory', 'Speed of best glide at full weight?', [62, 2, 'kt indicated'], 3),
    ROUGH,
    FIRE,
  ],
  almanac: [
    number('limits', 'Speed never to be exceeded?', [163, 0, 'kt indicated'], 2),
    number('limits', 'Most that may be taken off with?', [2550, 0, 'lb'], 2),
    choice('limits', 'Flaps beyond 10° below which speed?', ['85 kt', '95 kt', '110 kt'], 'a', 2),
    number('systems', 'Usable fuel, both tanks full?', [50, 0.5, 'US gal'], 7),
    choice(
      'systems',
      'What does the backup battery feed?',
      ['The standby instrument', 'The pitot heat', 'The flaps'],
      'a',
      9,
    ),
    number('emergency-memory', 'Speed of best glide at full weight?', [68, 2, 'kt indicated'], 3),
    FIRE,
  ],
  lindle: [
    number('limits', 'Gear comes down below which speed?', [129, 0, 'kt indicated'], 2),
    number('limits', 'Most that may be taken off with?', [2750, 0, 'lb'], 2),
    choice('systems', 'What holds the gear up?', ['Oil pressure', 'A hook', 'Air pressure'], 'a', 7),
    number('systems', 'Strokes of the hand pump until the gear is down, about?', [35, 5, 'strokes'], 3),
    choice(
      ...([
        'emergency-memory',
        'The gear lights stay dark. Which of these come first, from memory?',
      ] as const),
      ['Look at the lights’ dimmer', 'Look at the breaker', 'Feather the propeller'],
      ...(['ab', 3] as const),
    ),
    FIRE,
  ],
};
