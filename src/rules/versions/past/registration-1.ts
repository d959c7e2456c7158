import { addDays, throughCalendarMonths, type LocalDate } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import type { Remedy } from '../../engine/remedy.js';
import { defineRule, type Take } from '../../engine/rule.js';
import type { RegistrationFact } from '../../facts/aircraft.js';

type Branch = 'valid' | 'expired' | 'ended' | 'none';

/** Registration terms in years, and the day on which those in force were extended. */
interface RegistrationTerms {
  years: number;
  yearsBefore: number;
  extendedOn: LocalDate;
}

/**
 * Last date a certificate is good for: so many years, to the end of the month of issue. One in force on the day of the
 * extension got the longer term whatever is printed on it; one already expired did not. On one issued later an earlier
 * printed date is taken (strict reading).
 */
function registrationThrough(one: RegistrationFact, terms: RegistrationTerms): LocalDate {
  const longer = throughCalendarMonths(one.issuedOn, terms.years * 12);
  const printed = one.printedExpiryOn;
  if (one.issuedOn >= terms.extendedOn) return printed !== null && printed < longer ? printed : longer;
  const before = printed ?? throughCalendarMonths(one.issuedOn, terms.yearsBefore * 12);
  return before >= terms.extendedOn ? longer : before;
}

/** The newest certificate issued by the time of the flight; of two of one day the one that gives less. */
function governing(
  certificates: readonly RegistrationFact[],
  moment: Moment,
  throughOf: (one: RegistrationFact) => LocalDate,
): RegistrationFact | undefined {
  const order = (one: RegistrationFact): string => {
    const through = throughOf(one);
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
  throughOf: (one: RegistrationFact) => LocalDate,
  take: Take<Branch>,
) {
  const found = governing(certificates, moment, throughOf);
  const remedies = () => renewRegistration(moment);
  if (!found) return take('none', {}, { remedies });
  const through = throughOf(found);
  const counted = [{ id: found.id, on: found.issuedOn, what: `certificate, good through ${through}` }];
  if (found.endedOn !== null && !moment.endsOnOrBefore(addDays(found.endedOn, -1)))
    return take('ended', { on: found.endedOn }, { counted, remedies });
  if (moment.endsOnOrBefore(through)) return take('valid', { issued: found.issuedOn, through }, { counted });
  return take('expired', { issued: found.issuedOn, through }, { counted, remedies });
}

function renewRegistration(moment: Moment): Remedy[] {
  const today = moment.knowledgeDate();
  if (!moment.startsOnOrAfter(today)) return [];
  const issued: RegistrationFact = {
    id: 'planned:renew-registration',
    issuedOn: today,
    printedExpiryOn: null,
    endedOn: null,
  };
  return [
    {
      act: 'renew-registration',
      title: 'Renew the registration of the aircraft.',
      by: 'administrator',
      effects: [{ op: 'append', fact: 'aircraft.registration', value: issued }],
    },
  ];
}

/**
 * 14 CFR 91.203(a)(2), 47.40, 47.41: an effective registration certificate. Seven years to the end of the month since
 * 2023-01-23, three before; it also ends on sale, cancellation and the like.
 */
export const registrationValidity1 = defineRule({
  id: 'registration.validity',
  title: 'Registration',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.registration'],
  parameters: [
    'us.registration.years',
    'us.registration.years-before-extension',
    'us.registration.extended-on',
  ],
  branches: {
    valid: { status: 'met', says: 'Registration certificate of {issued}, good through {through}.' },
    expired: {
      status: 'short',
      says: 'The registration certificate of {issued} was good through {through} only.',
    },
    ended: { status: 'short', says: 'The registration ended on {on} (sale, cancellation or the like).' },
    none: { status: 'short', says: 'No registration certificate issued before the flight is on record.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: '2023-01-23',
      citation: {
        text: '14 CFR 91.203(a)(2), 47.40 (2010)',
        status: 'seen',
        reading: 'The printed date governs; without one, three years to the end of the month of issue.',
      },
      judge(f, moment, p, take) {
        const months = p.number('us.registration.years') * 12;
        return judgeRegistration(
          f.get('aircraft.registration'),
          moment,
          (one) => one.printedExpiryOn ?? throughCalendarMonths(one.issuedOn, months),
          take,
        );
      },
    },
    {
      version: 2,
      from: '2023-01-23',
      to: null,
      citation: {
        text: '14 CFR 91.203(a)(2), 47.40, 47.41; 87 FR 71210',
        status: 'seen',
        reading:
          'Certificates in force on 2023-01-23 run seven years from issue whatever is printed on them. The newest ' +
          'certificate governs, so a sale ends the registration even if an older one still shows a later date.',
      },
      judge(f, moment, p, take) {
        const terms: RegistrationTerms = {
          years: p.number('us.registration.years'),
          yearsBefore: p.number('us.registration.years-before-extension'),
          extendedOn: p.text('us.registration.extended-on'),
        };
        return judgeRegistration(
          f.get('aircraft.registration'),
          moment,
          (one) => registrationThrough(one, terms),
          take,
        );
      },
    },
  ],
});
