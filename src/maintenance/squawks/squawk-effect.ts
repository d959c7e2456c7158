/** What one squawk does to a flight: the rules of the aircraft asked with it and without it. */
import { judge, type FactSheet, type Finding, type Policy, type SquawkFact } from '../../rules/index.js';

/** no: it stops the flight. unknown: because of it the flight cannot be said yes to. conditions: it may go, if. none: nothing. */
export type EffectVerdict = 'no' | 'unknown' | 'conditions' | 'none';

export interface SquawkEffect {
  verdict: EffectVerdict;
  /** What the rules say because of it. */
  says: { rule: string; title: string; says: string }[];
  /** What has to be done or looked at because of it. */
  conditions: string[];
}

/** The sheet as if nobody had reported it. */
export const without = (sheet: FactSheet, squawkId: string): FactSheet =>
  withSquawks(sheet, (squawks) => squawks.filter(({ id }) => id !== squawkId));

/** The sheet with the squawk as it would be. */
export const amended = (sheet: FactSheet, squawkId: string, as: Partial<SquawkFact>): FactSheet =>
  withSquawks(sheet, (squawks) => squawks.map((one) => (one.id === squawkId ? { ...one, ...as } : one)));

/** Judges the flight twice. Only rules that bind the aircraft are read: who asks has nothing to do with it. */
export function effectOf(sheet: FactSheet, policy: Policy, squawkId: string): SquawkEffect {
  const before = aircraftFindings(without(sheet, squawkId), policy);
  const brought = [...aircraftFindings(sheet, policy).values()].filter((finding) => {
    const was = before.get(finding.rule);
    return was === undefined || was.status !== finding.status || was.says !== finding.says;
  });
  const stops = brought.filter(({ status }) => status === 'short');
  const open = brought.filter(({ status }) => status === 'unknown' || status === 'error');
  const conditions = [
    ...new Set(
      brought.flatMap((finding) =>
        finding.conditions.filter((one) => !before.get(finding.rule)?.conditions.includes(one)),
      ),
    ),
  ];
  const verdict =
    stops.length > 0 ? 'no' : open.length > 0 ? 'unknown' : conditions.length > 0 ? 'conditions' : 'none';
  const says = [...stops, ...open].map((finding) => ({
    ...{ rule: finding.rule, title: finding.title, says: finding.says },
  }));
  return { verdict, says, conditions };
}

function aircraftFindings(sheet: FactSheet, policy: Policy): Map<string, Finding> {
  const { findings } = judge(sheet, policy);
  return new Map(findings.filter(({ binds }) => binds === 'aircraft').map((one) => [one.rule, one]));
}

function withSquawks(sheet: FactSheet, change: (squawks: SquawkFact[]) => SquawkFact[]): FactSheet {
  const { squawks } = sheet.aircraft;
  if (!squawks.known) return sheet;
  return {
    ...sheet,
    aircraft: { ...sheet.aircraft, squawks: { ...squawks, value: change(squawks.value) } },
  };
}
