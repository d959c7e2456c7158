import type { LocalDate } from '../calendar/dates.js';

/**
 * One dated version of a rule that the club wrote itself, as data: expressions in CEL over the published schema
 * (src/rules/club-rules/schema). Versions of one code do not overlap in time.
 */
export interface ClubRule {
  /** 'club.own.first-flight'. Decisions name the rule by it, so it is never given to another rule. */
  code: string;
  /** Counts the versions of the code, from 1. */
  version: number;
  title: string;
  /** The same in all versions of a code. */
  weight: 'club' | 'advice';
  /** Yes-or-no expression: flights of which the rule asks something. 'true' for all. */
  appliesWhen: string;
  /** Yes-or-no expression: what it asks. */
  requirement: string;
  /** What a member reads where the requirement is not met; `{expressions}` in braces are filled in. */
  message: string;
  /**
   * Told as a condition instead of a refusal where the rule hangs on nothing but what is told shortly before departure
   * (weather, loading) and that is not told yet. Null: then it refuses.
   */
  condition: string | null;
  /** The club paper that says so. */
  document: string;
  /** First day it holds, in the club's zone. */
  from: LocalDate;
  /** First day it no longer holds; null = still. */
  to: LocalDate | null;
}
