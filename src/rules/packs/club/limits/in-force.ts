/** Which of the limits on record bind a flight, and how they read. */
import { addDays } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Counted, FactView, Judgement, Take } from '../../../engine/rule.js';
import type { CertificateFact, LimitsFact } from '../../../facts/person.js';

/** What every judgement of limits may look at. */
export type LimitsView = FactView<'pic.limits'>;

/** Holds a flight against limits in force. */
export type LimitsJudge<B extends string> = (of: {
  limits: LimitsFact;
  f: Pick<LimitsView, 'flight' | 'crew'>;
  moment: Moment;
  p: Parameters;
  take: Take<B>;
}) => Judgement;

/** Written last, of those that have begun by the departure: a newer one stands over every older one from its first day on. */
function inForce(all: readonly LimitsFact[], setBy: LimitsFact['setBy'], moment: Moment): LimitsFact | null {
  const newestFirst = all
    .filter((one) => one.setBy === setBy)
    .sort((a, b) => (`${a.recordedAt} ${a.id}` < `${b.recordedAt} ${b.id}` ? 1 : -1));
  return newestFirst.find((one) => moment.startsOnOrAfter(one.from)) ?? null;
}

/** A student holds no pilot certificate above a student's; whoever holds one is bound through the day the instructor named. */
function isBound({ through }: LimitsFact, certificates: readonly CertificateFact[], moment: Moment): boolean {
  const rated = certificates.some(
    ({ level, issuedOn }) => level !== 'student' && moment.startsOnOrAfter(issuedOn),
  );
  return !rated || (through !== null && !moment.startsOnOrAfter(addDays(through, 1)));
}

export const PERSONAL_BRANCHES = {
  'with-instructor': {
    status: 'not-applicable',
    says: 'Instruction is given by an instructor still to be named, who decides about wind and weather.',
  },
  'none-set': { status: 'not-applicable', says: 'The pilot has set no limits of their own.' },
} as const;

/** What is common to the four rules about one's own limits. */
export const PERSONAL = { weight: 'advice', binds: 'pilot', reads: ['pic.limits'] } as const;

/** A body that holds the flight against the limits the pilot in command set. */
export function personalBody<B extends string>(judge: LimitsJudge<B>) {
  return {
    ...{ version: 1, from: null, to: null },
    citation: {
      text: 'Limits the pilot set, of the kinds of the FAA personal minimums worksheet',
      status: 'seen',
      reading:
        'They are the limits of the pilot in command: on an instruction flight the instructor’s own, since taking an instructor is the usual way to fly beyond a learner’s. The worksheet is part of “Conducting an Effective Flight Review”.',
    },
    judge(
      f: LimitsView,
      moment: Moment,
      p: Parameters,
      take: Take<B | keyof typeof PERSONAL_BRANCHES>,
    ): Judgement {
      if (f.crew.instruction && f.crew.picId === null) return take('with-instructor');
      const limits = inForce(f.get('pic.limits'), 'member', moment);
      return limits ? judge({ limits, f, moment, p, take }) : take('none-set');
    },
  } as const;
}

export const STUDENT_BRANCHES = {
  'with-instructor': {
    status: 'not-applicable',
    says: 'Instruction is given, and the instructor aboard decides about wind and weather.',
  },
  'none-set': { status: 'not-applicable', says: 'No instructor has set limits for this pilot.' },
  'not-bound': {
    status: 'not-applicable',
    says: 'The pilot is no student any more, and the instructor’s limits of {from} do not reach to this flight.',
  },
} as const;

/** What is common to the four rules about limits an instructor set. */
export const STUDENT = {
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.limits', 'pic.certificates'],
} as const;

/** A body that holds a student's flight without an instructor against the limits an instructor set. */
export function studentBody<B extends string>(judge: LimitsJudge<B>) {
  return {
    ...{ version: 1, from: null, to: null },
    citation: {
      text: 'Limits an instructor set for a student; compare 14 CFR 61.89(a)(8)',
      status: 'seen',
      reading:
        'They bind while the pilot holds no certificate above a student’s, and after that through the day the instructor named. What an instructor wrote into the logbook is law besides; this record is not the logbook, so it is a club rule. With an instructor aboard they do not bind.',
    },
    judge(
      f: FactView<'pic.limits' | 'pic.certificates'>,
      moment: Moment,
      p: Parameters,
      take: Take<B | keyof typeof STUDENT_BRANCHES>,
    ): Judgement {
      if (f.crew.instruction) return take('with-instructor');
      const limits = inForce(f.get('pic.limits'), 'instructor', moment);
      if (!limits) return take('none-set');
      if (!isBound(limits, f.get('pic.certificates'), moment))
        return take('not-bound', { from: limits.from });
      return judge({ limits, f, moment, p, take });
    },
  } as const;
}

/** The limits as evidence. */
export const countedLimits = ({ id, from }: LimitsFact): Counted => ({ id, on: from, what: 'limits set' });

/** 'XQNM and XQRD': the other airfields of a route, whose weather the member does not tell; empty for a local flight. */
export function elsewhere({ flight }: Pick<LimitsView, 'flight'>): string {
  const home = flight.route[0]?.code;
  const codes = [...new Set(flight.route.map(({ code }) => code))].filter((code) => code !== home);
  return codes.join(' and ');
}
