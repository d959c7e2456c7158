/**
 * Hostile clients against every operation of the served API description: without a token, with the wrong role, with
 * another club's identifiers, with everything that is not what the description says. Nothing may be answered with a
 * success or a fault of the server, and nothing may be written.
 */
import { newId } from '../../src/platform/ids.js';
import { ROLES } from '../../src/accounts/roles.js';
import { startApi, type Api, type Session } from '../support/api.js';
import { ALSO, BODIES } from './hostile/bodies.js';
import { TEN_MEGABYTES, WRONG_BODIES, wrongFor } from './hostile/mutations.js';
import { idFieldsOf, operationsOf, resolve, type Description, type Operation } from './hostile/operations.js';
import { allowedTo, OPEN } from './hostile/roles.js';
import { contentsOf, hostileScene, type Scene } from './hostile/scene.js';
import { Sender, type Answer, type Wire } from './hostile/sender.js';

const STALE = { headers: { 'If-Match': '"999"' } };
/** What changing a password says when the present one is wrong: the body's, so the caller was let in. */
const WRONG_PASSWORD = 'sign-in-refused';
/** Acts that need a key to be repeated safely. */
const KEYED = [
  ...['book', 'confirmTrack', 'importLog', 'importStatus'],
  ...['bookAny', 'goOnStandby'],
  ...['dispatchFlight', 'returnFlight', 'correctReturn', 'setDueBack'],
  ...['adjustAccount', 'recordReceipt'],
  ...['editBooking', 'acceptHandOver', 'bookSeries', 'editSeries', 'holdSlot', 'confirmHold'],
];
/** A stream is let end. */
const BRIEFLY: Record<string, string> = { listenLive: '?seconds=1' };
const STRANGER = '01900000-0000-7000-8000-000000000000';
/** Parts of addresses that are the same for every club. */
const SHARED: Record<string, string> = {
  kind: 'medicals',
  // A calendar's address is its own proof, from whichever club.
  token: 'no-address-of-ours.ics',
  ...{ code: 'not-found', rule: 'recency.passengers.day', parameterId: 'club.model-recency.days' },
};

// Every operation is tried in many ways; a busy machine takes minutes over some of them.
jest.setTimeout(300_000);

describe('hostile clients', () => {
  let api: Api;
  let sender: Sender;
  let description: Description;
  let operations: Operation[];
  let home: Scene;
  let abroad: Scene;
  let before: Record<string, string>;
  const codes = new Set<string>();

  beforeAll(async () => {
    api = await startApi();
    sender = new Sender(api);
    description = (await sender.send({ method: 'GET', path: '/api/v1/openapi.json' }))
      .body as unknown as Description;
    operations = operationsOf(description);
    home = await hostileScene(api);
    abroad = await hostileScene(api);
    before = await contentsOf(api, [home.clubId, abroad.clubId]);
  }, 300_000);
  afterAll(async () => {
    sender.close();
    await api.stop();
  });

  /** Nothing was written since the scenes were made, in either club. */
  const unwritten = async (): Promise<void> =>
    expect(await contentsOf(api, [home.clubId, abroad.clubId])).toEqual(before);

  const behindSignIn = (): Operation[] => operations.filter((operation) => !operation.open);
  const pathOf = (operation: Operation, param: (name: string) => string): string =>
    operation.path.replace(/\{(\w+)\}/g, (_all, name: string) => param(name));
  const ownPath = (operation: Operation, scene = home): string =>
    pathOf(operation, (name) => SHARED[name] ?? scene.param(operation.path, name));
  const headersOf = (operation: Operation): Record<string, string> => ({
    ...(operation.versioned ? { 'If-Match': operation.id === 'editSquawk' ? '"2"' : '"1"' } : {}),
    ...(KEYED.includes(operation.id) ? { 'Idempotency-Key': newId() } : {}),
  });
  const bodyOf = (operation: Operation, scene = home): Record<string, unknown> | undefined => {
    if (!operation.body) return undefined;
    const body = BODIES[operation.id];
    if (!body) throw new Error(`no sound body for ${operation.id}`);
    return body(scene.ids);
  };
  const sound = (operation: Operation, who: Session = home.chief): Wire => ({
    method: operation.method,
    path: ownPath(operation) + (BRIEFLY[operation.id] ?? ''),
    token: who.token,
    headers: headersOf(operation),
    body: bodyOf(operation),
  });

  /** Runs the cases a few at a time and gives those that were answered wrongly, in words. */
  const faults = async (
    cases: { at: string; wire: Wire; judge: (answer: Answer) => string | null }[],
  ): Promise<string[]> => {
    const found: string[] = [];
    const queue = [...cases];
    await Promise.all(
      Array.from({ length: 8 }, async () => {
        for (let next = queue.shift(); next; next = queue.shift()) {
          const answer = await sender.send(next.wire);
          if (answer.type.startsWith('application/problem+json')) codes.add(answer.body.code!);
          const fault = next.judge(answer);
          if (fault) found.push(`${next.at}: ${fault}`);
        }
      }),
    );
    return found.sort();
  };

  /** A refusal: a problem document of one of the statuses, naming the field when one is given, giving nothing away. */
  const refused =
    (statuses: number[] | 'any', field?: string) =>
    (answer: Answer): string | null => {
      const short = `${answer.status} ${answer.text.slice(0, 200)}`;
      const right =
        statuses === 'any' ? answer.status >= 400 && answer.status < 500 : statuses.includes(answer.status);
      if (!right) return short;
      if (!answer.type.startsWith('application/problem+json')) return `not a problem document: ${short}`;
      if (
        /\bat .*\.[jt]s:\d|node_modules|\bSELECT\b|\bINSERT\b|\bUPDATE\b.*\bSET\b|syntax error at|QueryFailed/.test(
          answer.text,
        )
      )
        return `gives the inside away: ${short}`;
      if (answer.text.length > 20_000) return `as long as ${answer.text.length}`;
      const named = (answer.body.errors ?? []).map((error) => error.field);
      if (
        field !== undefined &&
        !named.some((name) => name === field || name.startsWith(`${field}.`) || name.startsWith(`${field}[`))
      )
        return `does not name ${field} but ${named.join()}: ${short}`;
      return null;
    };

  test('the description is walked whole', () => {
    expect(operations.length).toBeGreaterThan(110);
    expect(operations.filter((operation) => operation.open).map((operation) => operation.id)).toEqual(OPEN);
    for (const operation of operations) {
      if (operation.body)
        expect([operation.id, typeof BODIES[operation.id]]).toEqual([operation.id, 'function']);
      if (!operation.open) expect(ownPath(operation)).not.toContain('{');
    }
    const known = new Set(operations.map((operation) => operation.id));
    expect(Object.keys(BODIES).filter((id) => !known.has(id))).toEqual([]);
  });

  test('without a token, or with a bad one, there is nothing but 401', async () => {
    const tokens = [undefined, 'x', 'eyJhbGciOiJub25lIn0.e30.', `${home.chief.token.slice(0, -4)}AAAA`];
    const cases = behindSignIn().flatMap((operation) =>
      tokens.map((token) => ({
        at: `${operation.id} with ${token?.slice(0, 8)}`,
        wire: { ...sound(operation), token },
        judge: refused([401]),
      })),
    );
    expect(cases.length).toBe(4 * (operations.length - OPEN.length));
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test('each role is refused what is not for it', async () => {
    const cases = ROLES.flatMap((role) =>
      behindSignIn()
        .filter((operation) => !allowedTo(operation.id).includes(role))
        .map((operation) => ({
          at: `${role} ${operation.id}`,
          wire: sound(operation, home.others[role]),
          judge: refused([403, 404]),
        })),
    );
    expect(cases.length).toBeGreaterThan(250);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test("another club's identifier in an address is as unknown as any", async () => {
    const cases = operations.flatMap((operation) =>
      operation.parameters
        .filter((parameter) => parameter.in === 'path' && !(parameter.name in SHARED))
        .flatMap(({ name }) =>
          [abroad.param(operation.path, name), STRANGER].map((id) => ({
            at: `${operation.id} {${name}}`,
            wire: {
              ...sound(operation),
              path: pathOf(operation, (each) =>
                each === name ? id : (SHARED[each] ?? home.param(operation.path, each)),
              ),
            },
            judge: refused([404]),
          })),
        ),
    );
    expect(cases.length).toBeGreaterThan(200);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test("another club's identifier in a body or a query is refused by the name of its field", async () => {
    const cases = operations.flatMap((operation) => [
      ...idFieldsOf(operation).flatMap((field) => {
        const name = field.replace('[]', '');
        const id = foreign(operation, name);
        const value = field.endsWith('[]') ? [id] : id;
        const body = ALSO[operation.id]?.[name]?.(home.ids, id) ?? { ...bodyOf(operation), [name]: value };
        return [
          {
            at: `${operation.id} ${field}`,
            wire: { ...sound(operation), body },
            judge: refused([403, 404, 409, 422], name),
          },
        ];
      }),
      ...operation.parameters
        .filter((parameter) => parameter.in === 'query' && parameter.schema?.format === 'uuid')
        .map(({ name }) => ({
          at: `${operation.id} ?${name}`,
          wire: { ...sound(operation), path: `${ownPath(operation)}?${name}=${foreign(operation, name)}` },
          judge: refused([404], name),
        })),
    ]);
    expect(cases.length).toBeGreaterThan(25);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });
  const foreign = (_operation: Operation, name: string): string => {
    const id = abroad.ids[name] ?? abroad.ids.instructorMemberId;
    return id!;
  };

  test('fields that are not what they should be are refused by name', async () => {
    const cases = operations.flatMap((operation) =>
      Object.entries(operation.body?.schema.properties ?? {}).flatMap(([name, schema]) =>
        wrongFor(resolve(description, schema)).map(([what, value]) => ({
          at: `${operation.id} ${name} is ${what}`,
          wire: { ...sound(operation), body: { ...bodyOf(operation), [name]: value } },
          judge: refused('any', name),
        })),
      ),
    );
    expect(cases.length).toBeGreaterThan(1500);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test('bodies that are wrong as a whole are refused', async () => {
    const withBody = operations.filter((operation) => operation.body);
    const cases = withBody.flatMap((operation) => [
      ...WRONG_BODIES.map(([what, body, headers, statuses]) => ({
        at: `${operation.id} sent ${what}`,
        wire: { ...sound(operation), body, headers: { ...headersOf(operation), ...headers } },
        judge: refused(statuses),
      })),
      {
        at: `${operation.id} sent ten megabytes`,
        wire: { ...sound(operation), body: TEN_MEGABYTES },
        judge: refused([413]),
      },
      ...(operation.body!.schema.required?.length || operation.method === 'PATCH'
        ? [
            {
              at: `${operation.id} sent nothing`,
              wire: { ...sound(operation), body: undefined },
              judge: refused([400]),
            },
          ]
        : []),
      {
        at: `${operation.id} with a field more`,
        wire: { ...sound(operation), body: { ...bodyOf(operation), colour: 'red' } },
        judge: refused([400], 'colour'),
      },
    ]);
    expect(cases.length).toBeGreaterThan(15 * withBody.length);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test('addresses and queries that cannot be read are refused', async () => {
    const bad = ['1', '%00', '%zz', '%2e%2e', "'%20OR%201=1", 'x'.repeat(4000), `${STRANGER}x`, '-1'];
    const cases = operations.flatMap((operation) => [
      ...operation.parameters
        .filter((parameter) => parameter.in === 'path')
        .flatMap(({ name }) =>
          bad.map((text) => ({
            at: `${operation.id} {${name}} ${text.slice(0, 12)}`,
            wire: {
              ...sound(operation),
              path: pathOf(operation, (each) =>
                each === name ? text : (SHARED[each] ?? home.param(operation.path, each)),
              ),
            },
            judge: refused([400, 404]),
          })),
        ),
      ...operation.parameters
        .filter((parameter) => parameter.in === 'query')
        .flatMap(({ name, schema }) =>
          [...wrongQuery(name), ...(schema?.enum || schema?.format ? ['joyride', ''] : [])].map((text) => ({
            at: `${operation.id} ?${name}=${text.slice(0, 20)}`,
            wire: { ...sound(operation), path: `${ownPath(operation)}?${name}=${text}` },
            judge: refused([400], text === '%00' ? undefined : name),
          })),
        ),
    ]);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });
  const wrongQuery = (name: string): string[] => {
    if (name === 'limit') return ['0', '-1', '1e3', '99999999999', '1.5', 'all', '1&limit=2', '%00'];
    if (name === 'cursor') return ['x', 'WzFd', 'bnVsbA', 'x'.repeat(2000), 'a&cursor=b', '%00', 'e30'];
    return ['%00', 'x&' + name + '=y', 'x'.repeat(2000)];
  };

  test('an edit needs the version it was made on', async () => {
    const versioned = operations.filter((operation) => operation.versioned);
    expect(versioned.length).toBeGreaterThan(30);
    const without = (operation: Operation, header: string | null): Wire => ({
      ...sound(operation),
      headers: {
        ...(header === null ? {} : { 'If-Match': header }),
        ...(KEYED.includes(operation.id) ? { 'Idempotency-Key': newId() } : {}),
      },
    });
    const cases = versioned.flatMap((operation) => [
      { at: `${operation.id} without`, wire: without(operation, null), judge: refused([428], 'If-Match') },
      { at: `${operation.id} *`, wire: without(operation, '*'), judge: refused([428], 'If-Match') },
      ...['"999"', 'W/"1"', '"-1"', '"99999999999999999999"', '"1" OR "2"'].map((header) => ({
        at: `${operation.id} ${header}`,
        wire: without(operation, header),
        judge: refused([412]),
      })),
    ]);
    expect(await faults(cases)).toEqual([]);
    await unwritten();
  });

  test('every kind of refusal that was given has a page that explains it', async () => {
    expect(codes.size).toBeGreaterThan(8);
    const cases = [...codes].map((code) => ({
      at: code,
      wire: { method: 'GET', path: `/problems/${code}` },
      judge: (answer: Answer) => (answer.status === 200 ? null : `${answer.status}`),
    }));
    expect(await faults(cases)).toEqual([]);
  });

  // Last, since it writes: what the table of roles allows is let in, or the refusals above would prove nothing.
  test('each role is let into what is for it', async () => {
    const cases = ROLES.flatMap((role) =>
      behindSignIn()
        .filter((operation) => allowedTo(operation.id).includes(role))
        .map((operation) => ({
          at: `${role} ${operation.id}`,
          // Edits are made on a version that is not there, so that no role takes the record away from the next.
          wire: { ...sound(operation, home.others[role]), ...(operation.versioned ? STALE : {}) },
          judge: ({ status, text, body }: Answer) =>
            (status < 500 && ![401, 403, 404].includes(status)) || body.code === WRONG_PASSWORD
              ? null
              : `${status} ${text.slice(0, 200)}`,
        })),
    );
    expect(cases.length).toBeGreaterThan(200);
    // Grounding a squawk ends its deferral, so those that need one come first.
    const early = cases.filter((one) => one.at.endsWith('Deferral'));
    expect(await faults(early)).toEqual([]);
    expect(await faults(cases.filter((one) => !early.includes(one)))).toEqual([]);
  });
});
