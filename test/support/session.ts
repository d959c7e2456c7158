import request from 'supertest';
import type { Role } from '../../src/accounts/roles.js';

/** Who a session is for. */
export interface SessionOf {
  memberId: string;
  accountId: string;
  name: string;
  email: string;
  roles: Role[];
  token: string;
}

type Server = Parameters<typeof request>[0];

/** A signed-in member. Paths are below /api/v1; every method gives a supertest request to go on with. */
export class Session implements SessionOf {
  memberId: string;
  accountId: string;
  name: string;
  email: string;
  roles: Role[];
  /** As given at sign-in, for 15 minutes of the test's clock; requests carry a fresh one, so the clock may be moved. */
  token: string;

  constructor(
    private readonly server: Server,
    person: SessionOf,
    private readonly freshToken: () => string = () => person.token,
  ) {
    Object.assign(this, person);
  }

  get(path: string): request.Test {
    return this.sign(request(this.server).get(`/api/v1${path}`));
  }

  post(path: string, body: object = {}): request.Test {
    return this.sign(request(this.server).post(`/api/v1${path}`)).send(body);
  }

  /** Every item of a list, fetched page by page; `path` has its query already: '/members?limit=2'. */
  async all<T>(path: string): Promise<T[]> {
    const items: T[] = [];
    for (let cursor: string | null = ''; cursor !== null;) {
      const answer: request.Response = await this.get(
        cursor === '' ? path : `${path}&cursor=${cursor}`,
      ).expect(200);
      items.push(...(answer.body.items as T[]));
      cursor = answer.body.nextCursor as string | null;
    }
    return items;
  }

  /** `ifMatch` is the ETag as the service gave it, quotes included. */
  patch(path: string, body: object, ifMatch?: string): request.Test {
    return this.sign(request(this.server).patch(`/api/v1${path}`), ifMatch).send(body);
  }

  put(path: string, body: object, ifMatch?: string): request.Test {
    return this.sign(request(this.server).put(`/api/v1${path}`), ifMatch).send(body);
  }

  delete(path: string, ifMatch?: string): request.Test {
    return this.sign(request(this.server).delete(`/api/v1${path}`), ifMatch);
  }

  private sign(test: request.Test, ifMatch?: string): request.Test {
    test.set('Authorization', `Bearer ${this.freshToken()}`);
    return ifMatch === undefined ? test : test.set('If-Match', ifMatch);
  }
}
