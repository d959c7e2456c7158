/**
 * Calendars against two readers written by others (node-ical, ical.js), and against RFC 5545: UTC times (3.3.5), folding
 * at 75 octets (3.1), UID, DTSTAMP and SEQUENCE (3.8.4.7, 3.8.7.2, 3.8.7.4), STATUS (3.8.1.11).
 */
import ICAL from 'ical.js';
import ical from 'node-ical';
import { calendarText, type CalendarEntry } from '../../src/notices/feeds/calendar-text.js';

const entry = (more: Partial<CalendarEntry> = {}): CalendarEntry => ({
  id: '01900000-0000-7000-8000-000000000001',
  ...{ summary: 'NX101B, with Ines Structor; and, others', description: 'Harrow Lark 160\nBring headset' },
  ...{ departs: '2026-03-08T07:30:00Z', arrives: '2026-03-08T09:30:00Z', cancelled: false },
  ...{ sequence: 2, changedAt: '2026-03-01T10:00:00Z' },
  ...more,
});

const text = calendarText(
  'Larkfield “Flying”, group',
  [entry(), entry({ id: '01900000-0000-7000-8000-000000000002', cancelled: true, sequence: 3 })],
  'https://club.example/',
);

it('is read by another library as what was booked, over a clock change', () => {
  const events = Object.values(ical.sync.parseICS(text)).filter(
    (one) => one?.type === 'VEVENT',
  ) as unknown as {
    uid: string;
    start: Date;
    end: Date;
    summary: string;
    description: string;
    sequence: string;
    status: string;
  }[];
  expect(events).toHaveLength(2);
  const [first, second] = events;
  // 01:30 Central standard to 04:30 Central daylight time: two hours all the same.
  expect([first!.start.toISOString(), first!.end.toISOString()]).toEqual([
    '2026-03-08T07:30:00.000Z',
    '2026-03-08T09:30:00.000Z',
  ]);
  expect(first!.uid).toBe('01900000-0000-7000-8000-000000000001@bellcrank');
  expect(first!.summary).toBe('NX101B, with Ines Structor; and, others');
  expect(first!.description).toMatch(/^Harrow Lark 160\nBring headset\n\nBellcrank is an aid\./);
  expect([first!.status, String(first!.sequence)]).toEqual(['CONFIRMED', '2']);
  expect([second!.status, String(second!.sequence)]).toEqual(['CANCELLED', '3']);
});

it('is read by a third library, with its times as UTC', () => {
  const events = new ICAL.Component(ICAL.parse(text) as string[]).getAllSubcomponents('vevent');
  expect(events.map((one) => one.getFirstPropertyValue('dtstart')!.toString())).toEqual([
    '2026-03-08T07:30:00Z',
    '2026-03-08T07:30:00Z',
  ]);
  expect(events.map((one) => new ICAL.Event(one).duration.toSeconds())).toEqual([7200, 7200]);
});

it('has lines of at most 75 octets that end in CR LF, and times in UTC', () => {
  const lines = text.split('\r\n');
  expect(lines.length).toBeGreaterThan(20);
  expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  expect(text).toContain('DTSTART:20260308T073000Z');
  expect(text).toContain('DTSTAMP:20260301T100000Z');
  expect(text).toContain('METHOD:PUBLISH');
});

it('is the same bytes whenever it is asked for', () => {
  expect(calendarText('A', [entry()], 'https://club.example/')).toBe(
    calendarText('A', [entry()], 'https://club.example/'),
  );
});
