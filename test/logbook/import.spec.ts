/** Files of flights: each read one way, or refused with the reason. */
import { duplicatesOf } from '../../src/logbook/import/duplicates.js';
import { FIELDS, FIELD_NAMES } from '../../src/logbook/import/fields.js';
import { fieldOf } from '../../src/logbook/import/headings.js';
import { tableOf } from '../../src/logbook/import/table.js';
import { textOf } from '../../src/logbook/import/file-text.js';
import { LOG_COLUMNS } from '../../src/logbook/columns.js';
import { KNOWN, read, reasons, refusable } from './scene.js';

const cells = (text: string): string[][] => {
  const table = tableOf(text, {});
  if ('refused' in table) throw new Error(table.refused);
  return [table.headings, ...table.rows.map((row) => row.cells)];
};

// RFC 4180 section 2, the example of each rule; the fields' names put in front, since a file here has headings.
describe('RFC 4180, section 2', () => {
  const head = ['Date', 'Total', 'Remarks'];
  const plain = [head, ['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']];
  it.each([
    ['1: rows end in CRLF', 'Date,Total,Remarks\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', plain],
    ['2: the last may not', 'Date,Total,Remarks\r\naaa,bbb,ccc\r\nzzz,yyy,xxx', plain],
    ['5: fields in quotation marks or not', 'Date,Total,Remarks\r\n"aaa","bbb","ccc"\r\nzzz,yyy,xxx', plain],
    [
      '6: line breaks, quotation marks and commas inside them',
      'Date,Total,Remarks\r\n"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,xxx',
      [head, ['aaa', 'b\r\nbb', 'c,cc'], ['zzz', 'yyy', 'xxx']],
    ],
    [
      '7: a quotation mark inside is doubled',
      'Date,Total,Remarks\r\n"aaa","b""bb","ccc"',
      [head, ['aaa', 'b"bb', 'ccc']],
    ],
  ])('%s', (_rule, text, expected) => expect(cells(text)).toEqual(expected));

  it('tells lines as an editor counts them, through line breaks in cells', () => {
    const reading = read('Date,Registration,Total,Remarks\n2026-01-01,N-0001,1,"one\ntwo"\n\nx,N-0001,1,');
    expect(reading.drafts.map(({ line, remarks }) => [line, remarks])).toEqual([[2, 'one\ntwo']]);
    expect(reading.bad.map(({ line }) => line)).toEqual([5]);
  });
});

describe('bytes', () => {
  const text = 'Date,From,Remarks\n2026-01-01,XQHB,Über Wörth – “gut” €5';
  const utf16 = (littleEndian: boolean, mark: boolean): Uint8Array => {
    const from = `${mark ? '\ufeff' : ''}${text}`;
    const view = new DataView(new ArrayBuffer(from.length * 2));
    for (let at = 0; at < from.length; at += 1) view.setUint16(at * 2, from.charCodeAt(at), littleEndian);
    return new Uint8Array(view.buffer);
  };
  // Windows-1252 in the Encoding Standard's index (encoding.spec.whatwg.org/index-windows-1252.txt): 0x93 “, 0x94 ”, 0x96 –, 0x80 €.
  const ANSI: Record<string, number> = { '“': 0x93, '”': 0x94, '–': 0x96, '€': 0x80 };
  const ansi = Uint8Array.from([...text].map((letter) => ANSI[letter] ?? letter.charCodeAt(0)));
  it.each([
    ['utf-8', new TextEncoder().encode(text)],
    ['utf-8', new TextEncoder().encode(`\ufeff${text}`)],
    ['utf-16le', utf16(true, true)],
    ['utf-16be', utf16(false, true)],
    ['utf-16le', utf16(true, false)],
    ['utf-16be', utf16(false, false)],
    ['windows-1252', ansi],
  ])('in %s', (encoding, bytes) => expect(textOf(bytes)).toEqual({ text, encoding }));

  it.each([
    ['a workbook', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0])],
    ['a picture', Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13])],
    ['what windows-1252 has no character for', Uint8Array.from([65, 0x81, 0xff, 66])],
    ['half of UTF-16', Uint8Array.from([0xff, 0xfe, 0x00, 0xd8, 0x41, 0x00])],
  ])('%s is refused', (_what, bytes) => expect(textOf(bytes)).toHaveProperty('refused'));

  it('reads what was chosen, or refuses it', () => {
    expect(textOf(ansi, 'utf-8')).toHaveProperty('refused');
    expect(textOf(Uint8Array.from([65, 0xe9]), 'windows-1252')).toMatchObject({ text: 'Aé' });
  });
});

describe('columns', () => {
  it('of the export are known by their headings and by their names', () => {
    for (const { heading, field } of LOG_COLUMNS)
      expect([heading, fieldOf(heading), fieldOf(field)]).toEqual([heading, field, field]);
  });

  it('are known by no word twice', () => {
    const words = FIELD_NAMES.flatMap((name) => FIELDS[name].words);
    expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([]);
    for (const name of FIELD_NAMES)
      for (const word of FIELDS[name].words) expect([word, fieldOf(word)]).toEqual([word, name]);
  });

  it('are parted by what parts all rows alike', () => {
    const parted = (delimiter: string): string =>
      [
        ['Date', 'Registration', 'Total'],
        ['2026-01-01', 'N-0001', '1,5'],
        ['2026-01-02', 'N-0001', '2,5'],
      ]
        .map((row) => row.join(delimiter))
        .join('\n');
    expect([read(parted(';')).delimiter, read(parted('\t')).delimiter]).toEqual([';', '\t']);
    expect(read('Date,Registration,Total,Remarks\n2026-01-01,N-0001,1.5,a;b;c;d;e').delimiter).toBe(',');
  });

  it('are found below a title, and by what they hold where no heading says it', () => {
    const reading = read(
      'My flying\n\nWhen,Plane,Total time,A,B\n2026-01-02,n0001,1.5,XQHB,XQEA\n2026-01-03,N-0001,1.0,XQEA,XQHB',
    );
    expect(reading.headingLine).toBe(1);
    const told = read('My flying,,\n,,\nDay,Tail number,Total time\n2026-01-02,N-0001,1.5');
    expect([told.headingLine, told.drafts.length]).toEqual([3, 1]);
    const held = read(
      'When,Plane,Total time,A,B\n2026-01-02,n0001,1.5,XQHB,XQEA\n2026-01-03,N-0001,1.0,XQEA,XQHB',
    );
    expect(held.columns.map(({ field }) => field)).toEqual([
      ...['flownOn', 'registration', 'totalH', 'fromAirfield', 'toAirfield'],
    ]);
  });

  it('are what was chosen, each once', () => {
    const file = 'Date,Registration,Total,Other\n2026-01-01,N-0001,9.9,1.5';
    const columns = (third: null | 'totalH') => [
      ...[
        { index: 0, field: 'flownOn' as const },
        { index: 1, field: 'registration' as const },
      ],
      ...[
        { index: 2, field: third },
        { index: 3, field: 'totalH' as const },
      ],
    ];
    expect(read(file, { role: 'solo', columns: columns(null) }).drafts).toMatchObject([{ totalTenths: 15 }]);
    expect(refusable(file, { columns: columns('totalH') })).toMatchObject({ ok: false, choice: 'columns' });
  });
});

const dated = (...dates: string[]) =>
  `Date,Registration,Total\n${dates.map((date) => `"${date}",N-0001,1`).join('\n')}`;

describe('dates', () => {
  it.each([
    [
      ['2026-02-01', '2026/2/3', '2026-02-28 00:00:00'],
      ['2026-02-01', '2026-02-03', '2026-02-28'],
    ],
    [
      ['1 Feb 2026', 'Feb 3, 2026', '28-feb-2026'],
      ['2026-02-01', '2026-02-03', '2026-02-28'],
    ],
    [
      ['1.2.2026', '28.02.2026'],
      ['2026-02-01', '2026-02-28'],
    ],
    [
      ['2/1/2026', '02/28/2026'],
      ['2026-02-01', '2026-02-28'],
    ],
    [
      ['1/1/2026', '02/02/2026'],
      ['2026-01-01', '2026-02-02'],
    ],
  ])('%j', (dates, expected) => {
    const reading = read(dated(...dates));
    expect(reading.questions).toEqual([]);
    expect(reading.drafts.map(({ flownOn }) => flownOn)).toEqual(expected);
  });

  it.each([
    ['that no row decides', ['1/2/2026', '3/4/2026']],
    ['that contradict each other', ['13/2/2026', '2/13/2026']],
    ['with years of two figures', ['13/2/26', '1/2/26']],
    ['with the year first in two figures, perhaps', ['26-02-13', '26-02-01']],
  ])('%s are asked about, and no row is read', (_what, dates) => {
    const reading = read(dated(...dates));
    expect(reading.questions).toMatchObject([{ choice: 'dates', index: 0 }]);
    expect([reading.drafts, reading.bad]).toEqual([[], []]);
  });

  it('are read as chosen; a year of two figures is the newest that has come', () => {
    const of = (dates: 'day-first' | 'month-first', ...of: string[]) =>
      read(dated(...of), { role: 'solo', dates }).drafts.map(({ flownOn }) => flownOn);
    expect(of('day-first', '1/2/2026')).toEqual(['2026-02-01']);
    expect(of('month-first', '1/2/2026')).toEqual(['2026-01-02']);
    expect(of('day-first', '9/3/26', '11/3/26', '1/1/70')).toEqual([
      '2026-03-09',
      '1926-03-11',
      '1970-01-01',
    ]);
  });

  it.each([
    ['2026-02-30', 'is no date of the calendar.'],
    ['2026-13-01', 'is no date of the calendar.'],
    ['46054', 'is a number of days as spreadsheets count them. Format the column as a date before saving.'],
    ['last Tuesday', 'is no date that can be read. Write it as 2026-03-09 or 9 Mar 2026.'],
    ['2026-02/01', 'is no date that can be read. Write it as 2026-03-09 or 9 Mar 2026.'],
    ['1 Marvel 2026', 'is no date that can be read. Write it as 2026-03-09 or 9 Mar 2026.'],
  ])('%s is refused', (date, because) =>
    expect(reasons(read(dated('2026-02-01', date)))).toEqual({ 3: because }),
  );
});

const hours = (...totals: string[]) =>
  `Date;Registration;Total\n${totals.map((total, at) => `2026-01-${at + 10};N-0001;${total}`).join('\n')}`;
const tenths = (file: string, choices = {}) =>
  read(file, { role: 'solo', ...choices }).drafts.map(({ totalTenths }) => totalTenths);

describe('hours', () => {
  it.each([
    [
      ['1.5', '2', '0.25', '.'.concat('5').padStart(3, '0')],
      [15, 20, 3, 5],
    ],
    [
      ['1,5', '2', '12,25'],
      [15, 20, 123],
    ],
    [
      ['1:30', '0:06', '12:00', '2'],
      [15, 1, 120, 20],
    ],
    [
      ['1h30', '2+15', '1:45:00'],
      [15, 23, 18],
    ],
    [
      ['1:30', '1.5'],
      [15, 15],
    ],
    [
      ['1,234.5', '1.5'],
      [12_345, 15],
    ],
    [
      ['1.234,5', '1,5'],
      [12_345, 15],
    ],
  ])('%j', (written, expected) => expect(tenths(hours(...written))).toEqual(expected));

  it('are minutes where the heading says so, and what was chosen', () => {
    expect(tenths('Date;Registration;Duration (min)\n2026-01-10;N-0001;90')).toEqual([15]);
    const columns = [
      ...[
        { index: 0, field: 'flownOn' as const },
        { index: 1, field: 'registration' as const },
      ],
      { index: 2, field: 'totalH' as const, form: 'point-clock' as const },
    ];
    expect(tenths(hours('1.30', '2.00', '3'), { columns })).toEqual([15, 20, 30]);
  });

  it('are asked about where 1.30 may be an hour and thirty minutes, and where 1.234 may be a thousand', () => {
    expect(read(hours('1.30', '2.00', '0.45')).questions).toMatchObject([{ choice: 'columns', index: 2 }]);
    expect(read(hours('1.30', '2.00', '0.75')).questions).toEqual([]);
    expect(read(hours('1.234', '2')).questions).toMatchObject([{ choice: 'decimal' }]);
    expect(read(hours('1.5', '1,5')).questions).toMatchObject([{ choice: 'decimal' }]);
    expect(tenths(hours('1.234', '2'), { decimal: 'comma' })).toEqual([12_340, 20]);
  });

  it.each(['1:75', '-1', 'one', '1.5.5', '1e3', '100000'])('%s is refused', (total) => {
    expect(Object.keys(reasons(read(hours('1.5', total))))).toEqual(['3']);
  });

  it('are rounded to a tenth, which is told with the hours as the file has them', () => {
    const reading = read(hours('1.25', '1.25', '1.72'));
    expect(reading).toMatchObject({ rounded: 3, hoursInFile: 4.22, totals: { added: { totalTenths: 43 } } });
  });

  it('are never more in their parts than in the whole for being rounded', () => {
    const file =
      'Date,Registration,Total,Actual,Hood\n2026-01-01,N-0001,0.5,0.25,0.25\n2026-01-02,N-0001,0.5,0.4,0.2';
    const reading = read(file);
    expect(reading.drafts).toMatchObject([{ actualInstrumentTenths: 3, simulatedInstrumentTenths: 2 }]);
    expect(reasons(reading)).toEqual({
      3: 'Simulated and actual instrument hours together are part of the total.',
    });
  });
});

describe('times', () => {
  const timed = (date: string, off: string, on: string, from = 'XQHB') =>
    `Date,From,Off blocks,On blocks,Registration,Total\n${date},${from},${off},${on},N-0001,0.5`;
  const times = (file: string, choices = {}) => {
    const reading = read(file, { role: 'solo', ...choices });
    return (
      reading.drafts.map(({ departedAt, arrivedAt, flownOn }) => [departedAt, arrivedAt, flownOn])[0] ??
      reasons(reading)
    );
  };
  // Chicago is at UTC−6 in winter and UTC−5 from 8 March 2026, 02:00; New York an hour ahead (tz database).
  it.each([
    ['zone', '2026-01-05', '14:05', '15:10', ['2026-01-05T20:05:00Z', '2026-01-05T21:10:00Z', '2026-01-05']],
    [
      'zone',
      '2026-01-05',
      '2:05 PM',
      '3:10 pm',
      ['2026-01-05T20:05:00Z', '2026-01-05T21:10:00Z', '2026-01-05'],
    ],
    ['zone', '2026-01-05', '2330', '0045', ['2026-01-06T05:30:00Z', '2026-01-06T06:45:00Z', '2026-01-05']],
    ['zone', '2026-03-07', '23:30', '03:45', ['2026-03-08T05:30:00Z', '2026-03-08T08:45:00Z', '2026-03-07']],
    ['utc', '2026-01-06', '02:05', '03:10', ['2026-01-06T02:05:00Z', '2026-01-06T03:10:00Z', '2026-01-05']],
    ['utc', '2026-01-06', '23:30', '00:45', ['2026-01-06T23:30:00Z', '2026-01-07T00:45:00Z', '2026-01-06']],
    [
      'utc-local-date',
      '2026-01-05',
      '02:05',
      '03:10',
      ['2026-01-06T02:05:00Z', '2026-01-06T03:10:00Z', '2026-01-05'],
    ],
    [
      'utc-local-date',
      '2026-01-05',
      '14:05',
      '15:10',
      ['2026-01-05T14:05:00Z', '2026-01-05T15:10:00Z', '2026-01-05'],
    ],
  ])('by %s: %s %s to %s', (clock, date, off, on, expected) =>
    expect(times(timed(date, off, on), { clock })).toEqual(expected),
  );

  it('with their offset or a Z need no choice', () => {
    const instants = timed('2026-01-05', '2026-01-05T20:05:00-06:00', '2026-01-06T03:10:00Z');
    expect(times(instants)).toEqual(['2026-01-06T02:05:00Z', '2026-01-06T03:10:00Z', '2026-01-05']);
    expect(read(timed('2026-01-05', '02:05Z', '03:10Z')).questions).toMatchObject([{ choice: 'clock' }]);
    expect(read(timed('2026-01-05', '02:05', '03:10')).questions).toMatchObject([{ choice: 'clock' }]);
  });

  it('at an airfield of another zone are of its date, and by the clock of the zone that was chosen', () => {
    const late = timed('2026-01-05', '23:30', '23:59', 'XQEA');
    expect(times(late, { clock: 'zone' })).toEqual([
      '2026-01-06T05:30:00Z',
      '2026-01-06T05:59:00Z',
      '2026-01-06',
    ]);
    expect(times(late, { clock: 'zone', zone: 'America/New_York' })).toEqual([
      ...['2026-01-06T04:30:00Z', '2026-01-06T04:59:00Z', '2026-01-05'],
    ]);
  });

  it.each([
    ['that the clock skips', '2026-03-08', '02:30', '04:00', /does not come, or comes twice/],
    ['that the clock shows twice', '2025-11-02', '01:30', '04:00', /does not come, or comes twice/],
    ['that are the same', '2026-01-05', '10:00', '10:00', /at the same time/],
    ['that are none', '2026-01-05', '25:00', '10:00', /is no time/],
    ['still to come', '2026-03-10', '11:00', '12:00', /lies in the future/],
    ['shorter than the hours', '2026-01-05', '10:00', '10:01', /more than the time between/],
  ])('%s are refused', (_what, date, off, on, because) => {
    expect(Object.values(reasons(read(timed(date, off, on), { role: 'solo', clock: 'zone' })))).toEqual([
      expect.stringMatching(because),
    ]);
  });

  it('that are not there: the flight counts from the last second of its day where it began', () => {
    const [draft] = read('Date,Registration,Total\n2026-01-05,N-0001,1.5').drafts;
    expect(draft).toMatchObject({
      ...{ timesKnown: false, flownOn: '2026-01-05', departedAt: '2026-01-06T05:59:59Z' },
      arrivedAt: '2026-01-06T07:29:59Z',
    });
    const east = read('Date,From,Registration,Total\n2026-01-05,XQEA,N-0001,1.5').drafts[0];
    expect(east).toMatchObject({ departedAt: '2026-01-06T04:59:59Z' });
    // One time alone tells no more than the day.
    const one = read('Date,Off blocks (UTC),Registration,Total\n2026-01-05,10:00,N-0001,1.5', {
      ...{ role: 'solo', clock: 'utc' },
    });
    expect(one.drafts).toMatchObject([{ timesKnown: false }]);
    expect(reasons(read('Date,Registration,Total\n2026-03-10,N-0001,1.5'))).toEqual({
      2: 'It has no times, and 2026-03-10 may not be over where it was flown: give the times, or import it later.',
    });
  });
});

describe('roles', () => {
  const role = (columns: string, cells: string, choices = {}) => {
    const reading = read(`Date,Registration,Total,${columns}\n2026-01-05,N-0001,1.5,${cells}`, choices);
    return reading.drafts[0]?.role ?? Object.values(reasons(reading))[0];
  };
  it.each([
    ['Role', 'PIC', 'pilot-in-command'],
    ['PIC,Dual,Solo', '1.5,,', 'pilot-in-command'],
    ['PIC,Dual,Solo', ',1.5,0', 'dual-received'],
    // 14 CFR 61.51(e)(1)(i) and (h): a rated pilot under instruction may log both.
    ['PIC,Dual,Solo', '1.5,1.5,', 'dual-received'],
    ['PIC,Solo', '1.5,1.5', 'solo'],
    ['PIC,Instruction given', '1.5,1.5', 'instructor'],
    ['SIC', '1.5', 'second-in-command'],
  ])('%s: %s is %s', (columns, cells, expected) => expect(role(columns, cells)).toBe(expected));

  it.each([
    ['PIC,Dual', '0.5,1.0', /more than one role/],
    ['PIC,SIC', '0.5,1.0', /more than one role/],
    ['PIC', '', /in which role/],
    ['Role', 'boss', /none of the words/],
  ])('%s: %s is refused', (columns, cells, because) => expect(role(columns, cells)).toMatch(because));

  it('are as chosen where the file says nothing; who handled the controls is never supposed', () => {
    const file = 'Date,Registration,Total,Landings,Day landings full stop\n2026-01-05,N-0001,1.5,3,2';
    expect(read(file, { role: 'solo' }).drafts).toMatchObject([
      { role: 'solo', soleManipulator: false, takeoffs: 0, landings: 3, fullStopLandings: 2 },
    ]);
    expect(
      read(file, { role: 'solo', soleManipulator: true, takeoffsAsLandings: true }).drafts,
    ).toMatchObject([{ soleManipulator: true, takeoffs: 3 }]);
    expect(read(file, { role: 'instructor', soleManipulator: true }).drafts).toMatchObject([
      { soleManipulator: false },
    ]);
  });
});

describe('counts', () => {
  it('by day and at night are added; landings at night are no full stops unless it is said', () => {
    const file =
      'Date,Registration,Total,Day landings,Night landings,Day takeoffs,Night takeoffs\n2026-01-05,N-0001,1.5,2,3,2,1';
    expect(read(file).drafts).toMatchObject([
      { landings: 5, fullStopLandings: 0, nightFullStopLandings: 0, takeoffs: 3, nightTakeoffs: 1 },
    ]);
  });

  it.each(['1.5', '-1', '201', 'three'])('%s is refused', (count) => {
    expect(
      Object.keys(reasons(read(`Date,Registration,Total,Landings\n2026-01-05,N-0001,1.5,${count}`))),
    ).toEqual(['2']);
  });

  it('that contradict each other are refused', () => {
    const file = 'Date,Registration,Total,Landings,Full stop\n2026-01-05,N-0001,1.5,1,2';
    expect(reasons(read(file))).toEqual({ 2: 'Full-stop landings are part of the landings.' });
  });
});

describe('aircraft', () => {
  const of = (columns: string, cells: string, choices = {}) => {
    const reading = read(`Date,Total,${columns}\n2026-01-05,1.5,${cells}`, { role: 'solo', ...choices });
    return reading.drafts[0] ?? Object.values(reasons(reading))[0];
  };
  it('are the club’s by registration, or of its models, else what the file or the member says', () => {
    expect(of('Registration', 'n0001')).toMatchObject({
      aircraftId: 'a1',
      modelId: 'm1',
      aircraftWords: 'Harrow Lark 160, N-0001',
    });
    expect(of('Type,Registration', 'harrow twin,N-9')).toMatchObject({
      ...{ aircraftId: null, modelId: 'm2', class: 'multi-engine-land', aircraftWords: 'Harrow Twin, N-9' },
    });
    expect(of('Type,Registration,Class,Tailwheel', 'Old Oak,N-9,SEL,yes')).toMatchObject({
      ...{
        modelId: null,
        category: 'airplane',
        class: 'single-engine-land',
        tailwheel: true,
        aircraftWords: 'Old Oak, N-9',
      },
    });
    const kinds = [
      { words: 'OLD  oak', category: 'glider' as const, class: 'none' as const, tailwheel: false },
    ];
    expect(of('Type', 'Old Oak', { kinds })).toMatchObject({
      category: 'glider',
      class: 'none',
      typeRating: null,
    });
  });

  it('whose letters were another’s before are what the row says', () => {
    expect(of('Registration,Category,Class,Tailwheel', 'N-0001,glider,none,no')).toMatchObject({
      aircraftId: null,
      category: 'glider',
    });
    expect(of('Registration,Type', 'N-0001,Harrow Twin')).toMatchObject({ aircraftId: null, modelId: 'm2' });
  });

  it('nobody knows are asked about, by kind', () => {
    const reading = read('Date,Total,Type\n2026-01-05,1,Oak\n2026-01-06,1,OAK\n2026-01-07,1,Elm');
    expect(reading.kinds).toEqual([
      { words: 'Oak', rows: 2, told: false },
      { words: 'Elm', rows: 1, told: false },
    ]);
    expect(Object.keys(reasons(reading))).toHaveLength(3);
    expect(of('Type,Class,Category,Tailwheel', 'Oak,SEL,glider,no')).toMatch(/is none of the category/);
  });
});

describe('rows that say a flight twice', () => {
  const flight = (line: number, more = {}) => ({
    ...read('Date,Registration,Total\n2026-01-05,N-0001,1.5').drafts[0]!,
    ...{ line, ...more },
  });
  const known = (line: number, departedAt: string, more = {}) =>
    flight(line, { departedAt, timesKnown: true, ...more });
  it('by the same minute off blocks, whatever else they say', () => {
    const found = duplicatesOf(
      [
        known(2, '2026-01-05T20:00:00Z'),
        known(3, '2026-01-05T20:00:30Z', { totalTenths: 3 }),
        known(4, '2026-01-05T20:01:00Z'),
      ],
      [],
    );
    expect(found).toMatchObject([{ line: 3, kind: 'same', earlierLine: 2 }]);
  });

  it('perhaps: same day, aircraft and hours, where one has no times', () => {
    const log = [
      { ...known(0, '2026-01-05T20:00:00Z'), id: 'e1', aircraftWords: 'Lark, N-0001', aircraftId: null },
    ];
    expect(duplicatesOf([flight(2)], log)).toMatchObject([{ kind: 'alike', entryId: 'e1' }]);
    expect(duplicatesOf([known(2, '2026-01-05T22:00:00Z')], log)).toEqual([]);
    for (const other of [
      { flownOn: '2026-01-06' },
      { totalTenths: 14 },
      { aircraftId: null, aircraftWords: 'Lark, N-0002' },
    ])
      expect(duplicatesOf([flight(2, other)], log)).toEqual([]);
  });

  it('are found among twenty thousand that differ in one thing only, in a step each', () => {
    const drafts = Array.from({ length: 20_000 }, (_none, at) =>
      flight(at, { aircraftId: null, aircraftWords: `Kite, K-${at}` }),
    );
    expect(duplicatesOf(drafts, [])).toEqual([]);
    expect(duplicatesOf([...drafts, ...drafts], [])).toHaveLength(20_000);
  });
});

describe('files that are none', () => {
  it.each([
    ['nothing', ''],
    ['blanks', ' \n \n'],
    ['headings alone', 'Date,Total'],
    ['an open quotation mark', 'Date,Total\n"2026-01-01,1'],
    ['a row too long', `Date,Total\n2026-01-01,${'x'.repeat(30_000)}`],
    ['too many columns', `${'a,'.repeat(200)}b\n1`],
    ['20,001 rows', `Date,Total\n${'2026-01-01,1\n'.repeat(20_001)}`],
    ['JSON that is broken', '[{"a":1'],
    ['JSON of another kind', '{"a":[{"b":{"c":1}}]}'],
  ])('%s', (_what, file) =>
    expect(refusable(file)).toMatchObject({ ok: false, refused: expect.any(String) }),
  );

  it('have a date, an aircraft and hours, or are asked about', () => {
    const says = (file: string) => read(file).questions.map(({ says }) => says);
    expect(says('Colour,Shape\nred,round')).toHaveLength(3);
    expect(says('Date,Registration\n2026-01-01,N-0001')).toEqual([
      'Say which column holds the total hours, or both times.',
    ]);
  });

  it('leave no sum of the sheet for a flight', () => {
    const reading = read('Date,Registration,Total\n2026-01-01,N-0001,1.5\n,Total,1.5\nBrought forward,,300');
    expect([reading.sums, reading.drafts.length, reading.bad]).toEqual([[3, 4], 1, []]);
  });

  it('keep what a spreadsheet was kept from reading as a formula', () => {
    expect(read("Date,Registration,Total,Remarks\n2026-01-01,N-0001,1.5,'=1+1").drafts).toMatchObject([
      { remarks: '=1+1' },
    ]);
  });

  it('are the JSON of the export as well', () => {
    const reading = read(
      JSON.stringify({
        entries: [
          { flownOn: '2026-01-01', registration: 'N-0001', totalH: 1.5, holding: true, typeRating: null },
        ],
      }),
    );
    expect(reading.drafts).toMatchObject([
      { flownOn: '2026-01-01', aircraftId: 'a1', totalTenths: 15, holding: true },
    ]);
  });
});

it('an entry of the log is not written again, and its totals stand beside what comes', () => {
  const before = { ...KNOWN.before, flights: 1, totalTenths: 15 };
  const { line: _line, ...logged } = read('Date,Registration,Total\n2026-01-05,N-0001,1.5').drafts[0]!;
  const known = { ...KNOWN, before, log: [{ ...logged, id: 'e1' }] };
  const reading = read(
    'Date,Registration,Total\n2026-01-05,N-0001,1.5\n2026-01-06,N-0001,2',
    { role: 'solo' },
    known,
  );
  expect(reading.duplicates).toMatchObject([{ line: 2, kind: 'alike', entryId: 'e1' }]);
  expect(reading.totals).toMatchObject({
    added: { flights: 1, totalTenths: 20 },
    after: { flights: 2, totalTenths: 35 },
  });
});
