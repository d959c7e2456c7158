import { defineRule } from '../../../engine/rule.js';

/**
 * Papers that the member entered and no officer has verified do not count. The rules that miss them cannot know why
 * they are missing; this one tells.
 */
export const papersUnverified = defineRule({
  id: 'advice.papers_unverified',
  title: 'Papers waiting for an officer',
  weight: 'advice',
  binds: 'pilot',
  reads: ['pic.unverified'],
  parameters: [],
  branches: {
    none: { status: 'met', says: 'Every paper entered has been verified.' },
    waiting: {
      status: 'short',
      says: 'Entered, but not counted until an officer has verified it: {papers}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club rule: papers count once verified', status: 'club paper' },
      judge(f, _moment, _p, take) {
        const papers = [...f.get('pic.unverified')].sort((a, b) => (a.id < b.id ? -1 : 1));
        if (papers.length === 0) return take('none');
        const named = papers.map(({ what, on }) => (on === null ? what : `${what} of ${on}`));
        return take(
          'waiting',
          { papers: named.join(', ') },
          {
            counted: papers.map(({ id, what, on }) => ({ id, on, what })),
            remedies: () => [
              {
                act: 'have-papers-verified',
                title: 'Show the papers to a safety officer, who verifies them.',
                by: 'officer',
                effects: [{ op: 'set', fact: 'pic.unverified', value: [] }],
              },
            ],
          },
        );
      },
    },
  ],
});
