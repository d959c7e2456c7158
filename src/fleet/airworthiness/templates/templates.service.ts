import { Injectable } from '@nestjs/common';
import { type EntityManager, IsNull } from 'typeorm';
import type { SignedIn } from '../../../accounts/current-user.js';
import { Club } from '../../../clubs/club.entity.js';
import { addRecord, editRecord, findRecord, removeRecord } from '../../../platform/database/records.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { hoursOf, show, tenthsOf } from '../../../platform/http/views.js';
import { AIRCRAFT } from '../../aircraft/aircraft.records.js';
import { Equipment } from '../../equipment/equipment.entity.js';
import { AirworthinessItem } from '../airworthiness-item.entity.js';
import { itemView, requireInterval } from '../items.service.js';
import { builtInTemplates, type BuiltIn } from './built-in.js';
import {
  type NewTemplate,
  type PutOn,
  type PutOnResult,
  type TemplateChanges,
  type TemplateList,
  TemplateView,
} from './template.dto.js';
import { ItemTemplate } from './template.entity.js';
import { valueRefused } from '../../../platform/problems/value-refused.js';

const TEMPLATES = { entity: ItemTemplate, noun: 'template' };

/** Kinds an aircraft has one item of. */
const ONE_OF_A_KIND = new Set<AirworthinessItem['kind']>([
  ...([
    'annual',
    'hours-100',
    'altimeter-static',
    'transponder',
    'elt-inspection',
    'elt-battery',
    'vor-check',
  ] as const),
]);

/** Items ready to be put on aircraft: those of the jurisdiction, and the club's own. */
@Injectable()
export class TemplatesService {
  constructor(private readonly db: TenantDb) {}

  list({ clubId }: SignedIn): Promise<TemplateList> {
    return this.db.run(clubId, async (em) => ({ items: await allTemplates(em, clubId) }), { readOnly: true });
  }

  add({ clubId, memberId }: SignedIn, body: NewTemplate): Promise<TemplateView> {
    const work = async (em: EntityManager) => {
      const values = rowOf(body);
      requireInterval(values);
      return ownView(await addRecord(em, TEMPLATES, { ...values, clubId }));
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }

  edit(
    { clubId, memberId }: SignedIn,
    id: string,
    version: number,
    changes: TemplateChanges,
  ): Promise<TemplateView> {
    const change = (row: ItemTemplate) => {
      const values = rowOf(changes);
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      requireInterval({ ...row, ...given });
      return values;
    };
    const work = async (em: EntityManager) =>
      ownView(await editRecord(em, TEMPLATES, { where: { clubId, id }, version, change }));
    return this.db.run(clubId, work, { actorId: memberId });
  }

  /** Items that came from it stay as they are. */
  remove({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    return this.db.run(clubId, (em) => removeRecord(em, TEMPLATES, { where: { clubId, id }, version }), {
      actorId: memberId,
    });
  }

  /** Puts templates on an aircraft; what is there already, or hangs on a piece it does not have, is left out and said. */
  putOn(
    { clubId, memberId }: SignedIn,
    aircraftId: string,
    { codes, since = null }: PutOn,
  ): Promise<PutOnResult> {
    const work = async (em: EntityManager): Promise<PutOnResult> => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
      const all = await allTemplates(em, clubId);
      const result: PutOnResult = { added: [], leftOut: [] };
      for (const [index, code] of codes.entries()) {
        const template = all.find((one) => one.code === code);
        if (!template)
          throw valueRefused(`codes[${index}]`, `There is no template “${code}”. Read the templates again.`);
        const put = await putOne(em, { clubId, aircraftId, since }, template);
        if (typeof put === 'string') result.leftOut.push({ code, because: put });
        else result.added.push(itemView(put, null));
      }
      return result;
    };
    return this.db.run(clubId, work, { actorId: memberId });
  }
}

async function putOne(
  em: EntityManager,
  of: { clubId: string; aircraftId: string; since: string | null },
  template: TemplateView,
): Promise<AirworthinessItem | string> {
  const { clubId, aircraftId, since } = of;
  const { kind, title, hangsOn } = template;
  const standing = await em.findBy(AirworthinessItem, { clubId, aircraftId, retiredOn: IsNull() });
  const there = standing.find((item) =>
    ONE_OF_A_KIND.has(kind) ? item.kind === kind : item.kind === kind && item.title === title,
  );
  if (there) return `The aircraft has “${there.title}” already.`;
  let equipmentId: string | null = null;
  if (hangsOn !== null) {
    const pieces = await em.findBy(Equipment, { clubId, aircraftId, removedOn: IsNull(), portable: false });
    const piece = pieces.find((one) => one.kind === hangsOn || one.satisfies.includes(hangsOn));
    if (!piece) return `The aircraft has no ${hangsOn.replaceAll('-', ' ')} on record.`;
    equipmentId = piece.id;
  }
  const { reference, scope, calendarMonths, plainMonths, days, recurring } = template;
  return addRecord(
    em,
    { entity: AirworthinessItem, noun: 'airworthiness item' },
    {
      ...{ clubId, aircraftId, kind, title, reference, scope, calendarMonths, plainMonths, days, recurring },
      ...{ intervalTenths: tenthsOf(template.intervalH), toleranceTenths: tenthsOf(template.toleranceH) },
      ...{ equipmentId, since },
    },
  );
}

async function allTemplates(em: EntityManager, clubId: string): Promise<TemplateView[]> {
  const { jurisdiction } = await em.findOneByOrFail(Club, { clubId });
  const own = await em.find(ItemTemplate, { where: { clubId }, order: { title: 'ASC' } });
  return [...builtInTemplates(jurisdiction).map(builtInView), ...own.map(ownView)];
}

function rowOf(body: Partial<NewTemplate>): Partial<ItemTemplate> {
  const { intervalH, toleranceH, ...rest } = body;
  return { ...rest, intervalTenths: tenthsOf(intervalH), toleranceTenths: tenthsOf(toleranceH) };
}

const ownView = (row: ItemTemplate): TemplateView =>
  show(TemplateView, row, {
    code: row.id,
    intervalH: hoursOf(row.intervalTenths),
    toleranceH: hoursOf(row.toleranceTenths),
  });

const builtInView = (one: BuiltIn): TemplateView =>
  show(TemplateView, { toleranceH: 0, recurring: true, ...one });
