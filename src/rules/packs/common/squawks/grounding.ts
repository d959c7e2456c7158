import { localDateOf, toSeconds } from '../../../calendar/instants.js';
import { defineRule } from '../../../engine/rule.js';
import type { SquawkFact } from '../../../facts/aircraft.js';
import { isOpen } from './open.js';
import {
  flyWithEssentialCrew,
  obtainPermit,
  permitConditions,
  permitState,
} from '../permits/permit-flight.js';
import { fixSquawks } from './squawk-remedies.js';

/**
 * 14 CFR 91.7(a), 91.405(a): nobody may fly an aircraft that is not airworthy. A squawk that the coordinator found
 * grounding stops every flight, except a ferry under a permit issued after it was reported. One that nobody has looked
 * at yet is no verdict: the pilot in command decides, so it comes as a condition.
 */
export const squawkGrounding = defineRule({
  id: 'squawk.grounding',
  title: 'Open squawks',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.squawks', 'aircraft.permits'],
  parameters: [],
  branches: {
    clear: { status: 'met', says: 'No open squawk grounds the aircraft.' },
    'look-first': { status: 'met', says: 'Reported and not yet looked at: {squawks}.' },
    'under-permit': {
      status: 'met',
      says: 'Grounded by {squawks}; a special flight permit issued since covers this ferry flight.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'Grounded by {squawks}; a special flight permit carries nobody but required crew.',
    },
    grounded: { status: 'short', says: 'Grounded by {squawks}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.3(a), 91.7, 91.405(a), 21.197',
        status: 'from memory',
        reading:
          'A permit covers what was reported before the first day it holds; a later squawk was unknown to whoever issued it.',
      },
      judge(f, moment, _p, take) {
        const open = f
          .get('aircraft.squawks')
          .filter((squawk) => isOpen(squawk, moment))
          .sort((a, b) => (`${a.reportedAt} ${a.id}` < `${b.reportedAt} ${b.id}` ? -1 : 1));
        const day = (squawk: SquawkFact) => localDateOf(toSeconds(squawk.reportedAt), moment.zone);
        const words = (list: SquawkFact[]) =>
          list.map((squawk) => `"${squawk.title}" (${day(squawk)})`).join(', ');
        const count = (list: SquawkFact[]) =>
          list.map((squawk) => ({ id: squawk.id, on: day(squawk), what: squawk.title }));
        const lookAt = open
          .filter((squawk) => squawk.state === 'reported')
          .map(
            (squawk) =>
              `Look at the open squawk "${squawk.title}" with the maintenance coordinator; the pilot in command decides.`,
          );
        const grounding = open.filter((squawk) => squawk.state === 'grounding');
        if (grounding.length === 0) {
          if (lookAt.length === 0) return take('clear');
          const reported = open.filter((squawk) => squawk.state === 'reported');
          return take(
            'look-first',
            { squawks: words(reported) },
            { counted: count(reported), conditions: lookAt },
          );
        }
        const values = { squawks: words(grounding) };
        const counted = count(grounding);
        const fix = () => fixSquawks(grounding, moment);
        const permit = permitState(f, moment);
        const covers = (from: string): boolean => grounding.every((squawk) => day(squawk) < from);
        if (permit.state === 'covers' && covers(permit.permit.from)) {
          const conditions = [...permitConditions(permit.permit), ...lookAt];
          return take('under-permit', values, { counted, conditions });
        }
        if (permit.state === 'carries-others' && covers(permit.permit.from))
          return take('permit-crew-only', values, {
            counted,
            remedies: () => [flyWithEssentialCrew, ...fix()],
          });
        const permitCures = () => (covers(moment.knowledgeDate()) ? obtainPermit(f.flight, moment) : []);
        return take('grounded', values, { counted, remedies: () => [...fix(), ...permitCures()] });
      },
    },
  ],
});
