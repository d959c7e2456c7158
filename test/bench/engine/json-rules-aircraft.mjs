/** Facts about the aircraft, for json-rules.mjs. Each gives `unknown`: what is missing in words, or null. */
import { localDateOf, throughCalendarMonths, toSeconds } from '../../../dist/src/rules/index.js';
import { NUMBERS } from './ten-rules.mjs';

const N = NUMBERS;

export const aircraftFacts = {
  async annual(_params, almanac) {
    const { items } = (await almanac.factValue('sheet')).aircraft;
    if (!items.known) return { unknown: items.because };
    const annuals = items.value.filter(({ kind }) => kind === 'annual');
    if (annuals.length === 0) return { unknown: 'no annual inspection is on record for the aircraft' };
    const startsOn = await almanac.factValue('startsOn');
    const on =
      annuals
        .map(({ lastDoneOn }) => lastDoneOn)
        .filter((done) => done !== null && done <= startsOn)
        .sort()
        .at(-1) ?? null;
    if (on === null) return { unknown: null, on, last: 'none is on record before the flight' };
    const through = throughCalendarMonths(on, N.annualMonths);
    return { unknown: null, on, through, last: `the last one, of ${on}, was good through ${through}` };
  },

  async registration(_params, almanac) {
    const { registration } = (await almanac.factValue('sheet')).aircraft;
    if (!registration.known) return { unknown: registration.because };
    const startsOn = await almanac.factValue('startsOn');
    const endsOn = await almanac.factValue('endsOn');
    const good = ({ one, through }) =>
      `${one.endedOn !== null && one.endedOn < through ? one.endedOn : through} ${one.id}`;
    const [found] = registration.value
      .filter(({ issuedOn }) => issuedOn <= startsOn)
      .map((one) => ({ one, through: throughOf(one) }))
      .sort((a, b) => {
        if (a.one.issuedOn !== b.one.issuedOn) return a.one.issuedOn < b.one.issuedOn ? 1 : -1;
        return good(a) < good(b) ? -1 : 1;
      });
    if (!found) return { unknown: null, issued: null, ended: false };
    const { issuedOn: issued, endedOn: on } = found.one;
    return { unknown: null, issued, through: found.through, on, ended: on !== null && endsOn >= on };
  },

  async load(_params, almanac) {
    const { aircraft, flight } = await almanac.factValue('sheet');
    if (!aircraft.type.known) return { unknown: aircraft.type.because };
    const { instruction } = await almanac.factValue('crew');
    const { seats, occupantsCertificated } = aircraft.type.value;
    return {
      unknown: null,
      purpose: flight.purpose,
      aboard: flight.personsOnBoard,
      seats: Math.min(seats, occupantsCertificated),
      least: instruction ? 2 : 1,
      why: 'learner and instructor',
    };
  },

  async squawks(_params, almanac) {
    const { aircraft, zone } = await almanac.factValue('sheet');
    if (!aircraft.squawks.known) return { unknown: aircraft.squawks.because };
    const of = (state) => aircraft.squawks.value.filter((squawk) => squawk.state === state);
    const grounding = of('grounding');
    const reported = of('reported');
    const list = grounding.length > 0 ? grounding : reported;
    list.sort((a, b) => (`${a.reportedAt} ${a.id}` < `${b.reportedAt} ${b.id}` ? -1 : 1));
    const squawks = list
      .map(({ title, reportedAt }) => `"${title}" (${localDateOf(toSeconds(reportedAt), zone)})`)
      .join(', ');
    const conditions = list.map(
      ({ title }) =>
        `Look at the open squawk "${title}" with the maintenance coordinator; the pilot in command decides.`,
    );
    return { unknown: null, grounding: grounding.length, reported: reported.length, squawks, conditions };
  },
};

function throughOf({ issuedOn, printedExpiryOn: printed }) {
  const { months, monthsBefore, extendedOn } = N.registration;
  const longer = throughCalendarMonths(issuedOn, months);
  if (issuedOn >= extendedOn) return printed !== null && printed < longer ? printed : longer;
  const before = printed ?? throughCalendarMonths(issuedOn, monthsBefore);
  return before >= extendedOn ? longer : before;
}
