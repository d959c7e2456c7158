/** Keeps each aircraft's items in step with the directives that apply to it, whatever changed: the directive, the aircraft, its equipment. */
import { type EntityManager, In } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { addDays } from '../../rules/index.js';
import { Aircraft } from '../aircraft/aircraft.entity.js';
import { AirworthinessItem } from '../airworthiness/airworthiness-item.entity.js';
import { Equipment } from '../equipment/equipment.entity.js';
import { inspectionTenthsNow } from '../meters/latest-readings.js';
import { type Applicability, applicabilityOf } from './applicability.js';
import { Directive, DirectiveFinding } from './directive.entity.js';

/** A directive with the models it names and the one that took its place. */
export interface WholeDirective extends Directive {
  modelIds: string[];
  supersededBy: { id: string; number: string; effectiveOn: string } | null;
}

/** How a directive stands to an aircraft or a piece, with what somebody found put over what the records say. */
export interface Standing extends Applicability {
  directive: WholeDirective;
  found: DirectiveFinding | null;
}

/** All of the club's directives. */
export async function wholeDirectives(em: EntityManager, clubId: string): Promise<WholeDirective[]> {
  const directives = await em.find(Directive, {
    where: { clubId },
    order: { effectiveOn: 'ASC', id: 'ASC' },
  });
  const models: { directiveId: string; modelId: string }[] = await em.query(
    'SELECT directive_id AS "directiveId", model_id AS "modelId" FROM directive_models WHERE club_id = $1 ORDER BY model_id',
    [clubId],
  );
  return directives.map((directive) => {
    const next = directives.find(({ supersedes }) => supersedes === directive.id);
    return {
      ...directive,
      modelIds: models
        .filter(({ directiveId }) => directiveId === directive.id)
        .map(({ modelId }) => modelId),
      supersededBy: next ? { id: next.id, number: next.number, effectiveOn: next.effectiveOn } : null,
    };
  });
}

/** How every directive stands to some aircraft, by aircraft. */
export async function standingsOf(
  em: EntityManager,
  clubId: string,
  aircraftIds: readonly string[],
): Promise<Map<string, Standing[]>> {
  const directives = await wholeDirectives(em, clubId);
  const these = { clubId, aircraftId: In([...aircraftIds]) };
  const aircraft = await em.findBy(Aircraft, { clubId, id: In([...aircraftIds]) });
  const pieces = await em.find(Equipment, { where: these, order: { id: 'ASC' } });
  const findings = await em.find(DirectiveFinding, { where: these, order: { id: 'ASC' } });
  return new Map(
    aircraft.map(({ id, modelId, serialNumber }) => {
      const installed = pieces.filter(
        ({ aircraftId, removedOn, portable }) => aircraftId === id && removedOn === null && !portable,
      );
      const of = { modelId, serialNumber, pieces: installed };
      const standings = directives.flatMap((directive) =>
        applicabilityOf(directive, of).map((one) => {
          const found = findings.findLast(
            (finding) =>
              finding.aircraftId === id &&
              finding.directiveId === directive.id &&
              finding.equipmentId === one.equipmentId,
          );
          return { directive, ...decided(one, found), found: found ?? null };
        }),
      );
      return [id, standings];
    }),
  );
}

const decided = (one: Applicability, found: DirectiveFinding | undefined): Applicability =>
  found
    ? { ...one, state: found.applies ? 'applies' : 'not', because: `${found.because} (${found.signedBy})` }
    : one;

/**
 * Begins an item for each directive that applies, or may, and ends those of directives that do not any more: superseded, withdrawn,
 * looked up, the piece gone. An item that ended begins again when its directive applies again. The caller holds the aircraft.
 */
export async function takeUpDirectives(
  em: EntityManager,
  clubId: string,
  of: { aircraftIds: readonly string[]; today: string },
): Promise<void> {
  if (of.aircraftIds.length === 0) return;
  const standings = await standingsOf(em, clubId, of.aircraftIds);
  const items = await em.find(AirworthinessItem, {
    where: { clubId, aircraftId: In([...of.aircraftIds]), kind: 'directive' },
  });
  for (const [aircraftId, all] of standings) {
    const own = items.filter((item) => item.aircraftId === aircraftId && item.directiveId !== null);
    for (const standing of all) {
      const item = own.find(
        ({ directiveId, equipmentId }) =>
          directiveId === standing.directive.id && equipmentId === standing.equipmentId,
      );
      await keepInStep(em, { clubId, aircraftId, standing, item, today: of.today });
    }
    // A piece that went takes its items with it.
    const gone = own.filter(
      (item) =>
        item.retiredOn === null &&
        !all.some(
          ({ directive, equipmentId }) =>
            directive.id === item.directiveId && equipmentId === item.equipmentId,
        ),
    );
    for (const item of gone) await retire(em, item, of.today);
  }
}

interface Step {
  clubId: string;
  aircraftId: string;
  standing: Standing;
  item: AirworthinessItem | undefined;
  today: string;
}

async function keepInStep(
  em: EntityManager,
  { clubId, aircraftId, standing, item, today }: Step,
): Promise<void> {
  const { directive, state, equipmentId } = standing;
  const endsOn = lastOf(directive);
  if (state === 'not') {
    if (item?.retiredOn === null) await retire(em, item, today);
    return;
  }
  const values = {
    title: titleOf(directive, state),
    reference: `${directive.issuer} ${directive.number}`,
    ...{ scope: directive.scope, recurring: directive.recurring, ferryProhibited: directive.ferryProhibited },
    ...{ calendarMonths: directive.calendarMonths, plainMonths: directive.plainMonths, days: directive.days },
    ...{ intervalTenths: directive.intervalTenths, since: directive.effectiveOn, retiredOn: endsOn },
    fixedDueOn: directive.withinDays === null ? null : addDays(directive.effectiveOn, directive.withinDays),
  };
  if (item) {
    await em.update(AirworthinessItem, { clubId, id: item.id }, values);
    return;
  }
  await em.insert(AirworthinessItem, {
    ...{ clubId, id: newId(), aircraftId, kind: 'directive', directiveId: directive.id, equipmentId },
    ...values,
    toleranceTenths: 0,
    fixedDueTenths: await firstHours(em, { clubId, aircraftId }, directive),
  });
}

/** The day from which a directive is in force no more; null: it is. */
export const endOf = ({ supersededBy, withdrawnOn }: WholeDirective): string | null =>
  [supersededBy?.effectiveOn ?? null, withdrawnOn].filter((day) => day !== null).sort()[0] ?? null;

/** The day from which it is asked for no more, never before it began to be. */
const lastOf = (directive: WholeDirective): string | null => {
  const end = endOf(directive);
  return end !== null && end < directive.effectiveOn ? directive.effectiveOn : end;
};

const titleOf = ({ number, title }: Directive, state: Applicability['state']): string =>
  `${number}: ${title}${state === 'unclear' ? ' (look up whether it applies)' : ''}`.slice(0, 200);

/** Hours counted from what the meter shows when the directive is taken up; without a reading it is due at once. */
async function firstHours(
  em: EntityManager,
  of: { clubId: string; aircraftId: string },
  { withinTenths }: Directive,
): Promise<number | null> {
  if (withinTenths === null) return null;
  const now = await inspectionTenthsNow(em, of);
  return now === null ? null : now + withinTenths;
}

const retire = async (em: EntityManager, item: AirworthinessItem, today: string): Promise<void> => {
  const on = item.since !== null && item.since > today ? item.since : today;
  await em.update(AirworthinessItem, { clubId: item.clubId, id: item.id }, { retiredOn: on });
};
