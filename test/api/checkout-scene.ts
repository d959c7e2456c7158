/** A club with a checkout laid down, step by step through the API. */
import type { Api, Session, TestClub } from '../support/api.js';
import { seedFleet, type SeededFleet } from '../support/seed-fleet.js';

export interface Item {
  id: string;
  title: string;
}
export interface Requirement {
  id: string;
  rowVersion: number;
  inForce: { id: string; number: number; items: Item[] } | null;
  draft: { id: string; number: number; items: Item[] } | null;
}

/** What is left of a member's checkouts, as far as the specs look at it. */
export interface Entry {
  requirementId: string | null;
  kind: string;
  subject: string;
  state: string;
  ready: boolean;
  itemsLeft: number;
  youMaySign: boolean;
  difference: { id: string; aircraftId: string } | null;
  items: { itemId: string; title: string; state: string; mark: { id: string; note: string } | null }[];
  quiz: { state: string; bestPercent: number | null; notBefore: string | null } | null;
  prerequisites: { title: string; standing: boolean }[];
  signOff: { expiresOn: string | null; likeModel: boolean } | null;
}

export const TURN = {
  title: 'Steep turns',
  standard: 'Within 100 ft, 10 kt and 10 degrees',
  manoeuvre: 'steep_turn',
};
export const LANDING = { title: 'Landings', standard: 'Three on the first third, on the centreline' };
export const RADIO = { title: 'Radio', standard: 'Calls without help', required: false };

export class CheckoutScene {
  private constructor(
    readonly api: Api,
    readonly club: TestClub,
    readonly fleet: SeededFleet,
    readonly officer: Session,
    readonly teacher: Session,
    readonly other: Session,
    readonly learner: Session,
  ) {}

  static async make(api: Api): Promise<CheckoutScene> {
    const club = await api.createClub();
    const fleet = await seedFleet(api.sql, club.clubId);
    return new CheckoutScene(
      api,
      club,
      fleet,
      await club.signInAs('safety-officer', { name: 'Olga Officer' }),
      await club.signInAs('instructor', { name: 'Tess Teacher' }),
      await club.signInAs('instructor', { name: 'Otto Other' }),
      await club.signInAs('member', { name: 'Lee Learner' }),
    );
  }

  /** Lays one down and publishes it. */
  async inForce(body: Record<string, unknown>): Promise<Requirement> {
    const added = await this.draft(body);
    return this.publish(added);
  }

  async draft(body: Record<string, unknown>): Promise<Requirement> {
    const whole = { title: 'Checkout', items: [TURN, LANDING], ...body };
    return (await this.officer.post('/checkout-requirements', whole).expect(201)).body as Requirement;
  }

  async publish({ id, rowVersion }: Requirement): Promise<Requirement> {
    return (
      await this.officer
        .post(`/checkout-requirements/${id}/publish`)
        .set('If-Match', `"${rowVersion}"`)
        .expect(200)
    ).body as Requirement;
  }

  model(more: Record<string, unknown> = {}): Promise<Requirement> {
    return this.inForce({ kind: 'model', modelId: this.fleet.modelId, title: 'Trainer', ...more });
  }

  async mark(itemId: string, more: Record<string, unknown> = {}, by = this.teacher): Promise<{ id: string }> {
    const { body } = await by.post(this.marks, { itemId, outcome: 'signed', ...more }).expect(201);
    return body as { id: string };
  }

  get marks(): string {
    return `/members/${this.learner.memberId}/checkout-marks`;
  }

  get checkouts(): string {
    return `/members/${this.learner.memberId}/checkouts`;
  }

  async progress(by = this.learner): Promise<Entry[]> {
    const { body } = await by.get(`/members/${this.learner.memberId}/checkout-progress`).expect(200);
    return (body as { checkouts: Entry[] }).checkouts;
  }

  async entry(of: { id: string }, by = this.learner): Promise<Entry> {
    return (await this.progress(by)).find((one) => one.requirementId === of.id && one.difference === null)!;
  }
}
