/** Facts about the pilot in command, for json-rules.mjs. Each gives `unknown`: what is missing in words, or null. */
import { addDays, ageOn, throughCalendarMonths, toSeconds } from '../../../dist/src/rules/index.js';
import { limitationsSince, NUMBERS, PRIVILEGES, REVIEW_SUBSTITUTES } from './ten-rules.mjs';

const N = NUMBERS;

/** The pilot's facts by name; `unknown` when the pilot or one of them is not on record. */
async function picFacts(almanac, names, ofAircraft = []) {
  const sheet = await almanac.factValue('sheet');
  const { picId } = await almanac.factValue('crew');
  for (const name of ofAircraft)
    if (!sheet.aircraft[name].known) return { unknown: sheet.aircraft[name].because };
  if (picId === null) return { unknown: 'the pilot in command is not named' };
  const pic = sheet.people[picId];
  if (!pic) return { unknown: 'nothing is on record for the pilot in command' };
  for (const name of names) if (!pic[name].known) return { unknown: pic[name].because };
  return { unknown: null, pic, sheet, type: sheet.aircraft.type.value };
}

export const pilotFacts = {
  async recency(_params, almanac) {
    const { unknown, pic, type } = await picFacts(almanac, ['log'], ['type']);
    if (unknown !== null) return { unknown };
    const departs = await almanac.factValue('departs');
    const { days, needed } = N.recency;
    const oldest = addDays(await almanac.factValue('endsOn'), -days);
    const recent = pic.log.value
      .filter(
        (entry) =>
          entry.soleManipulator &&
          entry.device === null &&
          entry.on >= oldest &&
          entry.category === type.category &&
          entry.class === type.class &&
          (type.typeRating === null || entry.typeRating === type.typeRating) &&
          (!type.tailwheel || entry.tailwheel) &&
          toSeconds(entry.departedAt) <= departs,
      )
      .map(({ on, departedAt, takeoffs, landings, fullStopLandings }) => ({
        ...{ on, departedAt, takeoffs },
        landings: type.tailwheel ? fullStopLandings : landings,
      }))
      .filter((entry) => entry.takeoffs + entry.landings > 0)
      .sort((a, b) => (a.departedAt < b.departedAt ? 1 : a.departedAt > b.departedAt ? -1 : 0));
    let takeoffs = 0;
    let landings = 0;
    let governing = null;
    for (const entry of recent) {
      if (takeoffs < needed || landings < needed) governing = entry.on;
      takeoffs += entry.takeoffs;
      landings += entry.landings;
    }
    const how = type.tailwheel ? ' to a full stop in a tailwheel airplane' : '';
    const through = governing === null ? '' : addDays(governing, days);
    const enough = takeoffs >= needed && landings >= needed;
    const counts = {
      takeoffs: enough ? takeoffs : Math.min(takeoffs, needed),
      landings: enough ? landings : Math.min(landings, needed),
    };
    return { unknown: null, ...counts, needed, days, how, through };
  },

  async medical(_params, almanac) {
    const { unknown, pic, sheet } = await picFacts(almanac, ['medicals', 'birthDate'], ['type']);
    if (unknown !== null) return { unknown };
    const startsOn = await almanac.factValue('startsOn');
    const endsOn = await almanac.factValue('endsOn');
    const { forHire } = sheet.flight;
    const privilege = PRIVILEGES[forHire ? 'second' : 'third'];
    const throughOf = (medical) => {
      if (medical.class > (forHire ? 2 : 3)) return null;
      const { second, thirdOlder, thirdYounger, age } = N.medicalMonths;
      const older = ageOn(pic.birthDate.value, medical.examOn) >= age;
      return throughCalendarMonths(medical.examOn, forHire ? second : older ? thirdOlder : thirdYounger);
    };
    const medicals = pic.medicals.value;
    const withdrawn =
      medicals
        .map(({ withdrawnOn }) => withdrawnOn)
        .filter((on) => on !== null && on <= endsOn)
        .sort()
        .at(-1) ?? null;
    const past = medicals.filter(({ examOn }) => examOn <= startsOn);
    const [best] = past
      .map((medical) => ({ medical, through: throughOf(medical) }))
      .filter(
        ({ medical, through }) =>
          through !== null && endsOn <= through && !(withdrawn !== null && medical.examOn < withdrawn),
      )
      .map((one) => ({ ...one, order: `${one.through} ${one.medical.examOn}` }))
      .sort((a, b) =>
        a.order !== b.order ? (a.order < b.order ? 1 : -1) : a.medical.id < b.medical.id ? -1 : 1,
      );
    if (best) {
      const { medical, through } = best;
      const conditions = limitationsSince(medical, medicals, startsOn).map(
        (one) => `Keep to the limitation on the medical certificate: ${one.replace(/\.$/, '')}.`,
      );
      const { class: of, examOn } = medical;
      return { unknown: null, serves: true, class: of, examOn, privilege, through, conditions };
    }
    if (!pic.basicMed.known) return { unknown: pic.basicMed.because };
    const basicMed = pic.basicMed.value.some(({ examOn, courseOn }) => examOn !== null || courseOn !== null);
    const [newest] = past.sort((a, b) =>
      a.examOn < b.examOn ? 1 : a.examOn > b.examOn ? -1 : a.class - b.class,
    );
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
    return { unknown: null, serves: false, basicMed, privilege, why };
  },

  async review(_params, almanac) {
    const { unknown, pic } = await picFacts(almanac, ['reviews']);
    if (unknown !== null) return { unknown };
    const startsOn = await almanac.factValue('startsOn');
    const endsOn = await almanac.factValue('endsOn');
    const { months, groundTenths, flightTenths } = N.review;
    const recent = pic.reviews.value.filter(
      ({ on }) => on <= startsOn && endsOn <= throughCalendarMonths(on, months),
    );
    const renewal = recent
      .filter(({ kind }) => kind === 'instructor-renewal')
      .map(({ on }) => on)
      .sort()
      .at(-1);
    const assessed = recent.map((review) => assess(review, renewal, groundTenths, flightTenths));
    const [best] = assessed
      .filter(({ since }) => since !== null)
      .map(({ review, since, what }) => ({ review, what, through: throughCalendarMonths(since, months) }))
      .sort((a, b) =>
        a.through !== b.through ? (a.through < b.through ? 1 : -1) : a.review.id < b.review.id ? -1 : 1,
      );
    if (best) {
      const { what, review, through } = best;
      return { unknown: null, found: true, what, on: review.on, through };
    }
    const [unclear] = assessed
      .filter((one) => one.unclear)
      .sort((a, b) => (a.review.id < b.review.id ? -1 : 1));
    if (unclear)
      return { unknown: `the hours of the flight review of ${unclear.review.on} are not on record` };
    const scant = recent.some(({ kind }) => kind === 'flight-review');
    const why = scant ? '; the one on record was shorter than an hour on the ground or in the air' : '';
    return { unknown: null, found: false, months, why };
  },

  async checkout(_params, almanac) {
    const { unknown, pic, type } = await picFacts(almanac, ['checkouts'], ['type']);
    if (unknown !== null) return { unknown };
    const startsOn = await almanac.factValue('startsOn');
    const endsOn = await almanac.factValue('endsOn');
    const order = (one) => `${one.expiresOn ?? '9999-12-31'} ${one.on} ${one.id}`;
    const [best] = pic.checkouts.value
      .filter(
        ({ kind, modelId, on, expiresOn }) =>
          kind === 'model' &&
          modelId === type.modelId &&
          on <= startsOn &&
          (expiresOn === null || endsOn <= expiresOn),
      )
      .sort((a, b) => (order(a) < order(b) ? 1 : -1));
    const through = best && best.expiresOn !== null ? `, good through ${best.expiresOn}` : '';
    return { unknown: null, on: best ? best.on : null, model: type.makeModel, through };
  },
};

function assess(review, renewal, groundTenths, flightTenths) {
  const substitute = REVIEW_SUBSTITUTES[review.kind];
  if (substitute) return { review, what: substitute, since: review.on, unclear: false };
  const plain = review.kind === 'flight-review';
  const what = plain ? 'flight review' : 'proficiency check endorsed as review';
  if (!plain && !(review.kind === 'instrument-proficiency-check' && review.endorsedAsReview))
    return { review, what, since: null, unclear: false };
  const flown = review.flightTenths === null ? null : review.flightTenths >= flightTenths;
  const taught = review.groundTenths === null ? null : review.groundTenths >= groundTenths;
  if (flown && taught) return { review, what, since: review.on, unclear: false };
  if (flown && renewal !== undefined)
    return { review, what, since: renewal < review.on ? renewal : review.on, unclear: false };
  const open = flown !== false && (flown === null || taught === null);
  return { review, what, since: null, unclear: open && !(taught === false && renewal === undefined) };
}
