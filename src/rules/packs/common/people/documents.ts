import { defineRule, type Citation } from '../../../engine/rule.js';

/** Papers that the pilot carries and shows on request: nobody can tell ahead, so it is a condition of every flight. */
export function documentsRule(of: { id: string; citation: Citation; condition: string }) {
  return defineRule({
    id: of.id,
    title: 'Documents to carry',
    weight: 'law',
    binds: 'pilot',
    reads: [],
    parameters: [],
    branches: { carry: { status: 'met', says: 'The pilot in command carries the papers of the flight.' } },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge: (_f, _moment, _p, take) => take('carry', {}, { conditions: [of.condition] }),
      },
    ],
  });
}
