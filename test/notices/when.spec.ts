/**
 * Quiet hours and digests across clock changes. Clock changes of the United States by 15 U.S.C. 260a: 2026-03-08 at 2:00
 * forward (so 2:00 to 3:00 does not exist), 2026-11-01 at 2:00 back (1:00 to 2:00 comes twice). Central time is UTC-6, by
 * summer UTC-5 (49 CFR 71.7). The instants below are reckoned by hand from these.
 */
import { nextClock, nextDigest, outOfQuiet } from '../../src/notices/preferences/when.js';

const ZONE = 'America/Chicago';
const quiet = (quietFrom: string | null, quietTo: string | null) => ({ quietFrom, quietTo, digestHour: 7 });

describe('quiet hours', () => {
  it.each([
    // 21:59 and 22:00 in winter, UTC-6; the end itself is not quiet.
    ['before they begin', '2026-03-05T03:59:00Z', '2026-03-05T03:59:00Z'],
    ['as they begin', '2026-03-05T04:00:00Z', '2026-03-05T13:00:00Z'],
    ['after midnight', '2026-03-05T09:00:00Z', '2026-03-05T13:00:00Z'],
    ['a second before they end', '2026-03-05T12:59:59Z', '2026-03-05T13:00:00Z'],
    ['as they end', '2026-03-05T13:00:00Z', '2026-03-05T13:00:00Z'],
    // Into the night of the clock change: 22:00 CST begins them, 07:00 CDT ends them an hour sooner.
    ['through the change to summer', '2026-03-08T05:00:00Z', '2026-03-08T12:00:00Z'],
    // Out of summer: 22:00 CDT begins them, 07:00 CST ends them an hour later.
    ['through the change to winter', '2026-11-01T04:00:00Z', '2026-11-01T13:00:00Z'],
  ])('%s', (_when, at, goes) => {
    expect(outOfQuiet(at, ZONE, quiet('22:00', '07:00'))).toBe(goes);
  });

  it('end where the clock jumps over their end', () => {
    // 02:30 does not exist on 2026-03-08: 02:30 by winter time is 08:30 UTC, which the clock shows as 03:30.
    expect(outOfQuiet('2026-03-08T06:00:00Z', ZONE, quiet('22:00', '02:30'))).toBe('2026-03-08T08:30:00Z');
  });

  it('end the first time where their end comes twice', () => {
    // 01:30 by summer time is 06:30 UTC, and comes again at 07:30 UTC.
    expect(outOfQuiet('2026-11-01T05:00:00Z', ZONE, quiet('22:00', '01:30'))).toBe('2026-11-01T06:30:00Z');
    expect(outOfQuiet('2026-11-01T07:00:00Z', ZONE, quiet('22:00', '01:30'))).toBe('2026-11-01T07:00:00Z');
  });

  it('within a day', () => {
    expect(outOfQuiet('2026-03-05T19:00:00Z', ZONE, quiet('12:00', '14:00'))).toBe('2026-03-05T20:00:00Z');
    expect(outOfQuiet('2026-03-05T21:00:00Z', ZONE, quiet('12:00', '14:00'))).toBe('2026-03-05T21:00:00Z');
  });

  it('none', () => {
    expect(outOfQuiet('2026-03-05T09:00:00Z', ZONE, quiet(null, null))).toBe('2026-03-05T09:00:00Z');
  });
});

describe('the digest', () => {
  it.each([
    ['later today', '2026-03-05T12:00:00Z', '2026-03-05T13:00:00Z'],
    ['tomorrow, at its own hour', '2026-03-05T13:00:00Z', '2026-03-06T13:00:00Z'],
    ['over the change to summer', '2026-03-07T20:00:00Z', '2026-03-08T12:00:00Z'],
    ['over the change to winter', '2026-10-31T20:00:00Z', '2026-11-01T13:00:00Z'],
  ])('%s', (_when, at, goes) => {
    expect(nextDigest(at, ZONE, { digestHour: 7 })).toBe(goes);
  });

  it('goes by the zone of the club', () => {
    // India is UTC+5:30 the whole year.
    expect(nextClock('2026-03-05T00:00:00Z', 'Asia/Kolkata', '05:00')).toBe('2026-03-05T23:30:00Z');
  });
});
