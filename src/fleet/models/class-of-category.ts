import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { AircraftCategory, AircraftClass } from '../../rules/index.js';

/** Classes within each category; balloons and airships are not told apart here. Source: 14 CFR 61.5(b)(1)-(4). */
const CLASSES_OF: Record<AircraftCategory, readonly AircraftClass[]> = {
  airplane: ['single-engine-land', 'single-engine-sea', 'multi-engine-land', 'multi-engine-sea'],
  rotorcraft: ['helicopter', 'gyroplane'],
  glider: ['none'],
  'lighter-than-air': ['none'],
  'powered-lift': ['none'],
};

/** @throws ProblemException 422 when the category has no such class. */
export function requireClassOfCategory(of: { category: AircraftCategory; class: AircraftClass }): void {
  const classes = CLASSES_OF[of.category];
  if (classes.includes(of.class)) return;
  throw new ProblemException('value-refused', {
    field: 'class',
    detail: `The category ${of.category} has no class ${of.class}. Choose ${classes.join(', ')}.`,
  });
}
