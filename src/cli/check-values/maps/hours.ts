/** What goes by meter hours, or by hours and calendar: 14 CFR 91.409(b), recurring directives, ferry permits. */
import type { Purpose } from '../../../rules/index.js';
import { METER, PERMIT } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { onlyItem, validThrough } from './inspections.js';
import { tenths } from './words.js';

const HUNDRED = 'inspection.hours_100';

const PURPOSE: Record<string, Purpose> = {
  ferry_to_inspection: 'ferry-to-inspection',
  ferry: 'ferry-to-inspection',
  positioning: 'ferry-to-inspection',
  lesson: 'dual',
  instruction: 'dual',
  dual: 'dual',
  solo: 'solo',
  rental: 'solo',
  passengers: 'passengers',
};

/** The flight's purpose; an instruction flight has an instructor, who is named. */
function withPurpose(scene: Scene, purpose: Purpose): void {
  scene.flight({ purpose });
  if (purpose === 'dual') scene.flight({ instructorId: 'instructor-1', personsOnBoard: 2 });
}

export function meterAt(scene: Scene, hours: number): void {
  scene.set('aircraft.meters', [{ ...METER, tenths: tenths(hours), readAt: scene.sheet.knownAt }]);
}

const hundredHours: Mapping = {
  rules: [HUNDRED],
  map(facts) {
    const scene = new Scene(facts.date('as_of') ?? '2027-03-01');
    const last = facts.need('last_inspection_hours', facts.number('last_inspection_hours'));
    const now = facts.number('hours_now') ?? last;
    const planned = facts.number('planned_hours') ?? 0;
    const teaching = facts.oneOf(
      ['instruction_for_hire_in_provided_aircraft', 'instruction_for_hire'],
      (key) => facts.flag(key),
    );
    const carrying = facts.oneOf(['carries_persons_for_hire', 'for_hire'], (key) => facts.flag(key)) ?? false;
    const inspectedAt = facts.number('inspected_at');
    const dueAt = facts.oneOf(['due_at', 'was_due_at'], (key) => facts.number(key));
    const purpose = facts.choice('purpose', PURPOSE);
    const kind = facts.oneOf(['last_inspection', 'last_inspection_kind', 'inspection_kind'], (key) =>
      facts.choice(key, { annual: 'annual', hours_100: 'hours_100', '100_hour': 'hours_100' }),
    );

    scene.set('aircraft.use', {
      status: 'in-service',
      instructionForHire: teaching ?? false,
      carriesForHire: carrying,
    });
    withPurpose(scene, purpose ?? (teaching ? 'dual' : carrying ? 'passengers' : 'solo'));
    scene.flight({ plannedTenths: tenths(planned), forHire: carrying });
    meterAt(scene, now);

    // The inspection was due 100 h after the one before, wherever it was then signed.
    const due = inspectedAt === undefined ? undefined : (dueAt ?? last + 100);
    const doneAt = tenths(inspectedAt ?? last);
    // An annual stands for the 100-hour inspection: then the newest 100-hour lies too far back to matter.
    onlyItem(scene, 'annual', { lastDoneTenths: kind === 'annual' ? doneAt : 0 });
    onlyItem(scene, 'hours-100', {
      lastDoneTenths: kind === 'annual' ? 0 : doneAt,
      lastDueTenths: due === undefined ? null : tenths(due),
    });
    const nextDue = (): number => lastHourAllowed(scene, Math.max(doneAt, tenths(now)));
    return { ...validThrough(scene, HUNDRED, []), due_at: nextDue, next_due_at: nextDue };
  },
};

/** The meter reading up to which an ordinary flight is allowed, found by asking the rule hour by tenth of an hour. */
function lastHourAllowed(scene: Scene, fromTenths: number): number {
  const before = { ...scene.sheet.flight };
  withPurpose(scene, 'dual');
  meterAt(scene, fromTenths / 10);
  try {
    for (let planned = 0; planned <= 3000; planned += 1) {
      scene.flight({ plannedTenths: planned });
      const allowed = scene.allows(HUNDRED);
      if (typeof allowed === 'string') throw new Error(allowed);
      if (!allowed) return (fromTenths + planned - 1) / 10;
    }
    throw new Error('the rule allows 300 hours and more');
  } finally {
    scene.flight(before);
  }
}

const DIRECTIVE = 'ad.recurring';

/** Airworthiness directives, and flights under a special flight permit with the annual overdue. */
const directives: Mapping = {
  rules: [DIRECTIVE],
  map(facts) {
    const scene = new Scene(facts.date('as_of') ?? '2027-03-01');
    const passengers = facts.number('passengers');
    if (passengers !== undefined) scene.passengers(passengers);
    const purpose = facts.choice('purpose', PURPOSE);
    if (purpose !== undefined) withPurpose(scene, purpose);
    const annualExpired = facts.flag('annual_expired') ?? false;
    if (annualExpired) onlyItem(scene, 'annual', { lastDoneOn: '2025-01-15' });
    const permit = facts.oneOf(['special_flight_permit', 'permit'], (key) => facts.flag(key)) ?? false;
    if (permit) scene.set('aircraft.permits', [{ ...PERMIT, from: '2020-01-01', through: '2040-01-01' }]);
    const events = directiveOf(facts, scene);
    const found = validThrough(scene, DIRECTIVE, events);
    const flies = (): boolean | string =>
      scene.allowsAll(
        DIRECTIVE,
        ...(annualExpired ? ['inspection.annual'] : []),
        ...(permit ? ['permit.special_flight'] : []),
      );
    return { ...found, compliant: found.valid!, flight_allowed: flies, allowed: flies };
  },
};

/** The directive of the entry, when it gives one, as the aircraft's only one. */
function directiveOf(facts: NeutralFacts, scene: Scene): (string | undefined)[] {
  const lastDone = facts.date('last_done');
  const doneAt = facts.number('last_done_hours');
  const hours = facts.number('interval_hours');
  const plain = facts.oneOf(['interval_months', 'interval_plain_months'], (key) => facts.number(key));
  const calendar = facts.number('interval_calendar_months');
  const days = facts.number('interval_days');
  const unit = facts.oneOf(['unit_months', 'months_are', 'month_unit'], (key) =>
    facts.choice(key, {
      calendar: true,
      calendar_months: true,
      plain: false,
      plain_months: false,
      months: false,
    }),
  );
  const now = facts.number('hours_now');
  const planned = facts.number('planned_hours');
  const once = facts.oneOf(['one_time', 'once'], (key) => facts.flag(key)) ?? false;
  const terminated = facts.oneOf(['terminated', 'terminating_action', 'terminating_action_done'], (key) =>
    facts.flag(key),
  );
  const applies =
    facts.oneOf(['applicable', 'serial_applicable', 'applies'], (key) => facts.flag(key)) ?? true;
  const noFerry = facts.oneOf(['ferry_prohibited', 'directive_prohibits_ferry', 'prohibits_ferry'], (key) =>
    facts.flag(key),
  );
  facts.remark('whichever', 'first');
  if (now !== undefined) meterAt(scene, now);
  if (planned !== undefined) scene.flight({ plannedTenths: tenths(planned) });
  else if (now !== undefined) scene.flight({ plannedTenths: 0 });
  const given = lastDone ?? doneAt ?? hours ?? plain ?? calendar ?? days ?? noFerry;
  // A directive that does not apply, or that terminating action ended, is not on the aircraft's list.
  if (given === undefined || !applies || terminated === true) return [];
  onlyItem(scene, 'directive', {
    id: 'item-directive',
    title: 'A directive',
    recurring: !once,
    calendarMonths: calendar ?? (unit === true ? (plain ?? null) : null),
    plainMonths: unit === true ? null : (plain ?? null),
    days: days ?? null,
    intervalTenths: hours === undefined ? null : tenths(hours),
    lastDoneOn: lastDone ?? null,
    lastDoneTenths: doneAt === undefined ? null : tenths(doneAt),
    ferryProhibited: noFerry ?? false,
  });
  return [lastDone];
}

export const HOURS_MAPS: readonly Mapping[] = [hundredHours, directives];
