/** Fact sheets to judge: a realistic one many times over, and varied ones that reach most branches of the ten rules. */
import { addDays, known, unknownFact } from '../../../dist/src/rules/index.js';
import { baseSheet, HOME_FIELD } from '../../../dist/src/rules/workshop/base-sheet.js';
import { CHECKOUT, ITEM, LOG, MEDICAL, REVIEW, SQUAWK } from '../../../dist/src/rules/workshop/records.js';

const ELSEWHERE = { ...HOME_FIELD, id: 'airfield-away', code: 'XQAW', longitudeDeg: -104 };

/** Numbers from a seed, so that every run judges the same sheets. */
export function drawFrom(seed) {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
  return {
    upTo: (most) => Math.floor(next() * (most + 1)),
    oneOf: (list) => list[Math.floor(next() * list.length)],
    chance: (share) => next() < share,
  };
}

/** Sixty flights, the newest `newest` days before the flight, one every `every` days. */
function logOf(draw, sheet, newest, every) {
  const day = sheet.flight.departs.slice(0, 10);
  return Array.from({ length: 60 }, (_, index) => {
    const on = addDays(day, -(newest + index * every + draw.upTo(1)));
    const landings = draw.upTo(2);
    return {
      ...LOG,
      id: `log-${index + 1}`,
      on,
      departedAt: `${on}T${10 + draw.upTo(8)}:00:00Z`,
      soleManipulator: draw.chance(0.9),
      takeoffs: landings,
      landings,
      fullStopLandings: Math.min(1, landings),
    };
  });
}

/** A private pilot with a log of sixty flights takes two friends; `index` moves the log and the hour. */
export function realisticSheet(index) {
  const draw = drawFrom(1000 + index);
  const sheet = baseSheet();
  const hour = String(15 + (index % 6));
  sheet.flight = {
    ...sheet.flight,
    departs: `2027-03-01T${hour}:00:00Z`,
    arrives: `2027-03-01T${hour}:55:00Z`,
    purpose: 'passengers',
    personsOnBoard: 3,
  };
  set(sheet.people['member-1'], 'log', logOf(draw, sheet, 2 + (index % 9), 4 + (index % 5)));
  return sheet;
}

const set = (of, fact, value) => {
  of[fact] = known(value, '2027-02-28T18:00:00Z');
};

/** One in so many facts is not on record. */
const FORGOTTEN = 0.04;

/** A sheet on which each of the ten rules may come out any way. Airplanes, private pilots, no ferry flights. */
export function variedSheet(index) {
  const draw = drawFrom(7 + index * 7919);
  const sheet = realisticSheet(index);
  const purpose = draw.oneOf(['solo', 'passengers', 'passengers', 'passengers', 'dual', 'maintenance']);
  const length = draw.oneOf(['01:00', '02:30', '11:00']);
  sheet.flight = {
    ...sheet.flight,
    departs: '2027-03-01T15:00:00Z',
    arrives: `2027-03-${length === '11:00' ? '02T02' : `01T${15 + Number(length.slice(0, 2))}`}:${length.slice(3)}:00Z`,
    purpose,
    personsOnBoard: purpose === 'solo' ? draw.oneOf([1, 1, 2]) : draw.upTo(5),
    instructorId: purpose === 'dual' && draw.chance(0.7) ? 'instructor-1' : null,
    route: draw.chance(0.3) ? [HOME_FIELD, ELSEWHERE, HOME_FIELD] : sheet.flight.route,
    forHire: draw.chance(0.1),
  };
  for (const person of [sheet.people['member-1'], sheet.people['instructor-1']])
    varyPerson(draw, sheet, person);
  varyAircraft(draw, sheet.aircraft);
  return sheet;
}

function varyPerson(draw, sheet, person) {
  set(person, 'log', logOf(draw, sheet, draw.oneOf([1, 20, 60, 85, 89, 90, 91, 120]), draw.oneOf([3, 9])));
  const medicals = Array.from({ length: draw.upTo(2) }, (_, index) => ({
    ...MEDICAL,
    id: `medical-${index + 1}`,
    class: draw.oneOf([1, 2, 3]),
    examOn: draw.oneOf(['2022-02-28', '2022-03-01', '2024-03-10', '2025-02-28', '2026-03-15', '2027-03-02']),
    limitations: draw.chance(0.3) ? ['must wear corrective lenses'] : [],
    withdrawnOn: draw.chance(0.15) ? draw.oneOf(['2026-06-01', '2027-03-02', '2027-06-01']) : null,
  }));
  set(person, 'medicals', medicals);
  set(person, 'birthDate', draw.oneOf(['1990-06-01', '1982-03-10', '1960-01-31']));
  const basicMed = { examOn: '2026-01-10', courseOn: '2026-01-11', id: 'basicmed-1' };
  set(person, 'basicMed', draw.chance(0.2) ? [basicMed] : []);
  const reviews = Array.from({ length: draw.upTo(3) }, (_, index) => ({
    ...REVIEW,
    id: `review-${index + 1}`,
    kind: draw.oneOf([
      'flight-review',
      'flight-review',
      'practical-test',
      'instructor-renewal',
      'instrument-proficiency-check',
    ]),
    on: draw.oneOf(['2025-02-28', '2025-03-01', '2025-09-09', '2026-01-10', '2027-03-02']),
    groundTenths: draw.oneOf([10, 10, 5, null]),
    flightTenths: draw.oneOf([12, 12, 9, null]),
    endorsedAsReview: draw.chance(0.5),
  }));
  set(person, 'reviews', reviews);
  const checkouts = Array.from({ length: draw.upTo(2) }, (_, index) => ({
    ...CHECKOUT,
    id: `checkout-${index + 1}`,
    modelId: draw.oneOf(['model-lark', 'model-lark', 'model-other']),
    on: draw.oneOf(['2025-05-01', '2026-08-01', '2027-03-02']),
    expiresOn: draw.oneOf([null, '2027-03-01', '2027-02-28']),
  }));
  set(person, 'checkouts', checkouts);
  const standing = { ...person.standing.value, state: draw.oneOf(['good', 'arrears', 'suspended']) };
  set(person, 'standing', {
    ...standing,
    since: draw.oneOf(['2026-12-01', '2027-01-30', '2027-02-20', '2027-03-02']),
  });
  for (const fact of ['log', 'medicals', 'birthDate', 'reviews', 'checkouts', 'standing'])
    if (draw.chance(FORGOTTEN)) person[fact] = unknownFact(`${fact} of ${person.name} is not on record`);
}

function varyAircraft(draw, aircraft) {
  const tailwheel = draw.chance(0.2);
  set(aircraft, 'type', { ...aircraft.type.value, tailwheel, occupantsCertificated: draw.oneOf([4, 4, 2]) });
  const annuals = Array.from({ length: draw.oneOf([0, 1, 1, 1, 2]) }, (_, index) => ({
    ...ITEM,
    id: `item-annual-${index + 1}`,
    lastDoneOn: draw.oneOf(['2026-02-28', '2026-03-01', '2026-09-05', '2027-03-02', null]),
  }));
  set(aircraft, 'items', [...aircraft.items.value.filter(({ kind }) => kind !== 'annual'), ...annuals]);
  const certificates = Array.from({ length: draw.oneOf([0, 1, 1, 1, 2]) }, (_, index) => ({
    id: `registration-${index + 1}`,
    issuedOn: draw.oneOf(['2019-06-01', '2020-02-10', '2020-03-10', '2023-05-10', '2027-03-02']),
    printedExpiryOn: draw.oneOf([null, null, '2026-12-31', '2023-06-30']),
    endedOn: draw.chance(0.15) ? draw.oneOf(['2027-01-15', '2027-03-02']) : null,
  }));
  set(aircraft, 'registration', certificates);
  const squawks = Array.from({ length: draw.oneOf([0, 0, 1, 2, 3]) }, (_, index) => ({
    ...SQUAWK,
    id: `squawk-${index + 1}`,
    title: `item ${index + 1} to look at`,
    reportedAt: draw.oneOf(['2027-02-20T20:00:00Z', '2027-02-21T06:30:00Z']),
    state: draw.oneOf(['reported', 'grounding', 'deferred', 'fixed', 'no-fault-found']),
    closedAt: draw.oneOf(['2027-02-25T20:00:00Z', '2027-03-02T20:00:00Z']),
  }));
  set(aircraft, 'squawks', squawks);
  for (const fact of ['items', 'registration', 'squawks'])
    if (draw.chance(FORGOTTEN)) aircraft[fact] = unknownFact(`${fact} of the aircraft are not on record`);
}
