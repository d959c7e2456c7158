/** What the drawn timeline is made of: days, pieces of days, departures for the form, days told together. */
import { at, cut, dayAt, daysFrom, instantOf } from '../../src/web/page/timeline/days.js';
import { departureIn, firstIn, GOOD } from '../../src/web/page/timeline/slots.js';
import { stretchesOf } from '../../src/web/page/timeline/stretches.js';
import type { Step } from '../../src/web/page/timeline/types.js';

const ZONE = 'America/Chicago';
const HOUR = 3_600_000;
const step = (from: string, to: string, answer: Step['answer'], ...titles: string[]): Step => ({
  ...{ from, to, answer, changed: [] },
  inTheWay: titles.map((title) => ({ rule: title.toLowerCase(), title })),
});

describe('days', () => {
  test('have 23 and 25 hours when the clocks change', () => {
    // Clocks of the zone go forward on 8 March 2026 and back on 1 November (IANA time zone database).
    const lengths = (date: string) => daysFrom(ZONE, date, 3).map(({ from, to }) => (to - from) / HOUR);
    expect(lengths('2026-03-07')).toEqual([24, 23, 24]);
    expect(lengths('2026-10-31')).toEqual([24, 25, 24]);
  });

  test('a stretch is cut at the midnights of the zone', () => {
    const days = daysFrom(ZONE, '2026-03-11', 3);
    // 11 March 19:00 to 13 March 06:00 of the club's time (UTC-5).
    const pieces = cut(days, at('2026-03-12T00:00:00Z'), at('2026-03-13T11:00:00Z'));
    expect(pieces).toEqual([
      { day: 0, top: 19 / 24, bottom: 1 },
      { day: 1, top: 0, bottom: 1 },
      { day: 2, top: 0, bottom: 0.25 },
    ]);
    expect(cut(days, at('2026-03-12T05:00:00Z'), at('2026-03-12T05:00:00Z'))).toEqual([]);
    expect([0, 1, 2].map((index) => dayAt(days, days[index]!.from))).toEqual([0, 1, 2]);
    expect(dayAt(days, days[1]!.from - 1)).toBe(0);
    expect(dayAt(days, days[2]!.to + HOUR)).toBe(2);
    expect(instantOf(days[0]!.from)).toBe('2026-03-11T05:00:00Z');
  });
});

describe('departures for the form', () => {
  const days = daysFrom(ZONE, '2026-03-11', 3);
  const frame = { days, length: 2 * HOUR, now: at('2026-03-11T15:00:00Z') };

  test('are on whole minutes, not past, and end on their day', () => {
    const open = step('2026-03-11T12:00:13Z', '2026-03-12T12:00:00Z', 'yes');
    expect(departureIn(open, frame)).toEqual({
      ...{ departs: '2026-03-11T15:00:00Z', arrives: '2026-03-11T17:00:00Z', answer: 'yes' },
    });
    expect(departureIn(step('2026-03-11T16:00:13Z', '2026-03-11T16:02:00Z', 'yes'), frame)!.departs).toBe(
      '2026-03-11T16:01:00Z',
    );
    expect(departureIn(step('2026-03-11T16:00:13Z', '2026-03-11T16:00:40Z', 'yes'), frame)).toBeNull();
    // 22:00 to midnight is on the next day; 21:59 is not.
    expect(departureIn(open, frame, at('2026-03-12T03:00:00Z'))!.departs).toBe('2026-03-12T05:00:00Z');
    expect(departureIn(open, frame, at('2026-03-12T02:59:00Z'))!.departs).toBe('2026-03-12T02:59:00Z');
    expect(departureIn(step('2026-03-12T03:00:00Z', '2026-03-12T05:00:00Z', 'yes'), frame)).toBeNull();
  });

  test('the first of a good answer passes over what does not fit', () => {
    const steps = [
      step('2026-03-11T15:00:00Z', '2026-03-12T03:00:00Z', 'no'),
      step('2026-03-12T03:00:00Z', '2026-03-12T04:00:00Z', 'yes'),
      step('2026-03-12T04:00:00Z', '2026-03-12T13:00:00Z', 'dual-only'),
      step('2026-03-12T13:00:00Z', '2026-03-13T05:00:00Z', 'yes-with-conditions'),
    ];
    expect(firstIn(steps, GOOD, frame)!.departs).toBe('2026-03-12T13:00:00Z');
    expect(firstIn(steps, ['dual-only'], frame)!.departs).toBe('2026-03-12T05:00:00Z');
    expect(firstIn(steps, ['ask-officer'], frame)).toBeNull();
  });
});

describe('days told together', () => {
  /** By day yes, at night with an instructor; the sun rises a minute and a half earlier each day. */
  const daylight = (count: number, from: string): { days: ReturnType<typeof daysFrom>; steps: Step[] } => {
    const days = daysFrom('UTC', from, count);
    const steps: Step[] = [];
    let open = days[0]!.from;
    days.forEach(({ from: midnight }, index) => {
      const rise = midnight + 7 * HOUR - index * 90_000;
      const set = midnight + 18 * HOUR + index * 90_000;
      steps.push(step(instantOf(open), instantOf(rise), 'dual-only', 'Night landings'));
      steps.push(step(instantOf(rise), instantOf(set), 'yes'));
      open = set;
    });
    steps.push(step(instantOf(open), instantOf(days.at(-1)!.to), 'dual-only', 'Night landings'));
    return { days, steps };
  };

  test('a fortnight of days only is one stretch, with its first and last day', () => {
    const { days, steps } = daylight(14, '2026-03-11');
    const [only, ...rest] = stretchesOf(days, steps);
    expect(rest).toEqual([]);
    expect(only).toMatchObject({ days: 14, first: { date: '2026-03-11' }, last: { date: '2026-03-24' } });
    expect(only!.onFirst.map(({ answer }) => answer)).toEqual(['dual-only', 'yes', 'dual-only']);
    expect(instantOf(only!.onLast[1]!.from)).toBe('2026-03-24T06:40:30Z');
    expect([...only!.because]).toEqual([
      ['dual-only', ['Night landings']],
      ['yes', []],
    ]);
  });

  test('a long season is told in parts, so that first and last day speak for those between', () => {
    const { days, steps } = daylight(120, '2026-03-11');
    const stretches = stretchesOf(days, steps);
    expect(stretches.reduce((sum, one) => sum + one.days, 0)).toBe(120);
    expect(stretches.length).toBeGreaterThanOrEqual(4);
    expect(Math.max(...stretches.map((one) => one.days))).toBeLessThanOrEqual(31);
  });

  test('a booking in the middle of it stands apart', () => {
    const { days, steps } = daylight(9, '2026-03-11');
    const noon = days[4]!.from + 12 * HOUR;
    const busy = steps.findIndex(({ from, to }) => at(from) <= noon && noon < at(to));
    const { from, to } = steps[busy]!;
    steps.splice(
      busy,
      1,
      step(from, instantOf(noon), 'yes'),
      step(instantOf(noon), instantOf(noon + HOUR), 'no', 'Aircraft taken'),
      step(instantOf(noon + HOUR), to, 'yes'),
    );
    const stretches = stretchesOf(days, steps);
    expect(stretches.map(({ days: count }) => count)).toEqual([4, 1, 4]);
    expect(stretches[1]!.because.get('no')).toEqual(['Aircraft taken']);
  });

  test('steps of one answer join within the day, with all that stands in the way', () => {
    const days = daysFrom('UTC', '2026-03-11', 2);
    const steps = [
      step('2026-03-11T09:00:00Z', '2026-03-11T12:00:00Z', 'no', 'Taken'),
      step('2026-03-11T12:00:00Z', '2026-03-12T06:00:00Z', 'no', 'Taken', 'Medical'),
      step('2026-03-12T06:00:00Z', '2026-03-13T00:00:00Z', 'yes'),
    ];
    const stretches = stretchesOf(days, steps);
    expect(stretches).toHaveLength(2);
    expect(stretches[0]!.onFirst).toEqual([
      { answer: 'no', from: at('2026-03-11T09:00:00Z'), to: days[0]!.to, because: ['Taken', 'Medical'] },
    ]);
  });
});
