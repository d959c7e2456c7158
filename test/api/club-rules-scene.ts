/** Rules of a club over HTTP, on a club in which one pilot may take one trainer. */
import type { Response } from 'supertest';
import { type Api } from '../support/api.js';
import { readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';

// The clock stands at 2026-03-10T15:00:00Z: the tenth of March in Chicago.
export const TODAY = '2026-03-10';
export const NOBODY = '01900000-0000-7000-8000-000000000000';

export const RULE = {
  slug: 'early-birds',
  title: 'No departure before nine',
  weight: 'club',
  requirement: '!flight.departsBefore("09:00")',
  message: 'Depart at nine or later; you planned {flight.departsHour} h.',
  document: 'Handbook, section 9',
};
export const alone = { ...tomorrow, purpose: 'solo', personsOnBoard: 1 };

export const problem = ({ body }: Response) => ({
  code: body.code as string,
  fields: (body.errors ?? []).map((one: { field: string }) => one.field) as string[],
});
export const etag = ({ rowVersion }: { rowVersion: number }): string => `"${rowVersion}"`;

/** A decision as the specs look at it. */
export interface Asked {
  id: string;
  answer: string;
  findings: { rule: string; status: string; says: string; version: number; conditions: string[] }[];
}

export const findingOf = (decision: Asked, code = 'club.own.early-birds') =>
  decision.findings.find(({ rule }) => rule === code);

/** The club, its officer and administrator, and the steps that specs take. */
export async function rulesScene(api: Api) {
  api.clock.set('2026-03-10T15:00:00Z');
  const ready: ReadyClub = await readyClub(api);
  const officer: Session = await ready.club.signInAs('safety-officer');
  const administrator: Session = await ready.club.signInAs('administrator');
  const draft = async (of: object = {}, who = officer): Promise<Response['body']> =>
    (await who.post('/club-rules', { ...RULE, ...of }).expect(201)).body;
  const dryRun = async ({ id }: { id: string }, body: object = {}): Promise<Response['body']> =>
    (await officer.post(`/club-rules/${id}/dry-run`, body).expect(200)).body;
  const post = (path: string, of: { id: string; rowVersion: number }, body: object) =>
    officer.post(`/club-rules/${of.id}/${path}`, body).set('If-Match', etag(of));
  /** A rule in force. */
  const active = async (of: object = {}, from = TODAY): Promise<Response['body']> => {
    const made = await draft(of);
    await dryRun(made);
    return (await post('activate', made, { from }).expect(200)).body;
  };
  const ask = async (request: object = alone, who = ready.member): Promise<Asked> => {
    const { body } = await who
      .post('/decisions', { ...request, aircraftIds: [ready.aircraftId] })
      .expect(200);
    return body.decisions[0] as Asked;
  };
  return { ready, officer, administrator, draft, dryRun, post, active, ask };
}
