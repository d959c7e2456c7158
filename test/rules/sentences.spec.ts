/**
 * Sentences are for people. Every sentence a case table brings about is held to this: plain words, whole, short enough for
 * a phone; what is short says what is missing, what is met until a day says until when.
 */
import type { Finding } from '../../src/rules/index.js';
import { runCase } from '../../src/rules/workshop/run-case.js';
import { factsText } from './sentences/facts-text.js';
import { ACCEPTED, isExcepted } from './sentences/exceptions.js';
import { TABLES } from './explain/case-tables.js';

/** Longest sentence, characters: eight lines on a phone 390 pixels wide. */
const LONGEST = 240;
/** What says that something is missing, and what. */
const MISSING = new RegExp(
  [
    String.raw`\b(?:\d[\d.,]* of \d|\d[\d.,]* \w+ (?:more|less)|more than|(?:less|lower) than|heavier|longer|too)\b`,
    String.raw`\b(?:no|not|none|nobody|never|only|but|missing|wanting|below|past|outside|beyond|already)\b`,
    String.raw`\b(?:needs?|asks for|allows|due|ended|ends|begins|ran to|lapsed|suspended|expired|forbids|withdrawn)\b`,
    String.raw`\b(?:grounded|out of service|in arrears|is over|has the aircraft|somebody else|nearer|to revalidate)\b`,
  ].join('|'),
  'i',
);
/** A day, a clock, or the word for "as long as". */
const WHEN = /\d{4}-\d{2}-\d{2}|\b\d{2}:\d{2}\b/;

type Check = (says: string, finding: Finding, bare: string) => string | null;

/** Each gives what is wrong, or null. `bare` is the sentence without the names and titles of the club's own records. */
const CHECKS: Record<string, Check> = {
  whole: (says) => (/^[A-Z\d“"].*[^.\s]\.$/s.test(says) ? null : 'is no whole sentence'),
  tidy: (says) => (/ {2}|\s[.,;:]|[.,;:]{2}|\(\s|\s\)|\n/.test(says) ? 'has stray spaces or stops' : null),
  filled: (says) => (/[{}]|undefined|\bnull\b|NaN|\[object/.test(says) ? 'has a slot unfilled' : null),
  plain: (says, _finding, bare) => {
    // A fact that a case table sets to unknown is named by its key there; in the service each says what is missing.
    if (/^Cannot tell: [a-z]+\.\w+ is not on record\.$/.test(says)) return null;
    const raw =
      /\b[a-z]+[A-Z]\w*|\b(?:pic|member|instructor|aircraft)\.[a-z]\w*|\b(?:us|eu|ca|club)\.[a-z]|\w_\w/.exec(
        bare,
      );
    return raw ? `says "${raw[0]}", a word of the program` : null;
  },
  dated: (says) => (/\d{4}-\d{2}-\d{2}T|\d{2}:\d{2}:\d{2}/.test(says) ? 'has an instant in it' : null),
  short: (says) => (says.length > LONGEST ? `has ${says.length} characters` : null),
  missing: (says, { status }) =>
    status === 'short' && !MISSING.test(says) ? 'does not say what is missing' : null,
  until: (says, { status, until, conditions }) =>
    status === 'met' && until !== null && !WHEN.test([says, ...conditions].join(' '))
      ? 'does not say until when'
      : null,
};

interface Outcome {
  finding: Finding;
  bare: string;
}

const outcomes = new Map<string, Outcome[]>();
for (const { rule, cases } of TABLES) {
  for (const one of cases) {
    const { finding, sheet } = runCase(rule, one);
    const at = `${rule} ${finding.branch}`;
    outcomes.set(at, [...(outcomes.get(at) ?? []), { finding, bare: factsText(sheet).outOf(finding.says) }]);
  }
}

function wrongWith(at: string): Map<string, string> {
  const wrong = new Map<string, string>();
  for (const { finding, bare } of outcomes.get(at)!) {
    for (const [check, of] of Object.entries(CHECKS)) {
      const what = of(finding.says, finding, bare);
      if (what !== null) wrong.set(check, `"${finding.says}" ${what}`);
    }
  }
  return wrong;
}

test.each([...outcomes.keys()].sort())('%s', (at) => {
  const wrong = [...wrongWith(at)].filter(([check]) => !isExcepted(at, check)).map(([, what]) => what);
  expect(wrong).toEqual([]);
});

test('no exception is made for what is in order', () => {
  const stale = ACCEPTED.filter(({ at, check }) => !outcomes.has(at) || !wrongWith(at).has(check));
  expect(stale).toEqual([]);
});

/** Each check on a sentence that fails it, so that none can pass everything. */
test.each([
  ['whole', 'no capital and no stop', {}],
  ['tidy', 'Two  spaces are too many.', {}],
  ['filled', 'Good through {through}.', {}],
  ['plain', 'The fact aircraft.type is not on record.', {}],
  ['plain', 'The class singleEngineLand is not rated.', {}],
  ['plain', 'The number us.passenger-recency.days has no value.', {}],
  ['dated', 'Good until 2027-03-20T05:00:00Z.', {}],
  ['short', `${'Very long and '.repeat(20)}tiring.`, {}],
  ['missing', 'The flight is short of something.', { status: 'short' }],
  ['until', 'The papers are in order.', { status: 'met', until: '2027-03-20T05:00:00Z', conditions: [] }],
])('the check "%s" sees "%s"', (check, says, of) => {
  expect(CHECKS[check]!(says, of as Finding, says)).not.toBeNull();
});
