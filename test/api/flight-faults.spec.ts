/**
 * A flaky network, and a service that fails half-way: whatever is cut, sending the same again until an answer arrives writes
 * it once. That an interrupted request may be sent again under its key is the Idempotency-Key header's meaning (IETF draft,
 * from memory).
 */
import { connect, type Socket } from 'node:net';
import type { AddressInfo } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { newId } from '../../src/platform/ids.js';
import { NOW, startApi, type Api } from '../support/api.js';
import { readyClub, type ReadyClub } from '../support/ready-club.js';
import {
  type Body,
  bookToday,
  bringBack,
  dispatch,
  flownBy,
  goOut,
  readyToGo,
  written,
} from './flight-scene.js';

const ONCE = { dispatches: 1, returns: 1, entries: 1, readings: 1, squawks: 1 };

describe('cut off', () => {
  let api: Api;
  let ready: ReadyClub;
  beforeAll(async () => {
    api = await startApi();
  });
  beforeEach(async () => {
    api.clock.set(NOW);
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  /** Sends a request and cuts the line after so many of its bytes, or of the answer's. @returns what came back */
  const sendAndCut = (
    path: string,
    body: Body,
    key: string,
    cut: { sent?: number; heard?: number },
  ): Promise<string> =>
    new Promise((done) => {
      const text = JSON.stringify(body);
      const head = [
        `POST /api/v1${path} HTTP/1.1`,
        `Host: 127.0.0.1`,
        `Authorization: Bearer ${ready.member.token}`,
        `Content-Type: application/json`,
        `Idempotency-Key: ${key}`,
        `Content-Length: ${Buffer.byteLength(text)}`,
      ].join('\r\n');
      const whole = `${head}\r\n\r\n${text}`;
      const { port } = api.app.getHttpServer().address() as AddressInfo;
      let heard = '';
      const line: Socket = connect(port, '127.0.0.1', () => {
        line.write(
          cut.sent === undefined ? whole : whole.slice(0, Math.floor(whole.length * cut.sent)),
          () => {
            if (cut.sent !== undefined || cut.heard === 0) line.destroy();
          },
        );
      });
      line.on('data', (chunk) => {
        heard += chunk.toString();
        if (cut.heard !== undefined && heard.length >= cut.heard) line.destroy();
      });
      line.on('error', () => undefined);
      line.on('close', () => done(heard));
    });

  const CUTS: [string, { sent?: number; heard?: number }][] = [
    ['before a byte', { sent: 0 }],
    ['within the head', { sent: 0.1 }],
    ['within the body', { sent: 0.9 }],
    ['when all is sent and nothing heard', { heard: 0 }],
    ['within the head of the answer', { heard: 20 }],
    ['within the body of the answer', { heard: 700 }],
  ];

  test.each(CUTS)('%s: the dispatch and the return are written once', async (_when, cut) => {
    const id = await bookToday(ready);
    const [out, back] = [newId(), newId()];
    const toDispatch = await readyToGo(ready.member, id);
    await sendAndCut(`/flights/${id}/dispatch`, toDispatch, out, cut);
    await sendAndCut(`/flights/${id}/dispatch`, toDispatch, out, cut);
    expect(await settled('dispatches', cut)).toBe(cut.sent === undefined ? 1 : 0);
    const { body: gone } = await dispatch(ready.member, id, toDispatch, out).expect(201);
    expect((await dispatch(ready.member, id, toDispatch, out).expect(201)).body).toEqual(gone);
    api.clock.set('2026-03-10T17:40:00Z');
    const toReturn = flownBy(ready.member.memberId, { squawks: [{ title: 'Left brake soft' }] });
    ready.member.token = await fresh();
    await sendAndCut(`/flights/${id}/return`, toReturn, back, cut);
    await sendAndCut(`/flights/${id}/return`, toReturn, back, cut);
    expect(await settled('returns', cut)).toBe(cut.sent === undefined ? 1 : 0);
    const { body: came } = await bringBack(ready.member, id, toReturn, back).expect(201);
    expect((await bringBack(ready.member, id, toReturn, back).expect(201)).body).toEqual(came);
    expect(came.booking.status).toBe('returned');
    expect(await written(api, ready.club.clubId)).toEqual(ONCE);
  });
  /** What the cut requests came to before anybody sends it whole: one that arrived is written, though nobody heard of it. */
  const settled = async (what: 'dispatches' | 'returns', cut: { sent?: number }): Promise<number> => {
    const count = async (): Promise<number> => (await written(api, ready.club.clubId))[what]!;
    const wanted = cut.sent === undefined ? 1 : 0;
    for (let tries = 0; tries < 200 && (await count()) !== wanted; tries += 1) await pause(100);
    return count();
  };
  /** A token of now: those of raw requests are for fifteen minutes of the test's clock. */
  const fresh = async (): Promise<string> => {
    const signed = ready.member.get('/auth/me');
    const [, token] = /^Bearer (.+)$/.exec(signed.get('Authorization')) ?? [];
    await signed.expect(200);
    return token!;
  };

  test.each([
    'meter_readings',
    'log_entries',
    'returns',
    'return_meters',
    'return_entries',
    'squawks',
    'bookings',
    'aircraft_out',
    'idempotency_keys',
  ])(
    'a service that fails while it writes %s has written nothing, and the same again is written whole',
    async (table) => {
      const id = await goOut(api, ready);
      api.clock.set('2026-03-10T17:40:00Z');
      const body = flownBy(ready.member.memberId, { squawks: [{ title: 'Left brake soft' }] });
      const key = newId();
      const before = await written(api, ready.club.clubId);
      await api.sql(`
        CREATE FUNCTION fails() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'the disk is full' USING ERRCODE = '53100'; END $$;
        CREATE TRIGGER fails BEFORE ${table === 'idempotency_keys' ? 'UPDATE' : 'INSERT OR UPDATE OR DELETE'} ON ${table} FOR EACH ROW EXECUTE FUNCTION fails()`);
      const failed = await bringBack(ready.member, id, body, key);
      await api.sql(`DROP TRIGGER fails ON ${table}; DROP FUNCTION fails()`);
      expect(failed.status).toBeGreaterThanOrEqual(500);
      expect(await written(api, ready.club.clubId)).toEqual(before);
      await bringBack(ready.member, id, body, key).expect(201);
      expect(await written(api, ready.club.clubId)).toEqual(ONCE);
    },
  );
});
