/** A world small enough to work out by hand: rules that want sign-offs by name, and acts that give them at round prices. */
import {
  defineRule,
  known,
  ParameterBook,
  ruleList,
  toInstant,
  toSeconds,
  type FactKey,
  type FactSheet,
  type Remedy,
  type Rule,
} from '../../../src/rules/index.js';
import type { Effect } from '../../../src/rules/engine/remedy.js';
import { CLUB_COSTS } from '../../../src/rules/parameters/club/costs.js';
import type { ActEntry } from '../../../src/rules/ways/acts.js';
import { advance } from '../../../src/rules/ways/advance.js';
import { offersAgainst } from '../../../src/rules/ways/offers.js';
import { isRefusal, place, type Placed, type Refusal } from '../../../src/rules/ways/place.js';
import { rootOf } from '../../../src/rules/ways/search.js';
import type { Offer, State, Unit } from '../../../src/rules/ways/state.js';
import { settle, stepsWith, type Step } from '../../../src/rules/ways/steps.js';
import type { WaysQuestion } from '../../../src/rules/ways/types.js';
import { worldOf, type World } from '../../../src/rules/ways/world.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import * as records from '../../../src/rules/workshop/records.js';

/** Eight in the morning in Denver, on a long day. */
export const KNOWN_AT = '2027-06-10T14:00:00Z';
export const START = toSeconds(KNOWN_AT);

/** 100 an hour, 40 for an instructor, 10 for the member's hour; half an hour there and back, two hours at most. */
const PRICES: Record<string, number> = {
  'cost.aircraft-hour': 100,
  'cost.instructor-hour': 40,
  'cost.document': 30,
  'cost.medical-exam': 140,
  'cost.course': 10,
  'cost.hours.sortie': 0.5,
  'cost.hours.longest': 2,
  'cost.hours.check': 1,
  'cost.hours.landing': 0.25,
  'cost.hours.office': 0.5,
  'cost.points.officer': 50,
  'cost.value-of-hour': 10,
  'cost.value-of-day': 5,
  'cost.value-of-point': 2,
  'lead.alone': 0,
  'lead.instructor': 0,
  'lead.document': 4,
  'lead.course': 2,
  'lead.office': 0,
};

export interface ToyAct extends Partial<ActEntry> {
  /** Sign-offs it gives; or what it does besides. */
  gives: string[];
  effects?: (today: string) => Effect[];
}

export interface Want {
  token: string;
  /** Acts the rule offers. */
  offers: string[];
  /** The same, where it hangs on the day on which the rule is asked. */
  offersOn?: (today: string) => string[];
  weight?: Rule['weight'];
  binds?: Rule['binds'];
  on?: string[];
  reads?: FactKey[];
}

export const signOff = (token: string, on: string): object => ({
  ...records.CHECKOUT,
  id: `token-${token}`,
  modelId: token,
  aircraftId: null,
  on,
  expiresOn: null,
});

/** An entry of the catalogue. */
export const entry = (of: Partial<ActEntry>): ActEntry => ({
  kind: 'paper',
  lead: null,
  air: null,
  ground: null,
  fee: null,
  payer: 'member',
  instructed: false,
  points: null,
  sketch: null,
  ...of,
});

export const flown = (
  of: Partial<ActEntry> & Pick<ActEntry, 'air'>,
  light: 'day' | 'night' | 'any' = 'any',
) => ({
  kind: 'flight' as const,
  sketch: { with: 'nobody' as const, light },
  ...of,
});
export const taught = (
  of: Partial<ActEntry> & Pick<ActEntry, 'air'>,
  light: 'day' | 'night' | 'any' = 'any',
) => ({
  kind: 'flight' as const,
  instructed: true,
  sketch: { with: 'instructor' as const, light },
  ...of,
});

/** A question in few words. */
export interface Toy {
  wants: Want[];
  acts: Record<string, ToyAct>;
  prices?: Record<string, number>;
  /** Hours until the flight. */
  hours?: number;
  change?: (sheet: FactSheet) => void;
}

export function question(of: Toy): WaysQuestion {
  const sheet = baseSheet();
  const departs = START + (of.hours ?? 240) * 3600;
  sheet.knownAt = KNOWN_AT;
  sheet.flight = {
    ...sheet.flight,
    departs: toInstant(departs),
    arrives: toInstant(departs + 3600),
    purpose: 'maintenance',
  };
  sheet.people['member-1']!.checkouts = known([], KNOWN_AT);
  of.change?.(sheet);
  const values = Object.entries({ ...PRICES, ...of.prices }).map(([id, value]) => ({
    id: `club.${id}`,
    from: '2000-01-01',
    value,
    reference: 'toy',
  }));
  const policy = {
    values: [...values, { id: 'club.override.allowed', from: '2000-01-01', value: true, reference: 'toy' }],
  };
  return {
    sheet,
    policy,
    ruleset: {
      rules: ruleList(...of.wants.map((want) => ruleOf(want, of.acts))),
      book: new ParameterBook(CLUB_COSTS, policy),
    },
    catalogue: (act) => {
      const found = of.acts[act];
      if (!found) return undefined;
      const { gives: _, effects: __, ...rest } = found;
      return entry(rest);
    },
  };
}

function ruleOf(want: Want, acts: Record<string, ToyAct>): object {
  const {
    token,
    offers,
    offersOn = () => offers,
    weight = 'law',
    binds = 'pilot',
    on = ['maintenance'],
    reads = [],
  } = want;
  return defineRule({
    id: `toy.${token}`,
    title: `Token ${token}`,
    weight,
    binds,
    reads: ['member.checkouts', ...reads],
    parameters: [],
    branches: {
      'not-asked': { status: 'not-applicable', says: 'Not asked.' },
      has: { status: 'met', says: 'Has it.' },
      lacks: { status: 'short', says: 'Lacks it.' },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: { text: 'toy', status: 'club paper' },
        judge(f, moment, _p, take) {
          if (!on.includes(f.flight.purpose)) return take('not-asked');
          const held = f
            .get('member.checkouts')
            .some((one) => one.modelId === token && moment.startsOnOrAfter(one.on));
          if (held) return take('has');
          return take(
            'lacks',
            {},
            { remedies: () => remediesFor(offersOn(moment.knowledgeDate()), acts, moment.knowledgeDate()) },
          );
        },
      },
    ],
  });
}

function remediesFor(offers: string[], acts: Record<string, ToyAct>, today: string): Remedy[] {
  return offers.map((act) => {
    const { gives, effects } = acts[act]!;
    return {
      act,
      title: `Do ${act}.`,
      by: 'member' as const,
      effects: [
        ...gives.map((token): Effect => ({
          op: 'append',
          fact: 'member.checkouts',
          value: signOff(token, today),
        })),
        ...(effects?.(today) ?? []),
      ],
    };
  });
}

/** The world of a question, and its root with the request settled. */
export function settledIn(of: WaysQuestion, more: Partial<World> = {}): { world: World; root: State } {
  const world = { ...worldOf(of), ...more };
  return { world, root: taken(settle(rootOf(world)).take()) };
}

export function taken(state: State | Refusal): State {
  if (isRefusal(state)) throw new Error(`refused: ${state.refused}`);
  return state;
}

export const wants = (...of: [token: string, ...offers: string[]][]): Want[] =>
  of.map(([token, ...offers]) => ({ token, offers }));
export const paper = (...gives: string[]): ToyAct => ({ gives, fee: 'document' });
export const hour = (...gives: string[]): ToyAct => ({ gives, ...flown({ air: 'check' }) });
export const lesson = (...gives: string[]): ToyAct => ({ gives, ...taught({ air: 'check' }) });
export const quarter = (light: 'day' | 'night' | 'any', ...gives: string[]): ToyAct => ({
  gives,
  ...flown({ air: 'landing' }, light),
});
/** So many tenths of an hour in the air. */
export const logged = (tenths: number, ...gives: string[]): ToyAct => ({
  gives,
  ...flown({ air: 'logged' }),
  effects: () => [{ op: 'append', fact: 'member.log', value: { id: 'new', totalTenths: tenths } }],
});

/** A question with its request settled, and what can be done from there. */
export class Scene {
  readonly world: World;
  readonly root: State;
  constructor(of: Toy) {
    ({ world: this.world, root: this.root } = settledIn(question(of)));
  }
  offer(act: string, state = this.root): Offer {
    const found = offersAgainst(this.world, state).find((one) => one.act === act);
    if (!found) throw new Error(`no ${act}`);
    return found;
  }
  unit(acts: string, dual = false): Unit {
    return { offers: acts.split(' ').map((act) => this.offer(act)), dual };
  }
  place(acts: string, dual = false, from?: number): Placed | Refusal {
    return place(this.world, this.root, this.unit(acts, dual), from);
  }
  flight(acts: string, dual = false): NonNullable<Placed['sortie']> {
    const placed = this.place(acts, dual);
    if (isRefusal(placed)) throw new Error(`refused: ${placed.refused}`);
    return placed.sortie!;
  }
  refused(acts: string, dual = false): string | false {
    const placed = this.place(acts, dual);
    return (
      isRefusal(placed) && `${placed.refused} ${placed.blockers.map(({ rule }) => this.rule(rule)).join()}`
    );
  }
  rule(index: number): string {
    return this.world.ruleset.rules[index]!.id;
  }
  do(unit: Unit, state = this.root): State {
    return taken(advance(this.world, state, unit));
  }
  steps(act: string, state = this.root): (Step | Refusal)[] {
    return stepsWith(this.world, state, this.offer(act, state));
  }
}
