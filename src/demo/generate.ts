import type { Instant } from '../rules/index.js';
import { flownFlights, type FlownFlight } from './accounts/flown.js';
import { rateRows } from './accounts/rates.js';
import { blockRows, spanOf } from './blocks.js';
import { checkoutRows } from './checkouts/checkout-rows.js';
import { aircraftBy } from './fleet/aircraft.js';
import { aircraftRows } from './fleet/aircraft-rows.js';
import { directiveRows } from './fleet/directives.js';
import { equipmentRows } from './fleet/equipment.js';
import { insuranceRows } from './fleet/insurance.js';
import { itemRows } from './fleet/items.js';
import { modelRows } from './fleet/models.js';
import { signerRows, visitRows } from './fleet/visits.js';
import { sheetRows } from './fleet/sheets.js';
import { upgradeWishRows } from './fleet/upgrades.js';
import { squawkRows } from './fleet/squawks.js';
import { clubRuleRows } from './club-rules.js';
import { history } from './flying/history.js';
import { elsewhereEntries } from './flying/elsewhere.js';
import { logEntries } from './flying/log.js';
import { Meters } from './flying/meters.js';
import { flightWishes } from './flying/wishes.js';
import { DEMO_CLUB_ID, DEMO_SLUG } from './ids.js';
import { limitsRows } from './people/limits.js';
import { checkRows } from './people/checks.js';
import { memberRows } from './people/members.js';
import { papers } from './people/papers.js';
import { everybody, type Person } from './people/person.js';
import { practiceRows } from './people/practice.js';
import { signOffs } from './people/sign-offs.js';
import { placeRows } from './places.js';
import { policyRows } from './policy.js';
import type { DemoRows, FlightWish } from './rows.js';
import { waitedForFree } from './today/on-standby.js';
import { keptFree, tries, type Try } from './tries.js';
import { at, clock, When, ZONE } from './when.js';

/** The demo club: its rows, the flights its members want to book, and what to try. */
export interface DemoClub {
  seed: string;
  asOf: Instant;
  /** The club's date of `asOf`. */
  today: string;
  rows: DemoRows;
  wishes: FlightWish[];
  /** Flights of the last months that are on members' accounts. */
  flown: FlownFlight[];
  people: Person[];
  tries: Try[];
}

/**
 * Makes the demo club as of an instant. The same seed and instant give the same rows; everything is told as so many days
 * or months before `asOf`, so the club is alive on any date.
 */
export function generateClub(of: { seed: string; asOf: Instant }): DemoClub {
  const { seed, asOf } = of;
  const when = new When(asOf);
  const began = at(when.daysAgo(when.span + 200), clock(12));
  const people = everybody(seed, when);
  const { checkouts, lessons } = signOffs(people, when, aircraftBy('almanac').id);
  const { rows: paperRows, lessons: reviews } = papers(people, when);
  const outings = history(seed, people, [...lessons, ...reviews], when);
  const meters = new Meters(outings, when);
  const blocks = blockRows(people, when);
  const asked = tries(people, when);
  const taken = [
    ...blocks.map((block) => ({ ids: [block.aircraft_id], ...spanOf(block) })),
    ...asked.map(keptFree),
    waitedForFree(people, when),
  ];
  const items = itemRows(when, meters, began);
  const squawks = squawkRows(seed, outings, when);
  const flown = outings.flatMap((outing) => logEntries(seed, outing));
  const rows: DemoRows = {
    clubs: [
      {
        club_id: DEMO_CLUB_ID,
        slug: DEMO_SLUG,
        name: 'Quill Mesa Flying Club (demonstration)',
        zone: ZONE,
        jurisdiction: 'US',
        // The demo's date: a later day's start makes the club anew.
        recorded_at: asOf,
      },
    ],
    ...placeRows(began),
    policy_values: policyRows(when, began),
    ...memberRows(people, when),
    club_rules: clubRuleRows(people, when, began),
    ...paperRows,
    aircraft_models: modelRows(began),
    ...aircraftRows(when, began),
    ...sheetRows(when, began),
    ...insuranceRows(people, when, began),
    member_checks: checkRows(people, when),
    equipment: equipmentRows(when, began),
    meter_readings: meters.rows(seed),
    ...directiveRows(when, began),
    ...items,
    ...squawks,
    upgrade_wishes: upgradeWishRows(when, began),
    log_entries: [...flown, ...elsewhereEntries(seed, people, flown, when)],
    checkouts,
    ...checkoutRows(people, when),
    practice_records: practiceRows(people, when),
    personal_limits: limitsRows(people, when),
    bookings: blocks,
    signers: signerRows(when, began),
    ...visitRows(blocks, { items: items.airworthiness_items, squawks: squawks.squawks }),
    charge_rates: rateRows(people, when, began),
  };
  return {
    seed,
    asOf,
    today: when.today,
    rows,
    flown: flownFlights(outings, when),
    wishes: flightWishes(seed, people, outings, taken, when),
    people,
    tries: asked,
  };
}
