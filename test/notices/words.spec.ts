/** Pure parts of notices: what is left to tell, lead times, and the message. No source outside: the words are the project's own. */
import { leadReached, readLeads } from '../../src/notices/notice-policy.js';
import { compose } from '../../src/notices/outbox/compose.js';
import { compactItems, type NoticeItem } from '../../src/notices/outbox/items.js';
import { headingOf, KINDS_OF_NOTICE, kindOf } from '../../src/notices/outbox/kinds.js';
import { faultOf } from '../../src/notices/outbox/mailer.js';
import { deliveryOf } from '../../src/notices/preferences/preferences.sql.js';

const item = (key: string, more: Partial<NoticeItem> = {}): NoticeItem => ({
  ...{ key, title: key, says: [], link: '/' },
  ...more,
});

describe('what is left to tell', () => {
  it('is the last of each, against what was before the first', () => {
    const items = [
      item('a', { before: 'yes', after: 'no' }),
      item('b', { before: 'yes', after: 'no' }),
      item('a', { before: 'no', after: 'dual-only', says: ['newer'] }),
    ];
    expect(compactItems(items)).toEqual([
      item('b', { before: 'yes', after: 'no' }),
      item('a', { before: 'yes', after: 'dual-only', says: ['newer'] }),
    ]);
  });

  it('is nothing where all is as it was', () => {
    expect(
      compactItems([item('a', { before: 'yes', after: 'no' }), item('a', { before: 'no', after: 'yes' })]),
    ).toEqual([]);
  });
});

describe('lead times', () => {
  it('are read from a list, whatever order it is in', () => {
    expect(readLeads('30, 7;1  7')).toEqual([1, 7, 30]);
    expect(readLeads('soon, -3, 99999, 1.5')).toEqual([]);
  });

  it.each([
    [31, null],
    [30, 30],
    [8, 30],
    [7, 7],
    [1, 1],
    [0, 1],
    [-4, 1],
  ])('with %d left, the one of %s', (left, lead) => {
    expect(leadReached([1, 7, 30], left)).toBe(lead);
  });
});

describe('kinds', () => {
  it('have a heading for one and for several, and go out unless turned off', () => {
    for (const kind of KINDS_OF_NOTICE) {
      expect(headingOf(kind, 3)).toMatch(/^3 /);
      expect(headingOf(kind, 1)).not.toMatch(/^1 /);
      expect(kindOf(kind)!.delivery).not.toBe('off');
    }
  });

  it('that a flight’s safety hangs on cannot be off, whatever is stored', () => {
    const choices = { 'flight-answer': 'off', 'flight-displaced': 'off', lapse: 'off' } as const;
    expect(deliveryOf({ choices }, 'flight-answer')).toBe('now');
    expect(deliveryOf({ choices }, 'flight-displaced')).toBe('now');
    expect(deliveryOf({ choices }, 'lapse')).toBe('off');
  });
});

describe('a message', () => {
  const message = compose({
    ...{ club: { name: 'Larkfield', zone: 'America/Chicago' }, name: 'Robin <Member>' },
    publicUrl: 'https://club.example',
    notices: [
      {
        kind: 'flight-answer',
        items: [
          item('b', {
            title: 'NX101B, 2026-03-11T18:00:00Z to 2026-03-11T20:00:00Z',
            says: ['Squawks: fuel leak & worse <b>'],
            ways: ['Have it repaired by 2026-03-10'],
          }),
        ],
      },
    ],
  });

  it('says it in text, with times on the club’s clock, the way, the caution and where preferences are', () => {
    expect(message.subject).toBe('Larkfield: A booked flight of yours is answered otherwise now');
    // 18:00 UTC is 13:00 Central daylight time (49 CFR 71.7; 15 U.S.C. 260a).
    expect(message.text).toContain('NX101B, Wed 11 Mar 2026, 13:00 to Wed 11 Mar 2026, 15:00');
    expect(message.text).toContain('- Have it repaired by Tue 10 Mar 2026');
    expect(message.text).toContain('The pilot in command decides');
    expect(message.text).toContain('https://club.example/notices#mail');
  });

  it('says the same in HTML, and nothing in it is taken for markup', () => {
    expect(message.html).toContain('fuel leak &#38; worse &#60;b&#62;');
    expect(message.html).not.toContain('<b>');
    expect(message.html).not.toContain('<Member>');
  });

  it('has a subject of one line, whatever the club is called', () => {
    const { subject } = compose({
      ...{
        club: { name: 'Two\r\nBcc: x@y.example', zone: 'UTC' },
        name: 'R',
        publicUrl: 'https://c.example',
      },
      notices: [{ kind: 'lapse', items: [item('a')] }],
    });
    expect(subject).not.toMatch(/[\r\n]/);
  });
});

// RFC 5321, section 4.2.1: 4yz is for now, 5yz for good. RFC 4954, section 6: 535 says that the credentials are wrong.
it.each([
  ['450 of a mailbox', { responseCode: 450, command: 'RCPT TO' }, 'later'],
  ['421, going away', { responseCode: 421, command: 'CONN' }, 'later'],
  ['550 of a mailbox', { responseCode: 550, command: 'RCPT TO' }, 'refused'],
  ['554 of a message', { responseCode: 554, command: 'DATA' }, 'refused'],
  ['535, wrong credentials', { responseCode: 535, code: 'EAUTH', command: 'AUTH PLAIN' }, 'later'],
  ['no connection', { code: 'ECONNECTION' }, 'later'],
])('after %s', (_what, error, outcome) => {
  expect(faultOf(Object.assign(new Error('x'), error)).outcome).toBe(outcome);
});
