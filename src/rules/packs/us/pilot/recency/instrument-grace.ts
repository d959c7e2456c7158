import type { LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { flyTasks, passCheck } from './instrument-remedies.js';
import {
  DEVICES_SINCE,
  INSTRUMENT_PARAMETERS,
  INSTRUMENT_READS,
  instrumentState,
  type InstrumentReads,
} from './instrument-state.js';

type Branch = 'not-ifr' | 'not-lapsed' | 'open' | 'over';

/**
 * 14 CFR 61.57(d): for six calendar months after a lapse the tasks alone restore instrument experience, flown with a safety
 * pilot or in a device and never in command under instrument flight rules. Until they are flown nobody acts so.
 */
export const instrumentGrace = defineRule({
  id: 'recency.instrument.grace',
  title: 'Regaining instrument experience by its tasks',
  weight: 'law',
  binds: 'pilot',
  reads: INSTRUMENT_READS,
  parameters: INSTRUMENT_PARAMETERS,
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'not-lapsed': { status: 'not-applicable', says: 'No lapse that the tasks alone would restore.' },
    open: {
      status: 'short',
      says: 'Through {graceThrough} the tasks restore the experience that lapsed after {through}; they are not flown in command under instrument flight rules.',
    },
    over: {
      status: 'not-applicable',
      says: 'The experience lapsed after {through}, more than {grace} calendar months before the flight; the tasks alone no longer restore it.',
    },
  },
  bodies: [
    body(1, null, DEVICES_SINCE, '14 CFR 61.57(d) before 83 FR 30232', false),
    body(2, DEVICES_SINCE, null, '14 CFR 61.57(d)', true),
  ],
});

function body(
  version: number,
  from: LocalDate | null,
  to: LocalDate | null,
  text: string,
  trainingDevices: boolean,
) {
  return {
    version,
    from,
    to,
    citation: { text, status: 'seen' as const, reading: 'As for the experience itself.' },
    judge: (f: FactView<InstrumentReads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement => {
      if (f.flight.flightRules === 'VFR') return take('not-ifr');
      const type = f.get('aircraft.type');
      if (type.category === 'glider') return take('not-lapsed');
      const state = instrumentState(f, moment, p, trainingDevices);
      const { numbers } = state;
      if (state.kind === 'over') return take('over', { through: state.through, grace: numbers.graceMonths });
      if (state.kind !== 'grace') return take('not-lapsed');
      const { through, graceThrough } = state;
      return take(
        'open',
        { through, graceThrough },
        {
          remedies: () => [
            ...flyTasks(type, moment, numbers),
            ...passCheck(type, moment, numbers),
            CHANGE_TO_VFR,
          ],
        },
      );
    },
  };
}
