import type { LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { passCheck } from './instrument-remedies.js';
import {
  DEVICES_SINCE,
  INSTRUMENT_PARAMETERS,
  INSTRUMENT_READS,
  instrumentState,
  type InstrumentReads,
} from './instrument-state.js';

type Branch = 'not-ifr' | 'not-needed' | 'passed' | 'needed' | 'none-shown';

/**
 * 14 CFR 61.57(d): instrument experience that lapsed more than six calendar months ago is restored by an instrument
 * proficiency check and by nothing else. A check is not a flight review unless it was given as one.
 */
export const instrumentCheck = defineRule({
  id: 'recency.instrument.ipc',
  title: 'Instrument proficiency check',
  weight: 'law',
  binds: 'pilot',
  reads: INSTRUMENT_READS,
  parameters: INSTRUMENT_PARAMETERS,
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'not-needed': { status: 'not-applicable', says: 'No instrument proficiency check is needed.' },
    passed: { status: 'met', says: 'Instrument proficiency check on {on}.' },
    needed: {
      status: 'short',
      says: 'Instrument experience lapsed after {through}, more than {grace} calendar months before the flight; an instrument proficiency check is needed.',
    },
    'none-shown': {
      status: 'short',
      says: 'The record never shows instrument experience; an instrument proficiency check settles it.',
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
    citation: {
      text,
      status: 'seen' as const,
      reading:
        'As for the experience itself. Where the record shows no earlier privileges, a check is asked for.',
    },
    judge: (f: FactView<InstrumentReads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement => {
      if (f.flight.flightRules === 'VFR') return take('not-ifr');
      const type = f.get('aircraft.type');
      if (type.category === 'glider') return take('not-needed');
      const state = instrumentState(f, moment, p, trainingDevices);
      const remedies = () => [...passCheck(type, moment, state.numbers), CHANGE_TO_VFR];
      switch (state.kind) {
        case 'none':
          return take('none-shown', {}, { remedies });
        case 'over':
          return take('needed', { through: state.through, grace: state.numbers.graceMonths }, { remedies });
        case 'grace':
          return take('not-needed');
        case 'current':
          return state.by === 'check'
            ? take('passed', { on: state.evidence[0]!.on }, { counted: state.evidence })
            : take('not-needed');
      }
    },
  };
}
