/** Rows as the bodies the API takes, held to the same checks. */
import { plainToInstance } from 'class-transformer';
import { validateSync } from 'class-validator';
import type { Type } from '@nestjs/common';
import { NewCompliance } from '../../../fleet/airworthiness/compliance.dto.js';
import { NewItem } from '../../../fleet/airworthiness/item.dto.js';
import { NewEquipment } from '../../../fleet/equipment/equipment.dto.js';
import { NewWeighing } from '../../../fleet/weighings/weighing.dto.js';
import { flatten } from '../../../platform/http/validation.pipe.js';
import type { EquipmentKind, ItemDetail } from '../../../rules/index.js';
import type { Value } from './cells.js';
import type { FileRow } from './read-file.js';

/** A reason for which a row is not taken over. */
export class RowRefused extends Error {}

/** @throws RowRefused with everything the API would refuse. */
function held<T extends object>(shape: Type<T>, values: object): T {
  const body = plainToInstance(shape, values);
  const faults = flatten(validateSync(body));
  if (faults.length > 0) throw new RowRefused(faults.map(({ message }) => message).join(' '));
  return body;
}

const text = (value: Value | undefined): string | null => (typeof value === 'string' ? value : null);
const number = (value: Value | undefined): number | null => (typeof value === 'number' ? value : null);

/** The equipment a row is of. */
export function equipmentBody({ values }: FileRow): NewEquipment {
  if (values['basis'] === undefined)
    throw new RowRefused(
      'It does not say on what basis the piece is there: type-design, stc, alteration-record or portable.',
    );
  if (values['installed_on'] === undefined)
    throw new RowRefused(
      'It does not say since when the piece is there. Give a day by which it certainly was.',
    );
  return held(NewEquipment, {
    kind: (text(values['kind']) ?? 'other') as EquipmentKind,
    name: text(values['title']) ?? text(values['kind']),
    ...{ basis: values['basis'], document: text(values['document']) },
    ...{ partNumber: text(values['part_number']), serialNumber: text(values['serial_number']) },
    ...{ weightLb: number(values['weight_lb']), armIn: number(values['arm_in']) },
    requiredByTypeDesign: values['required_by_type_design'] === true,
    satisfies: values['satisfies'] ?? [],
    ...{ installedOn: values['installed_on'], removedOn: text(values['removed_on']) },
  });
}

/** The item a row is of; without the piece it hangs on, which is looked up. */
export function itemBody({ values, section }: FileRow): NewItem {
  const kind = section === 'directive' ? 'directive' : (text(values['kind']) ?? 'club');
  const title = text(values['title']) ?? text(values['reference']);
  return held(NewItem, {
    ...{ kind, title, reference: text(values['reference']) },
    scope: text(values['scope']) ?? 'all',
    ...{ calendarMonths: number(values['calendar_months']), plainMonths: number(values['months']) },
    ...{ days: number(values['days']), intervalH: number(values['interval_h']) },
    ...{ fixedDueOn: text(values['fixed_due_on']), fixedDueH: number(values['fixed_due_h']) },
    toleranceH: number(values['tolerance_h']) ?? 0,
    recurring: values['recurring'] ?? true,
    ferryProhibited: values['ferry_prohibited'] ?? false,
    ...{ since: text(values['since']), retiredOn: text(values['retired_on']) },
  });
}

/** Who signed is never made up: what the file does not say is recorded as not said. */
export const NOT_SIGNED = 'Not stated in the status taken over';
export const NO_STATEMENT = 'Taken over from an existing status';

/** What was last done; null when the row says nothing of it. */
export function complianceBody({ values }: FileRow): NewCompliance | null {
  if (values['last_done_on'] === undefined) {
    if (values['last_done_h'] !== undefined)
      throw new RowRefused('It says at what hours it was last done, but not on what day.');
    return null;
  }
  const detail = detailOf(values);
  return held(NewCompliance, {
    doneOn: values['last_done_on'],
    ...{ doneH: number(values['last_done_h']), dueH: number(values['was_due_h']) },
    ...{ detail, statement: text(values['statement']) ?? NO_STATEMENT },
    signedBy: text(values['signed_by']) ?? NOT_SIGNED,
  });
}

const DETAIL: Readonly<Record<string, keyof ItemDetail>> = {
  ...{ vor_method: 'vorMethod', vor_error_deg: 'vorErrorDeg', vor_place: 'vorPlace' },
  ...{ vor_signed_by: 'vorSignedBy', elt_battery_new_on: 'eltBatteryNewOn' },
  ...{ elt_battery_useful_life_ends_on: 'eltBatteryUsefulLifeEndsOn' },
  ...{ elt_battery_replace_on: 'eltBatteryReplaceOn', elt_use_minutes: 'eltUseMinutes' },
  static_opened_on: 'staticOpenedOn',
};

function detailOf(values: FileRow['values']): ItemDetail | null {
  const found = Object.entries(DETAIL).flatMap(([name, key]) =>
    values[name] === undefined ? [] : [[key, values[name]] as const],
  );
  return found.length === 0 ? null : (Object.fromEntries(found) as ItemDetail);
}

/** An empty weight. */
export function weighingBody({ values }: FileRow): NewWeighing {
  if (values['effective_on'] === undefined)
    throw new RowRefused('It does not say of what day the weight is.');
  return held(NewWeighing, {
    effectiveOn: values['effective_on'],
    ...{ emptyWeightLb: number(values['weight_lb']), emptyArmIn: number(values['arm_in']) },
    ...{ source: text(values['source']) ?? 'computed', note: text(values['note']) ?? '' },
  });
}
