import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../engine/rule.js';
import type { RegistrationFact } from '../../../facts/aircraft.js';
import { registrationValidity1 } from '../../../versions/past/registration-1.js';
import { wouldServe } from '../../common/people/plans.js';
import { REGISTRATION_TERMS, throughBeforeExtension, throughSinceExtension } from './registration-terms.js';

type Branch = 'valid' | 'without-end' | 'expired' | 'ended' | 'none';

/** Good through a day; null is without end. */
type Through = (one: RegistrationFact) => LocalDate | null;

/** The newest certificate issued by the time of the flight; of two of one day the one that gives less. */
function governing(
  certificates: readonly RegistrationFact[],
  moment: Moment,
  throughOf: Through,
): RegistrationFact | undefined {
  const order = (one: RegistrationFact): string => {
    const through = throughOf(one) ?? '9999-12-31';
    const good = one.endedOn !== null && one.endedOn < through ? one.endedOn : through;
    return `${good} ${one.id}`;
  };
  return certificates
    .filter((one) => moment.startsOnOrAfter(one.issuedOn))
    .sort((a, b) => {
      if (a.issuedOn !== b.issuedOn) return a.issuedOn < b.issuedOn ? 1 : -1;
      return order(a) < order(b) ? -1 : 1;
    })[0];
}

function judgeRegistration(
  certificates: readonly RegistrationFact[],
  moment: Moment,
  throughOf: Through,
  take: Take<Branch>,
): Judgement {
  const found = governing(certificates, moment, throughOf);
  const remedies = () => renewRegistration(moment, throughOf);
  if (!found) return take('none', {}, { remedies });
  const through = throughOf(found);
  const what = through === null ? 'certificate without an end date' : `certificate, good through ${through}`;
  const counted = [{ id: found.id, on: found.issuedOn, what }];
  if (found.endedOn !== null && !moment.endsOnOrBefore(addDays(found.endedOn, -1)))
    return take('ended', { on: found.endedOn }, { counted, remedies });
  if (through === null) return take('without-end', { issued: found.issuedOn }, { counted });
  const values = { issued: found.issuedOn, through };
  if (moment.endsOnOrBefore(through)) return take('valid', values, { counted });
  return take('expired', values, { counted, remedies });
}

function renewRegistration(moment: Moment, throughOf: Through): Remedy[] {
  const issuedOn = moment.knowledgeDate();
  const planned = { id: 'planned:renew-registration', issuedOn, printedExpiryOn: null, endedOn: null };
  if (!wouldServe(moment, () => throughOf(planned) ?? '9999-12-31')) return [];
  return [
    {
      act: 'renew-registration',
      title: 'Renew the registration of the aircraft.',
      by: 'administrator',
      effects: [{ op: 'append', fact: 'aircraft.registration', value: planned }],
    },
  ];
}

const judgeBy =
  (throughOf: (p: Parameters) => Through) =>
  (f: FactView<'aircraft.registration'>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
    judgeRegistration(f.get('aircraft.registration'), moment, throughOf(p), take);

/**
 * 14 CFR 91.203(a)(2), 47.40, 47.41: an effective registration certificate. Without an end date until 2010-10-01; three
 * years to the end of the month from then, seven since 2023-01-23. It also ends on sale, cancellation and the like.
 */
export const registrationValidity = defineRule({
  id: 'registration.validity',
  title: 'Registration',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.registration'],
  parameters: REGISTRATION_TERMS,
  branches: {
    valid: { status: 'met', says: 'Registration certificate of {issued}, good through {through}.' },
    'without-end': { status: 'met', says: 'Registration certificate of {issued}; it has no end date.' },
    expired: {
      status: 'short',
      says: 'The registration certificate of {issued} was good through {through} only.',
    },
    ended: { status: 'short', says: 'The registration ended on {on} (sale, cancellation or the like).' },
    none: { status: 'short', says: 'No registration certificate issued before the flight is on record.' },
  },
  bodies: [
    {
      version: 3,
      from: null,
      to: '2010-10-01',
      citation: {
        text: '14 CFR 91.203(a)(2), 47.41 before 75 FR 41968',
        status: 'seen',
        reading:
          'A certificate had no end date before 2010-10-01; one that is printed on it governs all the same.',
      },
      judge: judgeBy(
        () =>
          ({ printedExpiryOn }) =>
            printedExpiryOn,
      ),
    },
    {
      version: 4,
      from: '2010-10-01',
      to: '2023-01-23',
      citation: {
        text: '14 CFR 91.203(a)(2), 47.40, 47.41; 75 FR 41968',
        status: 'seen',
        reading:
          'The printed date governs; without one, three years to the end of the month of issue, or for a certificate ' +
          'issued before 2010-10-01 the day in the schedule of re-registration.',
      },
      judge: judgeBy(throughBeforeExtension),
    },
    {
      version: 5,
      from: '2023-01-23',
      to: null,
      citation: {
        text: '14 CFR 91.203(a)(2), 47.40, 47.41; 87 FR 71210',
        status: 'seen',
        reading:
          'Certificates in force on 2023-01-23 run seven years from issue whatever is printed on them. The newest ' +
          'certificate governs, so a sale ends the registration even if an older one still shows a later date.',
      },
      judge: judgeBy(throughSinceExtension),
    },
  ],
  superseded: [registrationValidity1 as never],
  changed:
    'Before 2010-10-01 a certificate had no end date, and one issued before then ended by the schedule of re-registration; both were judged by three years.',
});
