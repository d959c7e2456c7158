import { CAUTION, localClock, type LocalDate } from '../../rules/index.js';
import type { NightSpan } from '../../rules/sky/nights.js';
import { pairKey } from '../rust/conditions.js';
import {
  conditionSaid,
  TASK_NAMES,
  write,
  type DecayModel,
  type PlanItem,
  type PracticePlan,
  type Rust,
} from '../rust/index.js';
import type { Level, Limits, Measure } from '../tolerances/index.js';
import type { PlanItemView, PracticePlanView, RustListView, RustView } from './advice.dto.js';
import { checkoutSays } from './checkout-lacks.js';
import type { OpenCheckout } from './needs.js';

const round = (value: number, digits: number): number => Number(value.toFixed(digits));

const MEASURE_WORDS: Record<Measure, [what: string, unit: string]> = {
  altitudeDevFt: ['altitude', 'ft'],
  airspeedDevKt: ['airspeed', 'kt'],
  headingDevDeg: ['heading', '°'],
  rolloutDevDeg: ['roll-out', '°'],
  bankDeg: ['bank', '°'],
  bankDevDeg: ['bank held', '°'],
  touchdownBeyondPointFt: ['touchdown beyond the point', 'ft'],
  needleShare: ['needle', 'of full scale'],
  minimumDevFt: ['above the minimum', 'ft'],
  arcDevNm: ['arc', 'nm'],
};

/** A tolerance in words: 'altitude ±100 ft'. */
function toleranceSays([measure, [least, most]]: [Measure, Limits]): string {
  const [what, unit] = MEASURE_WORDS[measure];
  const signed = (value: number): string => (value > 0 ? `+${value}` : `${value}`.replace('-', '−'));
  const span =
    least === -most
      ? `±${most}`
      : measure === 'bankDeg'
        ? `${least} to ${most}`
        : `${signed(least)} to ${signed(most)}`;
  return `${what} ${span}${unit === '°' ? '°' : ` ${unit}`}`;
}

export function rustListView(of: {
  on: LocalDate;
  levels: readonly Level[];
  rusts: readonly Rust[];
  decay: DecayModel;
}): RustListView {
  const { decay } = of;
  const items = of.rusts
    .map(rustView)
    .sort((a, b) => b.rust - a.rust || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  const model =
    `Half of what was there is lost in ${decay.firstHalfLifeDays} days after one performance to standard; each further one at least ` +
    `${decay.spacingDays} days later makes that ${decay.growth} times as long, up to ${decay.longestHalfLifeDays} days, and one outside the ` +
    `standard leaves ${Math.round(decay.outsideShare * 100)} % of it. These numbers are the club’s own and no science.`;
  return { on: of.on, levels: [...of.levels], items, model, caution: CAUTION };
}

const rustView = (one: Rust): RustView => ({
  ...{
    manoeuvre: one.manoeuvre,
    title: TASK_NAMES[one.manoeuvre],
    condition: write(conditionSaid(one.condition)),
  },
  ...{ key: pairKey(one.manoeuvre, one.condition), rust: round(one.rust, 3), lastGoodOn: one.lastGoodOn },
  ...{ days: one.days, halfLifeDays: one.halfLifeDays === null ? null : round(one.halfLifeDays, 1) },
  ...{ spaced: one.spaced, evidence: one.evidence, says: one.said.map(write) },
});

export function planView(
  plan: PracticePlan,
  of: {
    on: LocalDate;
    zone: string;
    home: { code: string; night: NightSpan } | null;
    checkouts: readonly OpenCheckout[];
  },
): PracticePlanView {
  const { minutes } = plan;
  return {
    ...{ on: of.on, items: plan.items.map(itemView), dual: plan.dual },
    ...{ transitMinutes: minutes.transit, totalMinutes: minutes.total, totalH: plan.totalTenths / 10 },
    leftOut: plan.leftOut.map(({ manoeuvre, condition, reason, why }) => ({
      ...{
        title: TASK_NAMES[manoeuvre],
        condition: write(conditionSaid(condition)),
        reason,
        why: why.map(write),
      },
    })),
    notes: [...(of.home ? [hoursSay(of.home, of.zone, plan)] : []), ...of.checkouts.map(checkoutSays)],
    cautions: [...plan.cautions.map(write), CAUTION],
  };
}

/** Which hours of the day suit. Night as 14 CFR 61.57(b) counts it. */
function hoursSay(
  { code, night }: { code: string; night: NightSpan },
  zone: string,
  plan: PracticePlan,
): string {
  const clock = (at: number): string => localClock(at, zone);
  const span = `${clock(night.from)} to ${clock(night.to)}`;
  return plan.items.some(({ condition }) => condition.kind === 'night')
    ? `Landings count as at night at ${code} from ${span}: fly those then, and the rest before.`
    : `Before ${clock(night.from)} it is day at ${code}, for landings that count as by day.`;
}

const itemView = (item: PlanItem): PlanItemView => ({
  ...{
    manoeuvre: item.manoeuvre,
    title: TASK_NAMES[item.manoeuvre],
    times: item.times,
    minutes: item.minutes,
  },
  ...{ condition: write(conditionSaid(item.condition)), document: item.tolerance?.document ?? null },
  tolerances: (Object.entries(item.tolerance?.limits ?? {}) as [Measure, Limits][]).map(toleranceSays),
  ...{ withInstructor: item.withInstructor, ifOffered: item.ifOffered, rust: round(item.rust, 3) },
  why: item.why.map(write),
});
