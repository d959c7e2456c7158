/** Whom 14 CFR 61.57(a) and (b) speak of: passengers, and since 2024-12-02 anybody the pilot in command carries. */
import type { LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { Body, FactView, Judgement, Take } from '../../../../engine/rule.js';
import { leavePassengers } from '../../../leave-passengers.js';

/** First day of 89 FR 80310, which says "persons" where "passengers" stood. */
const PERSONS_SINCE: LocalDate = '2024-12-02';

type Aboard = Pick<FactView, 'flight' | 'crew'>;

/** Is anybody carried of whom the law speaks? `anybody`: learners, instructors and second pilots count too. */
export function carries({ flight, crew }: Aboard, anybody: boolean): boolean {
  return crew.passengers > 0 || (anybody && (crew.instruction || flight.personsOnBoard > 1));
}

/** Leaving the passengers behind, where nobody else of whom the law speaks stays aboard. */
export function leaveWhomItSpeaksOf(f: Aboard, anybody: boolean): Remedy[] {
  const crew = { ...f.crew, passengers: 0 };
  const flight = { ...f.flight, personsOnBoard: f.flight.personsOnBoard - f.crew.passengers };
  return carries({ flight, crew }, anybody) ? [] : leavePassengers(f);
}

/** What passenger recency reads. */
type Reads = 'pic.log' | 'aircraft.type';

/** The law in its two wordings, one judgement for both: `anybody` from the day on which it says "persons". */
export function byWhomItSpeaksOf<const Branch extends string>(
  paragraph: string,
  reading: { before: string; since: string },
  judge: (
    f: FactView<Reads>,
    moment: Moment,
    p: Parameters,
    take: Take<Branch>,
    anybody: boolean,
  ) => Judgement,
): Body<Reads, Branch>[] {
  const status = 'seen';
  return [
    {
      ...{ version: 1, from: null, to: PERSONS_SINCE },
      citation: { text: `${paragraph} before 89 FR 80310`, status, reading: reading.before },
      judge: (f, moment, p, take) => judge(f, moment, p, take, false),
    },
    {
      ...{ version: 2, from: PERSONS_SINCE, to: null },
      citation: { text: paragraph, status, reading: reading.since },
      judge: (f, moment, p, take) => judge(f, moment, p, take, true),
    },
  ];
}
