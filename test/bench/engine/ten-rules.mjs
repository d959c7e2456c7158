/** The ten rules that are written three times, and the words and numbers that all three writings share. */
import { rulesetFor, startingPolicy } from '../../../dist/src/rules/index.js';

export const TEN = [
  'recency.passengers.day',
  'medical.certificate',
  'review.flight_24_months',
  'inspection.annual',
  'registration.validity',
  'load.persons',
  'squawk.grounding',
  'club.model_checkout',
  'club.standing',
  'club.booking_length',
];

/** Everything that judges a flight of a US club with the starting policy. */
export function fullRuleset() {
  const policy = startingPolicy();
  return { policy, ruleset: rulesetFor('US', policy) };
}

/** The same book with the ten rules only. */
export function tenRules({ rules, book }) {
  const byId = new Map(rules.map((rule) => [rule.id, rule]));
  const missing = TEN.filter((id) => !byId.has(id));
  if (missing.length > 0) throw new Error(`the US rules have no ${missing.join(', ')}`);
  return { rules: TEN.map((id) => byId.get(id)), book };
}

/** `words['rule']['branch'](values)`: the rules' own sentences, cut at their slots once. */
export function wordsOf(ruleset) {
  return Object.fromEntries(
    ruleset.rules.map((rule) => [
      rule.id,
      Object.fromEntries(Object.entries(rule.branches).map(([branch, { says }]) => [branch, sentence(says)])),
    ]),
  );
}

function sentence(template) {
  const parts = template.split(/\{([a-zA-Z0-9]+)\}/);
  return (values) => {
    let text = parts[0];
    for (let slot = 1; slot < parts.length; slot += 2) text += values[parts[slot]] + parts[slot + 1];
    return text;
  };
}

/** The numbers of law and club, as a program without dated parameters would write them down. */
export const NUMBERS = {
  recency: { days: 90, needed: 3 },
  medicalMonths: { second: 12, thirdYounger: 60, thirdOlder: 24, age: 40 },
  review: { months: 24, groundTenths: 10, flightTenths: 10 },
  annualMonths: 12,
  registration: { months: 84, monthsBefore: 36, extendedOn: '2023-01-23' },
  arrearsDays: 30,
  booking: { localHours: 10, tripDays: 14, instructionHours: 10 },
};

/** How the sentence of a good standing ends where another standing lies ahead. */
export const aheadOf = (state, since) =>
  state === 'good' ? '' : ` until the ${state === 'suspended' ? 'suspension' : 'arrears'} of ${since}`;

export const PRIVILEGES = { second: 'commercial', third: 'private, recreational, student or instructor' };

export const REVIEW_SUBSTITUTES = {
  'practical-test': 'practical test',
  'proficiency-check': 'pilot proficiency check',
  'faa-proficiency-phase': 'phase of a pilot proficiency programme',
  'instructor-practical-test': 'instructor practical test',
};

/** '1 h 30 min'. */
export function lasting(seconds) {
  const minutes = Math.ceil(seconds / 60);
  const days = Math.floor(minutes / 1440);
  const hours = Math.floor((minutes % 1440) / 60);
  const parts = [];
  if (days > 0) parts.push(`${days} day${days === 1 ? '' : 's'}`);
  if (hours > 0) parts.push(`${hours} h`);
  if (minutes % 60 > 0) parts.push(`${minutes % 60} min`);
  return parts.length > 0 ? parts.join(' ') : 'no time';
}

/** Limitations on the medical certificate that serves, and those of the newest examination since. */
export function limitationsSince(serving, medicals, startsOn) {
  const since = medicals.filter(({ examOn }) => examOn >= serving.examOn && examOn <= startsOn);
  let newest = serving.examOn;
  for (const { examOn } of since) if (examOn > newest) newest = examOn;
  const found = since.filter(({ examOn }) => examOn === newest).flatMap((one) => one.limitations);
  return found.length === 0 ? serving.limitations : [...new Set([...serving.limitations, ...found.sort()])];
}
