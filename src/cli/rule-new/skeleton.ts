/** The files of a new rule, as they are before anybody has filled them in: the rule says no, and each case says what it lacks. */
import type { Names } from './names.js';

/** The rule file. Until its body is written it is short, so that nothing passes by omission. */
export function ruleFile(names: Names): string {
  const up = '../'.repeat(names.path.split('/').length - 3);
  return `import { defineRule } from '${up}engine/rule.js';

/** To be filled in: the source and what it asks, in a sentence or two. */
export const ${names.constant} = defineRule({
  id: '${names.id}',
  title: '${names.title}',
  weight: '${names.weight}',
  binds: '${names.binds}',
  reads: ['${names.reads}'],
  parameters: [],
  branches: {
    'does-not-bind': { status: 'not-applicable', says: 'To be filled in: why it does not bind this flight.' },
    enough: { status: 'met', says: 'To be filled in: what was counted, and until when it is good.' },
    short: { status: 'short', says: 'To be filled in: what was counted, and what is missing.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'to be filled in, such as ${names.source}',
        status: '${names.weight === 'club' ? 'club paper' : 'from memory'}',
      },
      judge(f, _moment, _p, take) {
        f.get('${names.reads}');
        return take('short');
      },
    },
  ],
});
`;
}

/** The case table: an example for each branch, and one for the fact that is not on record. */
export function caseTable(names: Names): string {
  const one = (name: string, todo: string, expect: string): string => `
  - name: ${name}
    source: to be filled in, such as ${names.source}
    todo: ${todo}
    given:
      asOf: Mon 2027-03-01 11:00
    expect: ${expect}
`;
  return `# ${names.title}. A case: when (asOf), the facts that differ from the base sheet, what must come out, and who says so.
# The base sheet is src/rules/workshop/base-sheet.ts; complete records are in records.ts beside it. Take out \`todo\` when a case is done.
rule: ${names.id}
cases:${one('it does not bind', 'facts for which the rule does not bind', '{ status: not-applicable, branch: does-not-bind }')}${one(
    'just enough',
    'the least that is enough, its last day in `until`, and the same with a day or one less as a second case',
    '{ status: met, branch: enough }',
  )}${one(
    'one less is short',
    'the most that is not enough, and the acts that cure it in `remedies`',
    '{ status: short, branch: short }',
  )}
  - name: nothing on record
    source: engine contract, unknown never gives yes
    given: { ${names.reads}: unknown }
    expect: { status: unknown }
`;
}
