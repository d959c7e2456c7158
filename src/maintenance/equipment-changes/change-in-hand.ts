/** Writes a change of equipment and all that follows from it, inside the caller's transaction. */
import { type EntityManager, In, IsNull } from 'typeorm';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { Compliance } from '../../fleet/airworthiness/compliance.entity.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { takeUpDirectives } from '../../fleet/directives/take-up.js';
import { Differences } from '../../fleet/differences/differences.entity.js';
import { Equipment } from '../../fleet/equipment/equipment.entity.js';
import { inspectionTenthsNow } from '../../fleet/meters/latest-readings.js';
import type { MetersService } from '../../fleet/meters/meters.service.js';
import { currentWeighing, keepWeightInStep } from '../../fleet/weighings/current-weight.js';
import { Weighing } from '../../fleet/weighings/weighing.entity.js';
import { newId } from '../../platform/ids.js';
import { tenthsOf } from '../../platform/http/views.js';
import type { BegunItem, NewEquipmentChange } from './equipment-change.dto.js';
import { EquipmentChange, type ChangeEffects } from './equipment-change.entity.js';
import type { EmptyWeight, NewWeight } from './new-weight.js';
import { piecesOut, weightAfter } from './parts.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** What was done, for whoever tells of it. */
export interface Done {
  changeId: string;
  before: EmptyWeight | null;
  after: NewWeight;
  ended: AirworthinessItem[];
  begun: AirworthinessItem[];
}

interface Place {
  clubId: string;
  aircraftId: string;
  memberId: string;
  now: string;
}

/** Writes it all. The aircraft's row is locked by the caller. @throws ProblemException 422 naming the field. */
export async function writeChange(
  em: EntityManager,
  meters: MetersService,
  place: Place,
  body: NewEquipmentChange,
): Promise<Done> {
  const { clubId, aircraftId, memberId } = place;
  const { doneOn } = body;
  const out = await piecesOut(em, { clubId, aircraftId, doneOn, removes: body.removes });
  const before = (await currentWeighing(em, clubId, aircraftId)) ?? (await firstWeight(em, place, doneOn));
  if (before && before.effectiveOn > doneOn)
    throw valueRefused(
      'doneOn',
      `A weight of ${before.effectiveOn} is on record, after ${doneOn}. Record changes in order.`,
    );
  const after = weightAfter(before, out, body);
  if (before !== null && !after.known)
    throw valueRefused('removes', `The new empty weight is not known: ${after.because}.`);
  const readingIds = await writeReadings(em, meters, place, body);
  const changeId = newId();
  const effects: ChangeEffects = {
    removed: out.map(({ piece }) => piece.id),
    installed: [],
    endedItems: [],
    begunItems: [],
    weighingId: null,
    differenceId: null,
    readingIds,
  };
  const { title, statement, signedBy, documents = [] } = body;
  const head = { clubId, id: changeId, aircraftId, title, doneOn, statement, signedBy, documents };
  await em.insert(EquipmentChange, { ...head, effects, madeBy: memberId });
  if (out.length > 0)
    await em.update(
      Equipment,
      { clubId, id: In(effects.removed) },
      { removedOn: doneOn, removedByChange: changeId },
    );
  const ended = await endItems(em, place, body, effects.removed);
  const begun = await install(em, place, body, { changeId, effects });
  effects.endedItems = ended.map(({ id }) => id);
  effects.begunItems = begun.map(({ id }) => id);
  if (after.known) effects.weighingId = await writeWeight(em, place, body, changeId, after.weight);
  if (body.difference) {
    effects.differenceId = newId();
    const { title: what, equipmentGroup } = body.difference;
    await em.insert(Differences, {
      ...{ clubId, id: effects.differenceId, aircraftId, changeId },
      ...{ title: what, equipmentGroup, since: doneOn, endedOn: null },
    });
  }
  await em.update(EquipmentChange, { clubId, id: changeId }, { effects });
  if (after.known) await keepWeightInStep(em, clubId, aircraftId);
  await takeUpDirectives(em, clubId, { aircraftIds: [aircraftId], today: doneOn });
  return { changeId, before, after, ended, begun };
}

/** The weight entered with the aircraft becomes the first weighing, so that taking the change back finds it again. */
async function firstWeight(
  em: EntityManager,
  { clubId, aircraftId }: Place,
  effectiveOn: string,
): Promise<Weighing | null> {
  const { emptyWeightLb } = await em.findOneByOrFail(Aircraft, { clubId, id: aircraftId });
  if (emptyWeightLb === null) return null;
  const row = { clubId, id: newId(), aircraftId, effectiveOn, emptyWeightLb, emptyArmIn: null };
  await em.insert(Weighing, { ...row, source: 'computed', note: 'As entered with the aircraft' });
  return em.findOneByOrFail(Weighing, { clubId, id: row.id });
}

async function writeReadings(
  em: EntityManager,
  meters: MetersService,
  { clubId, aircraftId, now }: Place,
  { readings = [], title }: NewEquipmentChange,
): Promise<string[]> {
  const ids: string[] = [];
  for (const { kind, shownH, readAt = now } of readings) {
    const reading = { clubId, aircraftId, kind, readAt, source: 'coordinator' as const, note: title };
    ids.push((await meters.record(em, { ...reading, shownTenths: tenthsOf(shownH) })).id);
  }
  return ids;
}

/** Items that hang on what goes, and those named besides. */
async function endItems(
  em: EntityManager,
  { clubId, aircraftId }: Place,
  { doneOn, endsItems = [] }: NewEquipmentChange,
  removed: readonly string[],
): Promise<AirworthinessItem[]> {
  const standing = await em.findBy(AirworthinessItem, { clubId, aircraftId, retiredOn: IsNull() });
  for (const [index, id] of endsItems.entries()) {
    if (!standing.some((item) => item.id === id))
      throw valueRefused(`endsItems[${index}]`, `This aircraft has no item ${id} that is asked for.`);
  }
  const ended = standing.filter(
    ({ id, equipmentId }) =>
      endsItems.includes(id) || (equipmentId !== null && removed.includes(equipmentId)),
  );
  for (const item of ended)
    if (item.since !== null && item.since > doneOn)
      throw valueRefused('doneOn', `“${item.title}” begins on ${item.since}, after ${doneOn}.`);
  if (ended.length > 0)
    await em.update(AirworthinessItem, { clubId, id: In(ended.map(({ id }) => id)) }, { retiredOn: doneOn });
  return ended;
}

async function install(
  em: EntityManager,
  place: Place,
  body: NewEquipmentChange,
  of: { changeId: string; effects: ChangeEffects },
): Promise<AirworthinessItem[]> {
  const { clubId, aircraftId } = place;
  const begun: AirworthinessItem[] = [];
  const doneTenths = await inspectionTenthsNow(em, place);
  for (const { items = [], negligible: _found, ...piece } of body.installs) {
    const id = newId();
    of.effects.installed.push(id);
    await em.insert(Equipment, {
      ...piece,
      ...{ clubId, id, aircraftId, installedOn: body.doneOn, installedByChange: of.changeId },
      portable: piece.basis === 'portable',
    });
    for (const item of items)
      begun.push(await beginItem(em, place, body, { item, equipmentId: id, doneTenths }));
  }
  return begun;
}

async function beginItem(
  em: EntityManager,
  { clubId, aircraftId }: Place,
  { doneOn, statement, signedBy }: NewEquipmentChange,
  of: { item: BegunItem; equipmentId: string; doneTenths: number | null },
): Promise<AirworthinessItem> {
  const { countsFromInstallation = true, intervalH, ...item } = of.item;
  const id = newId();
  await em.insert(AirworthinessItem, {
    ...item,
    ...{ clubId, id, aircraftId, equipmentId: of.equipmentId, since: doneOn },
    intervalTenths: tenthsOf(intervalH) ?? null,
    recurring: true,
  });
  if (countsFromInstallation)
    await em.insert(Compliance, {
      ...{ clubId, id: newId(), itemId: id, doneOn, doneTenths: of.doneTenths },
      ...{ statement, signedBy },
    });
  return em.findOneByOrFail(AirworthinessItem, { clubId, id });
}

async function writeWeight(
  em: EntityManager,
  { clubId, aircraftId }: Place,
  { doneOn, weighing, title }: NewEquipmentChange,
  changeId: string,
  weight: EmptyWeight,
): Promise<string> {
  const id = newId();
  await em.insert(Weighing, {
    ...{ clubId, id, aircraftId, effectiveOn: doneOn, changeId, note: title },
    ...weight,
    source: weighing ? 'weighing' : 'equipment-change',
  });
  return id;
}
