import { isHoursTenths, parseInstant, parseLocalDate } from '../../src/platform/http/index.js';
import { fieldName, findUnsound } from '../../src/platform/http/no-nul.js';
import { loggablePath } from '../../src/platform/logging.js';
import { defineProblems, pointerTo, ProblemException } from '../../src/platform/problems/index.js';

describe('instants', () => {
  // RFC 3339 section 5.8 (examples), as far as whole seconds go.
  it.each([
    ['1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57Z'],
    ['2026-11-25T13:00:00Z', '2026-11-25T13:00:00Z'],
    ['2026-11-25t13:00:00.000z', '2026-11-25T13:00:00Z'],
    ['2024-02-29T23:59:59+23:59', '2024-02-29T00:00:59Z'],
    ['2026-01-01T00:00:00-00:00', '2026-01-01T00:00:00Z'],
  ])('%s is %s', (text, utc) => expect(parseInstant(text)).toBe(utc));

  it.each([
    '2026-02-29T00:00:00Z',
    '2026-02-30T00:00:00Z',
    '2026-13-01T00:00:00Z',
    '2026-01-01T24:00:00Z',
    '1990-12-31T23:59:60Z',
    '2026-01-01T00:00:00',
    '2026-01-01',
    '2026-01-01 00:00:00Z',
    '2026-01-01T00:00:00.5Z',
    '2026-01-01T00:00:00+24:00',
    '2026-01-01T00:00:00+01:60',
    '2026-01-01T00:00Z',
    '1026-01-01T00:00:00Z',
    ' 2026-01-01T00:00:00Z',
    '',
    1_700_000_000,
    null,
  ])('%p is refused', (value) => expect(parseInstant(value)).toBeNull());
});

describe('dates and hours', () => {
  it.each(['2024-02-29', '1900-01-01', '2199-12-31'])('%s exists', (date) =>
    expect(parseLocalDate(date)).toBe(date),
  );
  it.each(['2023-02-29', '2026-04-31', '2026-4-1', '2026-00-10', '1899-12-31', '20260401', 20260401])(
    '%p does not',
    (date) => expect(parseLocalDate(date)).toBeNull(),
  );
  it.each([0, 1.1, 0.7, 2.3, 1234.5, 99_999.9])('%p is hours to a tenth', (value) =>
    expect(isHoursTenths(value)).toBe(true),
  );
  it.each([-0.1, 1.25, 1e-7, 100_000, NaN, Infinity, '1.1', null])('%p is not', (value) =>
    expect(isHoursTenths(value)).toBe(false),
  );
});

describe('places in a request', () => {
  it('are found and named', () => {
    expect(findUnsound({ a: ['x', { b: 'y\0' }] })).toEqual({ why: 'nul', path: ['a', '1', 'b'] });
    expect(findUnsound({ a: 1, b: null, c: ['x'] })).toBeNull();
    expect(findUnsound({ 'a\0': 1 })).toEqual({ why: 'nul', path: [] });
    expect(fieldName(['legs', '0', 'from'])).toBe('legs[0].from');
    expect(pointerTo('legs[0].from')).toBe('/legs/0/from');
    expect(pointerTo('a/b~c')).toBe('/a~1b~0c');
    expect(pointerTo('Idempotency-Key')).toBeUndefined();
  });

  it('go into the log without tokens', () => {
    expect(loggablePath('/api/v1/feeds/AbCdEfGhIjKlMnOpQrStUvWxYz0123456789AbCdEfG.ics?key=secret')).toBe(
      '/api/v1/feeds/….ics',
    );
    expect(loggablePath('/api/v1/bookings/0190a5c2-7d1e-7c3a-9b4f-2f6d1c0a9e11')).toContain('0190a5c2');
  });
});

describe('problems', () => {
  it('take what is left out from the catalogue', () => {
    const problem = new ProblemException('edit-conflict');
    expect([problem.getStatus(), problem.title]).toEqual([412, 'Somebody else changed it']);
  });

  it('cannot be given a second meaning', () => {
    expect(() => defineProblems({ code: 'not-found', status: 410, title: 'Gone', detail: '' })).toThrow(
      /defined twice/,
    );
  });
});
