import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubToday } from '../../clubs/club-time.js';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub } from '../../decisions/gather/club.js';
import type { PartPlace } from '../../fleet/aircraft-records.js';
import { AirworthinessItem } from '../../fleet/airworthiness/airworthiness-item.entity.js';
import { Deferral } from '../../fleet/squawks/deferral.entity.js';
import type { Squawk } from '../../fleet/squawks/squawk.entity.js';
import { SQUAWKS } from '../../fleet/squawks/squawks.service.js';
import { clubDeadline } from '../../fleet/squawks/triage.service.js';
import { Clock } from '../../platform/clock.js';
import { findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import {
  CAUTION,
  Prices,
  rulesetFor,
  type AircraftFacts,
  type LocalDate,
  type Policy,
  type SquawkFact,
} from '../../rules/index.js';
import type { DeferralGuide, GuideOutcome } from './deferral-guide.dto.js';
import { guideSteps, listStep, type GuideOf, type GuideStep, type Recorded } from './guide-steps.js';
import { KIND_TITLES } from '../trials/kinds-of-flight.js';
import { amended, effectOf } from './squawk-effect.js';
import { trialSheets } from '../trials/trial-sheets.js';

const SMALL = 'us.equipment.small-aircraft-lb';
const SOURCE = '14 CFR 91.213(a), (d), from memory';
const ELSEWHERE =
  "The law this club flies under is not held here, so its own procedure counts: the aircraft's minimum equipment list, and whoever may decide under it. What is recorded here is the club's note of that.";

const SAYS: Record<GuideOutcome, string> = {
  'no-deferral': 'It is repaired, not deferred. Ground the aircraft until it is fixed.',
  open: 'Steps are unanswered. A flight that depends on one gets no yes until it is answered.',
  complete: 'Every step is answered. The pilot in command still decides before each flight.',
  'by-list': 'The aircraft is flown under an approved list, which alone decides.',
  'club-procedure': ELSEWHERE,
};

/** Walks a squawk through the published steps of a deferral, with what the record knows. */
@Injectable()
export class DeferralGuideService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  guide(user: SignedIn, place: PartPlace): Promise<DeferralGuide> {
    const { clubId } = user;
    const now = this.clock.now();
    const work = async (em: EntityManager): Promise<DeferralGuide> => {
      const squawk = await findRecord(em, SQUAWKS, { clubId, ...place });
      const today = await clubToday(em, clubId, now);
      const { jurisdiction, policy } = await gatherClub(em, now);
      const frame = { deadlineOn: await clubDeadline(em, clubId, today), caution: CAUTION };
      if (jurisdiction !== 'US')
        return {
          outcome: 'club-procedure',
          says: ELSEWHERE,
          steps: [],
          source: "The club's own procedure",
          ...frame,
        };
      const [aircraft] = await gatherAircraft(em, [place.aircraftId], now, null);
      const steps = await this.steps(em, user, { squawk, facts: aircraft!.facts, policy, today });
      const outcome = outcomeOf(steps);
      const stopping = steps
        .filter(({ stops }) => stops)
        .map(({ paragraph, says }) => `${paragraph}: ${says}`);
      return { outcome, says: [...stopping, SAYS[outcome]].join(' '), steps, source: SOURCE, ...frame };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  private async steps(
    em: EntityManager,
    { clubId, memberId }: SignedIn,
    of: { squawk: Squawk; facts: AircraftFacts; policy: Policy; today: LocalDate },
  ): Promise<GuideStep[]> {
    const { squawk, facts, policy, today } = of;
    const deferral = await em.findOneBy(Deferral, { clubId, squawkId: squawk.id });
    const recorded = { ...deferral } as Recorded;
    if (!facts.type.known) throw new Error('an aircraft without a type');
    const type = facts.type.value;
    if (type.approvedEquipmentList) return [listStep({ recorded })];
    const pieces = facts.equipment.known ? facts.equipment.value : [];
    const equipment = pieces.find(({ id }) => id === squawk.equipmentId) ?? null;
    const items =
      equipment === null
        ? []
        : await em.findBy(AirworthinessItem, { clubId, equipmentId: equipment.id, kind: 'directive' });
    const neededFor =
      equipment === null
        ? null
        : await this.neededFor(em, {
            squawk,
            memberId,
            today,
            listUnknown: type.approvedEquipmentList === null,
          });
    const smallLb = new Prices(rulesetFor('US', policy).book, today).number(SMALL);
    const steps = guideSteps({
      ...{ type, equipment, neededFor, recorded, smallLb },
      directives: items.filter(({ retiredOn }) => retiredOn === null).map(({ title }) => title),
    });
    return type.approvedEquipmentList === null ? [LIST_UNKNOWN, ...steps] : steps;
  }

  /** Kinds of flight that the rules refuse even where every other step is answered as it should be. */
  private async neededFor(
    em: EntityManager,
    of: { squawk: Squawk; memberId: string; today: LocalDate; listUnknown: boolean },
  ): Promise<GuideOf['neededFor']> {
    const { squawk, memberId, today, listUnknown } = of;
    if (listUnknown) return null;
    const trials = await trialSheets(em, { aircraftId: squawk.aircraftId, memberId, now: this.clock.now() });
    const needed: NonNullable<GuideOf['neededFor']> = [];
    for (const trial of trials) {
      if ('because' in trial) continue;
      const sheet = amended(trial.sheet, squawk.id, finished(squawk.id, today));
      const { verdict, says } = effectOf(sheet, trial.policy, squawk.id);
      if (verdict === 'unknown') return null;
      if (verdict !== 'no') continue;
      const why = says.map((one) => one.says).join(' ');
      needed.push({ kind: trial.kind, title: KIND_TITLES[trial.kind], says: why });
    }
    return needed;
  }
}

const LIST_UNKNOWN: GuideStep = {
  ...{ id: 'approved-list', paragraph: '91.213(a)', by: 'record', field: null, answer: 'open', stops: false },
  question: 'Is the aircraft flown under an approved minimum equipment list?',
  says: 'It is not on record. Enter it with the aircraft: with a list, the list alone decides.',
};

/** A deferral with every step as it should be: what the rules still refuse then, the kind of flight refuses. */
const finished = (squawkId: string, on: LocalDate): Pick<SquawkFact, 'state' | 'closedAt' | 'deferral'> => ({
  state: 'deferred',
  closedAt: null,
  deferral: {
    ...{ id: `planned:${squawkId}`, on, deadlineOn: null, requiredByTypeDesign: false },
    ...{ requiredByEquipmentList: false, requiredByDirective: false, removedOrDeactivated: true },
    ...{ placarded: true, recorded: true, noHazardDeterminedBy: 'planned', equipmentListItem: null },
  },
});

function outcomeOf(steps: readonly GuideStep[]): GuideOutcome {
  if (steps.some(({ stops }) => stops)) return 'no-deferral';
  if (steps.length === 1 && steps[0]!.id === 'list-item') return 'by-list';
  const missing = ({ id, answer, by }: GuideStep): boolean =>
    answer === 'open' || (by === 'person' && answer === 'no' && MUST_BE_DONE.has(id));
  return steps.some(missing) ? 'open' : 'complete';
}

const MUST_BE_DONE = new Set(['removed-or-deactivated', 'placarded', 'recorded']);
