import { subjectWords } from '../rules/explain/index.js';
import type { FactKey } from '../rules/index.js';

const OTHERS: Record<string, string> = {
  'club:rules': "the club's own rules",
  'club:zone': "the club's zone or jurisdiction",
  'club:airfields': "the club's airfields",
  'club:checkouts': 'what the club asks of a checkout',
  'club:differences': 'changes of equipment',
  law: 'the rules of this release',
};

/** Changed facts in words, each once: 'open squawks', 'medical certificates', 'club policy'. */
export function causeWords(subjects: readonly string[]): string[] {
  return [...new Set(subjects.map(wordsOf))].sort();
}

function wordsOf(subject: string): string {
  const [whose, , fact] = subject.split(':');
  if (whose === 'person') return subjectWords(`member.${fact}` as FactKey).name;
  if (whose === 'aircraft')
    return fact === 'home' ? 'where the aircraft lives' : subjectWords(`aircraft.${fact}` as FactKey).name;
  if (whose === 'policy') return 'club policy';
  if (whose === 'airfield') return 'an airfield of the route';
  if (whose === 'booking') return 'the booking itself';
  return OTHERS[subject] ?? subject;
}
