import type { LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import { instrumentRecency1 } from '../../../../versions/past/instrument-1.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { flyTasks, flyTasksInTime, passCheck } from './instrument-remedies.js';
import {
  DEVICES_SINCE,
  INSTRUMENT_PARAMETERS,
  INSTRUMENT_READS,
  instrumentState,
  type InstrumentReads,
} from './instrument-state.js';

type Branch =
  'not-ifr' | 'by-tasks' | 'by-check' | 'lapsed-regain-by-tasks' | 'lapsed-check-needed' | 'none-shown';

/**
 * 14 CFR 61.57(c) and (d): to act as pilot in command under instrument flight rules, six approaches, holding, and
 * intercepting and tracking within the six calendar months before the month of flight, in the category or a device that
 * stands for it. Lapsed for up to six more, the same tasks restore it (never while acting as pilot in command under
 * IFR); lapsed for longer, only an instrument proficiency check does.
 */
export const instrumentRecency = defineRule({
  id: 'recency.instrument',
  title: 'Recent instrument experience',
  weight: 'law',
  binds: 'pilot',
  reads: INSTRUMENT_READS,
  parameters: INSTRUMENT_PARAMETERS,
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'by-tasks': {
      status: 'met',
      says: 'Instrument approaches, holding and tracking are recent enough; good through {through}.',
    },
    'by-check': {
      status: 'met',
      says: 'An instrument proficiency check on {on} serves; good through {through}.',
    },
    'lapsed-regain-by-tasks': {
      status: 'short',
      says: 'Instrument experience in {category}s lapsed after {through}; flying {approaches} approaches, holding and tracking with a safety pilot or in a device restores it until {graceThrough}.',
    },
    'lapsed-check-needed': {
      status: 'short',
      says: 'Instrument experience in {category}s lapsed after {through}, more than {grace} calendar months before the flight, when only an instrument proficiency check restores it.',
    },
    'none-shown': {
      status: 'short',
      says: 'The record shows no {approaches} approaches, holding and tracking within {months} calendar months in {category}s, and no instrument proficiency check.',
    },
  },
  bodies: [
    body(2, null, DEVICES_SINCE, '14 CFR 61.57(c), (d) before 83 FR 30232', false),
    body(3, DEVICES_SINCE, null, '14 CFR 61.57(c), (d); 83 FR 30232', true),
  ],
  superseded: [instrumentRecency1 as never],
  changed:
    'Before 2018-11-26 tasks in an aviation training device no longer count, and of a glider, which has terms of its own, nothing is said.',
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
        'Tasks in the month of the flight count, though the text speaks of the months preceding it (common practice). Only tasks flown as sole manipulator count. A set flown more than six calendar months after a lapse restores nothing. Where the record shows no earlier privileges, a check is asked for. A practical test is not taken for its tasks; log them.' +
        (trainingDevices
          ? ''
          : ' Time in an aviation training device is not counted: what it had to hold is not in the log. Other devices are taken to have been flown with an instructor.'),
    },
    judge: (f: FactView<InstrumentReads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, trainingDevices),
  };
}

function judge(
  f: FactView<InstrumentReads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  trainingDevices: boolean,
): Judgement {
  if (f.flight.flightRules === 'VFR') return take('not-ifr');
  const type = f.get('aircraft.type');
  if (type.category === 'glider')
    need(null, 'pic.log', 'the instrument experience for gliders (14 CFR 61.57(c)) is not kept');
  const state = instrumentState(f, moment, p, trainingDevices);
  const { numbers } = state;
  const { months, approaches, graceMonths: grace } = numbers;
  const values = { category: type.category, months, approaches, grace };
  const check = () => [...passCheck(type, moment, numbers), CHANGE_TO_VFR];
  switch (state.kind) {
    case 'none':
      return take('none-shown', values, { remedies: check });
    case 'current': {
      const { through, by, evidence: counted } = state;
      return by === 'tasks'
        ? take('by-tasks', { through }, { counted })
        : take('by-check', { through, on: counted[0]!.on }, { counted });
    }
    case 'grace':
      return take(
        'lapsed-regain-by-tasks',
        { ...values, through: state.through, graceThrough: state.graceThrough },
        { remedies: () => [...flyTasks(type, moment, numbers), ...check()] },
      );
    case 'over':
      return take(
        'lapsed-check-needed',
        { ...values, through: state.through },
        {
          remedies: () => [
            ...flyTasksInTime(type, moment, { ...numbers, lapsed: state.through }),
            ...check(),
          ],
        },
      );
  }
}
