/**
 * The ten rules as one function, written as a programmer in a hurry for speed would: dates as text, no evidence, no ways
 * to yes, no dated law, no horizon. In scope: US flights after January 2023, airplanes, holders of a private or higher
 * certificate, no second pilot, no ferry flight.
 */
import {
  addDays,
  ageOn,
  localDateOf,
  throughCalendarMonths,
  toSeconds,
} from '../../../dist/src/rules/index.js';
import { aheadOf, lasting, limitationsSince, NUMBERS, PRIVILEGES, REVIEW_SUBSTITUTES } from './ten-rules.mjs';

const N = NUMBERS;

/** Makes the function; `words` are the sentences. It gives { rule, status, says, conditions } ten times. */
export function byHand(words) {
  return (sheet, departs) => {
    const { flight, aircraft, zone } = sheet;
    const duration = Math.max(0, toSeconds(flight.arrives) - toSeconds(flight.departs));
    const startsOn = localDateOf(departs, zone);
    const endsOn = localDateOf(departs + duration, zone);
    const instruction = flight.purpose === 'dual' || flight.purpose === 'checkout';
    const picId = instruction ? flight.instructorId : flight.memberId;
    const pic = picId === null ? null : (sheet.people[picId] ?? undefined);
    const aboard = flight.personsOnBoard;
    const passengers = Math.max(0, aboard - (instruction ? 2 : 1));
    const verdicts = [];
    const say = (rule, status, branch, values, conditions = []) =>
      verdicts.push({ rule, status, says: words[rule][branch](values), conditions });
    const cannotTell = (rule, because) =>
      verdicts.push({ rule, status: 'unknown', says: `Cannot tell: ${because}.`, conditions: [] });
    /** What is missing of the pilot in command and the aircraft, first things first; null when all is there. */
    const missing = (ofPic, ofAircraft = []) => {
      for (const fact of ofAircraft) if (!aircraft[fact].known) return aircraft[fact].because;
      for (const fact of ofPic) {
        if (pic === null) return 'the pilot in command is not named';
        if (pic === undefined) return 'nothing is on record for the pilot in command';
        if (!pic[fact].known) return pic[fact].because;
      }
      return null;
    };
    const type = aircraft.type.value;

    // Take-offs and landings to carry passengers
    {
      const rule = 'recency.passengers.day';
      const gap = passengers > 0 ? missing(['log'], ['type']) : null;
      if (passengers === 0) say(rule, 'not-applicable', 'nobody-carried', {});
      else if (gap !== null) cannotTell(rule, gap);
      else {
        const { days, needed } = N.recency;
        const oldest = addDays(endsOn, -days);
        const recent = [];
        for (const entry of pic.log.value) {
          if (!entry.soleManipulator || entry.device !== null || entry.on < oldest) continue;
          if (entry.category !== type.category || entry.class !== type.class) continue;
          if (type.typeRating !== null && entry.typeRating !== type.typeRating) continue;
          if (type.tailwheel && !entry.tailwheel) continue;
          const landings = type.tailwheel ? entry.fullStopLandings : entry.landings;
          if (entry.takeoffs + landings === 0 || toSeconds(entry.departedAt) > departs) continue;
          recent.push({ on: entry.on, at: entry.departedAt, takeoffs: entry.takeoffs, landings });
        }
        recent.sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0));
        let takeoffs = 0;
        let landings = 0;
        let governing = '';
        for (const one of recent) {
          if (takeoffs < needed || landings < needed) governing = one.on;
          takeoffs += one.takeoffs;
          landings += one.landings;
        }
        const how = type.tailwheel ? ' to a full stop in a tailwheel airplane' : '';
        if (takeoffs >= needed && landings >= needed)
          say(rule, 'met', 'enough', { takeoffs, landings, days, through: addDays(governing, days) });
        else {
          const counts = { takeoffs: Math.min(takeoffs, needed), landings: Math.min(landings, needed) };
          say(rule, 'short', 'short', { ...counts, days, needed, how });
        }
      }
    }

    // Medical certificate
    {
      const rule = 'medical.certificate';
      const gap = missing(['medicals', 'birthDate'], ['type']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        const kind = flight.forHire ? 'second' : 'third';
        const privilege = PRIVILEGES[kind];
        const birthDate = pic.birthDate.value;
        const throughOf = (medical) => {
          if (medical.class > (flight.forHire ? 2 : 3)) return null;
          const older = ageOn(birthDate, medical.examOn) >= N.medicalMonths.age;
          const months = flight.forHire
            ? N.medicalMonths.second
            : older
              ? N.medicalMonths.thirdOlder
              : N.medicalMonths.thirdYounger;
          return throughCalendarMonths(medical.examOn, months);
        };
        let withdrawn = null;
        for (const { withdrawnOn } of pic.medicals.value)
          if (
            withdrawnOn !== null &&
            withdrawnOn <= endsOn &&
            (withdrawn === null || withdrawnOn > withdrawn)
          )
            withdrawn = withdrawnOn;
        let best = null;
        let newest = null;
        for (const medical of pic.medicals.value) {
          if (medical.examOn > startsOn) continue;
          if (
            newest === null ||
            medical.examOn > newest.examOn ||
            (medical.examOn === newest.examOn && medical.class < newest.class)
          )
            newest = medical;
          const through = throughOf(medical);
          if (through === null || endsOn > through) continue;
          if (withdrawn !== null && medical.examOn < withdrawn) continue;
          const order = `${through} ${medical.examOn}`;
          if (best === null || order > best.order || (order === best.order && medical.id < best.medical.id))
            best = { medical, through, order };
        }
        if (best) {
          const { medical, through } = best;
          say(
            rule,
            'met',
            'valid',
            { class: medical.class, examOn: medical.examOn, privilege, through },
            limitationsSince(medical, pic.medicals.value, startsOn).map(
              (one) => `Keep to the limitation on the medical certificate: ${one.replace(/\.$/, '')}.`,
            ),
          );
        } else if (!pic.basicMed.known) cannotTell(rule, pic.basicMed.because);
        else if (pic.basicMed.value.some(({ examOn, courseOn }) => examOn !== null || courseOn !== null))
          say(rule, 'not-applicable', 'relies-on-basicmed', {});
        else {
          let why = '';
          if (newest && withdrawn !== null && newest.examOn < withdrawn)
            why = `; the last was withdrawn on ${withdrawn}`;
          else if (newest) {
            const through = throughOf(newest);
            why =
              through === null
                ? `; a class ${newest.class} certificate never does`
                : `; the one of ${newest.examOn} ran to ${through}`;
          }
          say(rule, 'short', 'none', { privilege, why });
        }
      }
    }

    // Flight review
    {
      const rule = 'review.flight_24_months';
      const gap = missing(['reviews']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        const { months, groundTenths, flightTenths } = N.review;
        const recent = pic.reviews.value.filter(
          ({ on }) => on <= startsOn && endsOn <= throughCalendarMonths(on, months),
        );
        let renewal = null;
        for (const { kind, on } of recent)
          if (kind === 'instructor-renewal' && (renewal === null || on > renewal)) renewal = on;
        let best = null;
        let scant = false;
        let unclear = null;
        for (const review of recent) {
          let since = null;
          let what = REVIEW_SUBSTITUTES[review.kind];
          if (what) since = review.on;
          else if (
            review.kind === 'flight-review' ||
            (review.kind === 'instrument-proficiency-check' && review.endorsedAsReview)
          ) {
            what = review.kind === 'flight-review' ? 'flight review' : 'proficiency check endorsed as review';
            const flown = review.flightTenths === null ? null : review.flightTenths >= flightTenths;
            const taught = review.groundTenths === null ? null : review.groundTenths >= groundTenths;
            if (flown && taught) since = review.on;
            else if (flown && renewal !== null) since = renewal < review.on ? renewal : review.on;
            else if (
              flown !== false &&
              (flown === null || taught === null) &&
              !(taught === false && renewal === null) &&
              (unclear === null || review.id < unclear.id)
            )
              unclear = review;
          }
          if (review.kind === 'flight-review') scant = true;
          if (since === null) continue;
          const through = throughCalendarMonths(since, months);
          if (
            best === null ||
            through > best.through ||
            (through === best.through && review.id < best.review.id)
          )
            best = { review, what, through };
        }
        if (best)
          say(rule, 'met', 'reviewed', { what: best.what, on: best.review.on, through: best.through });
        else if (unclear)
          cannotTell(rule, `the hours of the flight review of ${unclear.on} are not on record`);
        else
          say(rule, 'short', 'due', {
            months,
            why: scant ? '; the one on record was shorter than an hour on the ground or in the air' : '',
          });
      }
    }

    // Annual inspection
    {
      const rule = 'inspection.annual';
      const gap = missing([], ['items']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        let first = null;
        let done = null;
        for (const item of aircraft.items.value) {
          if (item.kind !== 'annual') continue;
          first = item;
          if (item.lastDoneOn === null || item.lastDoneOn > startsOn) continue;
          if (done === null || item.lastDoneOn > done) done = item.lastDoneOn;
        }
        if (first === null) cannotTell(rule, 'no annual inspection is on record for the aircraft');
        else if (done === null)
          say(rule, 'short', 'overdue', { last: 'none is on record before the flight' });
        else {
          const through = throughCalendarMonths(done, N.annualMonths);
          if (endsOn <= through) say(rule, 'met', 'current', { on: done, through });
          else
            say(rule, 'short', 'overdue', { last: `the last one, of ${done}, was good through ${through}` });
        }
      }
    }

    // Registration
    {
      const rule = 'registration.validity';
      const gap = missing([], ['registration']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        let found = null;
        for (const one of aircraft.registration.value) {
          if (one.issuedOn > startsOn) continue;
          const printed = one.printedExpiryOn;
          const longer = throughCalendarMonths(one.issuedOn, N.registration.months);
          let through;
          if (one.issuedOn >= N.registration.extendedOn)
            through = printed !== null && printed < longer ? printed : longer;
          else {
            const before = printed ?? throughCalendarMonths(one.issuedOn, N.registration.monthsBefore);
            through = before >= N.registration.extendedOn ? longer : before;
          }
          const good = one.endedOn !== null && one.endedOn < through ? one.endedOn : through;
          const order = `${good} ${one.id}`;
          if (
            found === null ||
            one.issuedOn > found.one.issuedOn ||
            (one.issuedOn === found.one.issuedOn && order < found.order)
          )
            found = { one, through, order };
        }
        if (found === null) say(rule, 'short', 'none', {});
        else {
          const { one, through } = found;
          const issued = one.issuedOn;
          if (one.endedOn !== null && endsOn >= one.endedOn) say(rule, 'short', 'ended', { on: one.endedOn });
          else if (endsOn <= through) say(rule, 'met', 'valid', { issued, through });
          else say(rule, 'short', 'expired', { issued, through });
        }
      }
    }

    // Persons on board
    {
      const rule = 'load.persons';
      const gap = missing([], ['type']);
      const least = instruction ? 2 : 1;
      if (gap !== null) cannotTell(rule, gap);
      else {
        const seats = Math.min(type.seats, type.occupantsCertificated);
        if (aboard < 1) say(rule, 'short', 'nobody-flies', {});
        else if (flight.purpose === 'solo' && aboard > 1) say(rule, 'short', 'not-alone', { aboard });
        else if (aboard < least)
          say(rule, 'short', 'crew-missing', { aboard, least, why: 'learner and instructor' });
        else if (aboard > seats) say(rule, 'short', 'too-many', { aboard, seats });
        else say(rule, 'met', 'seated', { aboard, seats });
      }
    }

    // Open squawks
    {
      const rule = 'squawk.grounding';
      const gap = missing([], ['squawks']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        const grounding = [];
        const reported = [];
        for (const squawk of aircraft.squawks.value) {
          if (squawk.state === 'grounding') grounding.push(squawk);
          else if (squawk.state === 'reported') reported.push(squawk);
        }
        const list = grounding.length > 0 ? grounding : reported;
        if (list.length > 1)
          list.sort((a, b) => (`${a.reportedAt} ${a.id}` < `${b.reportedAt} ${b.id}` ? -1 : 1));
        const squawks = list
          .map(({ title, reportedAt }) => `"${title}" (${localDateOf(toSeconds(reportedAt), zone)})`)
          .join(', ');
        if (grounding.length > 0) say(rule, 'short', 'grounded', { squawks });
        else if (reported.length > 0)
          say(
            rule,
            'met',
            'look-first',
            { squawks },
            reported.map(
              ({ title }) =>
                `Look at the open squawk "${title}" with the maintenance coordinator; the pilot in command decides.`,
            ),
          );
        else say(rule, 'met', 'clear', {});
      }
    }

    // Checkout in the model
    {
      const rule = 'club.model_checkout';
      const gap = missing(['checkouts'], ['type']);
      if (gap !== null) cannotTell(rule, gap);
      else {
        let best = null;
        for (const one of pic.checkouts.value) {
          if (one.kind !== 'model' || one.modelId !== type.modelId || one.on > startsOn) continue;
          if (one.expiresOn !== null && endsOn > one.expiresOn) continue;
          const order = `${one.expiresOn ?? '9999-12-31'} ${one.on} ${one.id}`;
          if (best === null || order > best.order) best = { one, order };
        }
        const model = type.makeModel;
        if (best === null) say(rule, 'short', 'not-checked-out', { model });
        else {
          const { on, expiresOn } = best.one;
          const through = expiresOn === null ? '' : `, good through ${expiresOn}`;
          say(rule, 'met', 'checked-out', { model, on, through });
        }
      }
    }

    // Standing with the club
    {
      const rule = 'club.standing';
      const fact = sheet.people[flight.memberId]?.standing;
      if (!fact) cannotTell(rule, 'nothing is on record for the member');
      else if (!fact.known) cannotTell(rule, fact.because);
      else {
        const { state, since } = fact.value;
        const days = N.arrearsDays;
        if (state === 'good' || endsOn < since) say(rule, 'met', 'good', { ahead: aheadOf(state, since) });
        else if (state === 'suspended') say(rule, 'short', 'suspended', { since });
        else {
          const through = addDays(since, days);
          if (endsOn <= through) say(rule, 'met', 'tolerated', { since, through });
          else say(rule, 'short', 'arrears', { since, days });
        }
      }
    }

    // Length of the booking
    {
      const rule = 'club.booking_length';
      if (flight.purpose === 'maintenance') say(rule, 'not-applicable', 'maintenance', {});
      else {
        const trip = !instruction && flight.route.some((field) => field.id !== flight.route[0]?.id);
        const { localHours, tripDays, instructionHours } = N.booking;
        const hours = instruction ? instructionHours : trip ? tripDays * 24 : localHours;
        const limit = trip ? `${tripDays} days` : `${hours} h`;
        const kind = instruction
          ? 'for instruction'
          : trip
            ? 'for a trip'
            : 'for a flight that lands nowhere else';
        const within = duration <= hours * 3600;
        say(rule, within ? 'met' : 'short', within ? 'within' : 'too-long', {
          length: lasting(duration),
          limit,
          kind,
        });
      }
    }
    return verdicts;
  };
}
