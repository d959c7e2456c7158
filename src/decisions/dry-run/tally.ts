/** What a dry run counts, and what it gives to think about. */
import { type Answer, type Finding, type Status, type Warning } from '../../rules/index.js';

/** Flights below which the club's data say nothing. */
const TELLING = 5;

/** An answer that would have been another. */
export interface ChangedAnswer {
  decisionId: string;
  bookingId: string | null;
  memberId: string;
  memberName: string;
  aircraftId: string;
  registration: string;
  departs: string;
  askedAt: string;
  before: Answer;
  after: Answer;
  /** What the rule says of the flight. */
  status: Status;
  says: string;
}

/** How often an answer turns into another. */
export interface AnswerChange {
  before: Answer;
  after: Answer;
  count: number;
}

/** Another rule of the club, judged on the same flights. */
interface Beside {
  code: string;
  title: string;
  bothAsk: number;
  thisHeld: number;
  otherHeld: number;
  bothHeld: number;
}

/** Counts over the decisions looked at. */
export class Tally {
  readonly verdicts: Record<Status, number> = { met: 0, short: 0, unknown: 0, 'not-applicable': 0, error: 0 };
  readonly changed: ChangedAnswer[] = [];
  private readonly reasons = new Map<string, number>();
  private readonly beside = new Map<string, Beside>();

  constructor(others: readonly { code: string; title: string }[]) {
    for (const { code, title } of others)
      this.beside.set(code, { code, title, bothAsk: 0, thisHeld: 0, otherHeld: 0, bothHeld: 0 });
  }

  /** Counts what the rule says of a flight, and what the other rules of the club say. */
  see(finding: Finding, others: readonly Finding[]): void {
    this.verdicts[finding.status] += 1;
    if (finding.status === 'unknown' || finding.status === 'error')
      this.reasons.set(finding.says, (this.reasons.get(finding.says) ?? 0) + 1);
    if (!judges(finding)) return;
    for (const other of others) {
      const counts = this.beside.get(other.rule);
      if (!counts || !judges(other)) continue;
      const [held, otherHeld] = [finding.status === 'met', other.status === 'met'];
      counts.bothAsk += 1;
      counts.thisHeld += held ? 1 : 0;
      counts.otherHeld += otherHeld ? 1 : 0;
      counts.bothHeld += held && otherHeld ? 1 : 0;
    }
  }

  /** Changed answers by what they were and what they become, most first. */
  changes(): AnswerChange[] {
    const counts = new Map<string, AnswerChange>();
    for (const { before, after } of this.changed) {
      const key = `${before} ${after}`;
      const one = counts.get(key) ?? { before, after, count: 0 };
      counts.set(key, { ...one, count: one.count + 1 });
    }
    return [...counts.values()].sort((a, b) => b.count - a.count || (a.before < b.before ? -1 : 1));
  }

  /** What the club's own data give to think about. */
  warnings(): Warning[] {
    const { met, short, unknown, error } = this.verdicts;
    const looked = Object.values(this.verdicts).reduce((sum, count) => sum + count, 0);
    const asked = looked - this.verdicts['not-applicable'];
    if (looked === 0) return [];
    const warn = (code: Warning['code'], says: string, otherRule: string | null = null): Warning => ({
      code,
      says,
      otherRule,
    });
    if (asked === 0) return [warn('never-applied', `It applied to none of the ${looked} flights looked at.`)];
    const found: Warning[] = [];
    if (met === asked) found.push(warn('never-failed', `All ${asked} flights it applied to met it.`));
    if (short === asked && asked >= TELLING)
      found.push(warn('never-held', `None of the ${asked} flights it applied to met it.`));
    const open = unknown + error;
    if (open * 2 > asked) {
      const [reason] = [...this.reasons].sort((a, b) => b[1] - a[1])[0]!;
      found.push(
        warn(
          'mostly-unknown',
          `On ${open} of the ${asked} flights it applied to it cannot be told. Most often: ${reason}`,
        ),
      );
    }
    for (const one of this.beside.values()) {
      if (one.bothAsk < TELLING || one.bothHeld > 0 || one.thisHeld === 0 || one.otherHeld === 0) continue;
      const says = `Of ${one.bothAsk} flights that it and '${one.title}' (${one.code}) both applied to, none met both.`;
      found.push(warn('never-both-held', says, one.code));
    }
    return found;
  }
}

/** Did the rule come to a yes or no on this flight? */
const judges = ({ status }: Finding): boolean => status === 'met' || status === 'short';
