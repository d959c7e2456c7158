import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { withBookingEffects } from '../../bookings/standing-answers.js';
import { lockFleet } from '../../fleet/aircraft/lock-fleet.js';
import { clubToday } from '../../clubs/club-time.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { AIRCRAFT } from '../../fleet/aircraft/aircraft.records.js';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { lastCompliances } from '../../fleet/airworthiness/compliance.views.js';
import { Directive, DirectiveFinding } from '../../fleet/directives/directive.entity.js';
import { isRange } from '../../fleet/directives/serials.js';
import {
  endOf,
  type Standing,
  standingsOf,
  takeUpDirectives,
  type WholeDirective,
  wholeDirectives,
} from '../../fleet/directives/take-up.js';
import { MODELS } from '../../fleet/models/models.service.js';
import { requireEquipment, requireReference } from '../../fleet/references.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, editRecord, findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { hoursOf, show, tenthsOf } from '../../platform/http/views.js';
import { CAUTION, digestOf } from '../../rules/index.js';
import { previewStale } from '../equipment-changes/equipment-changes.problems.js';
import {
  type DirectiveChanges,
  type DirectiveList,
  type DirectiveResult,
  type DirectiveStanding,
  type DirectiveStandings,
  DirectiveView,
  type NewDirective,
  type NewFinding,
} from './directive.dto.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

const DIRECTIVES = { entity: Directive, noun: 'directive' };

/** How a step is run. */
export interface Run {
  rehearse: boolean;
  preview?: string | undefined;
}

/** Directives: what they apply to, item by item and flight by flight. */
@Injectable()
export class DirectivesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  list({ clubId }: SignedIn): Promise<DirectiveList> {
    const work = async (em: EntityManager) => ({ items: (await wholeDirectives(em, clubId)).map(view) });
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** How every directive stands to one aircraft. */
  ofAircraft({ clubId }: SignedIn, aircraftId: string): Promise<DirectiveStandings> {
    const work = async (em: EntityManager) => {
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      return { items: await standingViews(em, clubId, [aircraftId]), caution: CAUTION };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Enters a directive and takes it up on every aircraft it applies to, or may. */
  add(user: SignedIn, body: NewDirective, run: Run): Promise<DirectiveResult> {
    const { clubId } = user;
    return this.step(user, run, async (em) => {
      const { modelIds = [], supersedes = null, ...rest } = body;
      if (supersedes !== null) await this.requireSuperseded(em, clubId, supersedes);
      const values = { ...columnsOf(rest), supersedes };
      await this.check(em, clubId, { ...values, modelIds });
      const { id } = await addRecord(em, DIRECTIVES, { ...values, clubId });
      await writeModels(em, clubId, id, modelIds);
      return id;
    });
  }

  /** Corrects what was entered wrong. */
  edit(
    user: SignedIn,
    id: string,
    version: number,
    changes: DirectiveChanges,
    run: Run,
  ): Promise<DirectiveResult> {
    const { clubId } = user;
    return this.step(user, run, async (em) => {
      const { modelIds, ...rest } = changes;
      const change = async (row: Directive) => {
        const values = columnsOf(rest);
        const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
        await this.check(em, clubId, { ...row, ...given, modelIds: modelIds ?? [] });
        return values;
      };
      await editRecord(em, DIRECTIVES, { where: { clubId, id }, version, change });
      if (modelIds) await writeModels(em, clubId, id, modelIds);
      return id;
    });
  }

  /** Records what somebody looked up. The newest finding counts; none is edited. */
  find(
    user: SignedIn,
    place: { aircraftId: string; directiveId: string },
    body: NewFinding,
    run: Run,
  ): Promise<DirectiveResult> {
    const { clubId, memberId } = user;
    return this.step(user, run, async (em) => {
      const { aircraftId, directiveId } = place;
      await findRecord(em, AIRCRAFT, { clubId, id: aircraftId });
      await findRecord(em, DIRECTIVES, { clubId, id: directiveId });
      const { equipmentId = null, applies, because, signedBy } = body;
      await requireEquipment(em, { clubId, aircraftId, id: equipmentId });
      const standing = (await standingsOf(em, clubId, [aircraftId])).get(aircraftId)!;
      if (!standing.some((one) => one.directive.id === directiveId && one.equipmentId === equipmentId))
        throw valueRefused(
          'equipmentId',
          'The directive is about other things: name the piece for one about equipment, and none for one about the aircraft.',
        );
      const row = { clubId, directiveId, aircraftId, equipmentId, applies, because, signedBy };
      await addRecord(em, { entity: DirectiveFinding, noun: 'finding' }, { ...row, foundBy: memberId });
      return directiveId;
    });
  }

  private step(
    { clubId, memberId }: SignedIn,
    { rehearse, preview }: Run,
    change: (em: EntityManager) => Promise<string>,
  ): Promise<DirectiveResult> {
    const work = async (em: EntityManager): Promise<DirectiveResult> => {
      const now = this.clock.now();
      const today = await clubToday(em, clubId, now);
      const fleet = await lockFleet(em, clubId);
      const aircraftIds = fleet.map(({ id }) => id);
      const { result, bookings, changed } = await withBookingEffects(em, { aircraftIds, now }, async () => {
        const id = await change(em);
        await takeUpDirectives(em, clubId, { aircraftIds, today });
        return id;
      });
      const directive = (await wholeDirectives(em, clubId)).find(({ id }) => id === result)!;
      const standings = (await standingViews(em, clubId, aircraftIds)).filter(
        ({ directiveId }) => directiveId === result,
      );
      const told = { bookingsJudged: bookings, bookings: changed };
      const digest = digestOf({
        ...told,
        standings: standings.map(({ aircraftId, equipmentId, state }) => ({
          aircraftId,
          equipmentId,
          state,
        })),
      });
      if (!rehearse && preview !== undefined && preview !== digest) throw previewStale();
      return { directive: view(directive), preview: digest, standings, ...told, caution: CAUTION };
    };
    return this.db.run(clubId, work, { actorId: memberId, rehearse });
  }

  private async requireSuperseded(em: EntityManager, clubId: string, id: string): Promise<void> {
    const old = (await wholeDirectives(em, clubId)).find((one) => one.id === id);
    if (!old) throw valueRefused('supersedes', 'The club has no such directive. Check the id.');
    if (old.supersededBy)
      throw valueRefused('supersedes', `${old.number} was superseded by ${old.supersededBy.number} already.`);
  }

  private async check(
    em: EntityManager,
    clubId: string,
    row: Partial<Directive> & { modelIds: readonly string[] },
  ): Promise<void> {
    for (const [index, id] of row.modelIds.entries())
      await requireReference(em, MODELS, { clubId, id }, `modelIds[${index}]`);
    const { appliesTo, equipmentKind = null, partNumbers = [], serials = [] } = row;
    if (appliesTo === 'equipment' && equipmentKind === null)
      throw valueRefused('equipmentKind', 'Name the kind of equipment it applies to.');
    if (appliesTo === 'aircraft' && equipmentKind !== null)
      throw valueRefused('equipmentKind', 'A directive about the aircraft names no kind of equipment.');
    if (appliesTo === 'aircraft' && partNumbers.length > 0)
      throw valueRefused('partNumbers', 'A directive about the aircraft names no part numbers.');
    const unread = serials.findIndex((range) => !isRange(range));
    if (unread !== -1)
      throw valueRefused(
        `serials[${unread}].through`,
        'Both ends of a range are written in one form, the smaller first: 101 through 240, A-12 through A-90.',
      );
    const { recurring, calendarMonths, plainMonths, days, intervalTenths } = row;
    if (recurring && ![calendarMonths, plainMonths, days, intervalTenths].some((one) => Number(one) > 0))
      throw valueRefused('calendarMonths', 'A directive that recurs says when: months, days or hours.');
  }
}

function columnsOf(body: Partial<NewDirective>): Partial<Directive> {
  const { intervalH, withinH, modelIds: _models, serials, ...rest } = body;
  return {
    ...rest,
    ...(serials === undefined ? {} : { serials: serials.map(({ from, through }) => ({ from, through })) }),
    ...{ intervalTenths: tenthsOf(intervalH), withinTenths: tenthsOf(withinH) },
  };
}

async function writeModels(
  em: EntityManager,
  clubId: string,
  directiveId: string,
  modelIds: readonly string[],
): Promise<void> {
  await em.query('DELETE FROM directive_models WHERE club_id = $1 AND directive_id = $2', [
    clubId,
    directiveId,
  ]);
  await em.query(
    'INSERT INTO directive_models (club_id, directive_id, model_id) SELECT $1, $2, m FROM unnest($3::uuid[]) AS m',
    [clubId, directiveId, modelIds],
  );
}

const view = (row: WholeDirective): DirectiveView =>
  show(DirectiveView, row, {
    intervalH: hoursOf(row.intervalTenths),
    withinH: hoursOf(row.withinTenths),
    supersededBy: row.supersededBy?.id ?? null,
  });

async function standingViews(
  em: EntityManager,
  clubId: string,
  aircraftIds: readonly string[],
): Promise<DirectiveStanding[]> {
  const standings = await standingsOf(em, clubId, aircraftIds);
  const items = await em.findBy(AirworthinessItem, {
    clubId,
    aircraftId: In([...aircraftIds]),
    kind: 'directive',
  });
  const last = await lastCompliances(
    em,
    clubId,
    items.map(({ id }) => id),
  );
  const names = await em.findBy(Aircraft, { clubId, id: In([...aircraftIds]) });
  return names
    .sort((a, b) => (a.registration < b.registration ? -1 : 1))
    .flatMap(({ id: aircraftId, registration }) =>
      (standings.get(aircraftId) ?? []).map((one) => {
        const item = items.find(
          (row) =>
            row.aircraftId === aircraftId &&
            row.directiveId === one.directive.id &&
            row.equipmentId === one.equipmentId &&
            one.state !== 'not',
        );
        return {
          ...{ aircraftId, registration, ...standingWords(one), itemId: item?.id ?? null },
          lastDoneOn: item ? (last.get(item.id)?.doneOn ?? null) : null,
        };
      }),
    );
}

function standingWords({ directive, equipmentId, state, because }: Standing) {
  const { id: directiveId, number, title, effectiveOn } = directive;
  return {
    directiveId,
    number,
    title,
    equipmentId,
    state,
    because,
    from: effectiveOn,
    until: endOf(directive),
  };
}
