/**
 * Scenarios as written in YAML, for a pilot to read: what published guidance says of a case with its dates and hours, the
 * facts of the case, and what must come out. Whatever is not understood is refused, so that a slip cannot test nothing.
 */
import { parse } from 'yaml';
import type { Status } from '../../../src/rules/index.js';
import { conformingFact, conformingFlight, isFactName } from '../../../src/rules/workshop/case-facts.js';
import { conformingTime } from '../../../src/rules/workshop/case-times.js';
import { object, onlyKeys, type Place, type Refuse } from '../../../src/rules/workshop/refuse.js';

/** Where it is published; `status` says whether the text was seen or is recalled. */
export interface Source {
  paper: string;
  kind: 'law' | 'guidance of the authority' | 'question of the authority' | 'association' | 'school or forum';
  status: 'seen' | 'from memory';
  address?: string;
  says: string;
}

/** Changes to an aircraft, a pilot and a flight in order; facts by name, as in the case tables. */
export type Given = Record<string, unknown>;

/** A run of departures. It ends with the last day on which the flight is over, with a midnight, or at an instant. */
export interface Step {
  is: Status;
  branch?: string;
  /** The last day on the whole of which it holds, the flight over. */
  through?: string;
  /** The day from whose beginning it no longer holds. */
  before?: string;
  /** The departure from which it no longer holds. */
  until?: string;
  /** Rules in the way of the flight; the scenario's own where it is short, unless said here. */
  inTheWay?: string[];
}

export interface Timeline {
  from: string;
  to: string;
  toleranceSeconds: number;
  steps: Step[];
  /** A rule of the night that stands in the way at night as well; the answer is looked at without it. */
  besides?: string;
  /** How the engine says otherwise, here as below: what is told is then expected to fail until it is settled. */
  differs?: string;
}

export interface CaseLine {
  says: string;
  departs: string;
  given: Given;
  /** Records added to lists of the scenario. */
  add: Given;
  is: Status;
  branch?: string;
  /** Parts of the sentence. */
  tells?: string[];
  /** Last day on which it holds. */
  through?: string;
  differs?: string;
}

/** What somebody who asks at a time is told to do for a flight. */
export interface WayLine {
  says: string;
  asked: string;
  departs: string;
  given: Given;
  /** Acts of the cheapest way that hangs on nobody's leave, in order; or that there is none before the flight. */
  acts: string[] | 'none';
  /** Last day on which the rule is met once it is done. */
  through?: string;
  /** Acts that no rule and no way may offer here. */
  never: string[];
  /** First day for which there is a way, where there is none in time. */
  later?: string;
  /** Rule and part of the reason, where nothing at all is shown. */
  because?: { rule: string; why: string };
  differs?: string;
}

export interface Scenario {
  file: string;
  title: string;
  sources: Source[];
  /** How the published case was carried over: dates moved, what was left out. */
  carriedOver?: string;
  rule: string;
  jurisdiction: 'US' | 'EU' | 'CA';
  given: Given;
  timeline?: Timeline;
  cases: CaseLine[];
  ways: WayLine[];
}

const KEYS = [
  'title',
  'sources',
  'carriedOver',
  'rule',
  'jurisdiction',
  'given',
  'timeline',
  'cases',
  'ways',
];
const KINDS = [
  'law',
  'guidance of the authority',
  'question of the authority',
  'association',
  'school or forum',
];
const STATUSES = ['met', 'short', 'unknown', 'not-applicable'];

/** Reads one file; throws with the place of what is wrong. */
export function readScenario(file: string, text: string): Scenario {
  const refuse: Refuse = (place, because) => {
    throw new Error(`${file}: ${place.join('.')}: ${because}`);
  };
  const written = object(parse(text, { merge: true }), [], refuse);
  onlyKeys(written, KEYS, [], refuse);
  for (const key of ['title', 'sources', 'rule', 'given'])
    if (!(key in written)) refuse([], `${key} is missing`);
  const sources = list(written.sources, ['sources'], refuse).map((one, at) =>
    readSource(one, ['sources', at], refuse),
  );
  const scenario: Scenario = {
    file,
    title: written.title as string,
    sources,
    ...(written.carriedOver === undefined ? {} : { carriedOver: written.carriedOver as string }),
    rule: written.rule as string,
    jurisdiction: (written.jurisdiction ?? 'US') as Scenario['jurisdiction'],
    given: readGiven(written.given, ['given'], refuse),
    ...(written.timeline === undefined ? {} : { timeline: readTimeline(written.timeline, refuse) }),
    cases: list(written.cases ?? [], ['cases'], refuse).map((one, at) =>
      readCase(one, ['cases', at], refuse),
    ),
    ways: list(written.ways ?? [], ['ways'], refuse).map((one, at) => readWay(one, ['ways', at], refuse)),
  };
  if (sources.length === 0) refuse(['sources'], 'at least one');
  if (!scenario.timeline && scenario.cases.length === 0) refuse([], 'neither a timeline nor cases');
  return scenario;
}

function list(value: unknown, place: Place, refuse: Refuse): unknown[] {
  return Array.isArray(value) ? (value as unknown[]) : refuse(place, 'should be a list');
}

function readSource(value: unknown, place: Place, refuse: Refuse): Source {
  const source = object(value, place, refuse);
  onlyKeys(source, ['paper', 'kind', 'status', 'address', 'says'], place, refuse);
  for (const key of ['paper', 'kind', 'status', 'says'])
    if (typeof source[key] !== 'string' || source[key] === '') refuse(place, `${key} is missing`);
  if (!KINDS.includes(source.kind as string)) refuse([...place, 'kind'], `one of ${KINDS.join(', ')}`);
  if (!['seen', 'from memory'].includes(source.status as string))
    refuse([...place, 'status'], 'seen or from memory');
  return source as unknown as Source;
}

function readGiven(value: unknown, place: Place, refuse: Refuse): Given {
  const given = object(value ?? {}, place, refuse);
  return Object.fromEntries(
    Object.entries(given).map(([key, fact]) => {
      const at = [...place, key];
      if (key === 'flight') return [key, conformingFlight(fact, at, refuse)];
      if (key === 'durationMinutes')
        return [key, typeof fact === 'number' && fact >= 0 ? fact : refuse(at, 'minutes, as a number')];
      if (!isFactName(key)) return refuse(at, `${key} is no fact`);
      return [key, conformingFact(key, fact, at, refuse)];
    }),
  );
}

const instant = (value: unknown, place: Place, refuse: Refuse): string =>
  conformingTime(value, 'instant', place, refuse);
const date = (value: unknown, place: Place, refuse: Refuse): string =>
  conformingTime(value, 'date', place, refuse);

function status(value: unknown, place: Place, refuse: Refuse): Status {
  return STATUSES.includes(value as string)
    ? (value as Status)
    : refuse(place, `one of ${STATUSES.join(', ')}`);
}

function readTimeline(value: unknown, refuse: Refuse): Timeline {
  const place = ['timeline'];
  const timeline = object(value, place, refuse);
  onlyKeys(timeline, ['from', 'to', 'toleranceSeconds', 'steps', 'besides', 'differs'], place, refuse);
  const { toleranceSeconds = 0 } = timeline;
  if (typeof toleranceSeconds !== 'number')
    return refuse([...place, 'toleranceSeconds'], 'seconds, as a number');
  const steps = list(timeline.steps, [...place, 'steps'], refuse).map((one, index, all): Step => {
    const at = [...place, 'steps', index];
    const step = object(one, at, refuse);
    onlyKeys(step, ['is', 'branch', 'through', 'before', 'until', 'inTheWay'], at, refuse);
    const ends = ['through', 'before', 'until'].filter((key) => key in step);
    if (ends.length !== (index === all.length - 1 ? 0 : 1))
      refuse(at, 'every step but the last ends one way: through, before or until');
    return {
      ...(step as unknown as Step),
      is: status(step.is, [...at, 'is'], refuse),
      ...('through' in step ? { through: date(step.through, [...at, 'through'], refuse) } : {}),
      ...('before' in step ? { before: date(step.before, [...at, 'before'], refuse) } : {}),
      ...('until' in step ? { until: instant(step.until, [...at, 'until'], refuse) } : {}),
    };
  });
  return {
    from: instant(timeline.from, [...place, 'from'], refuse),
    to: instant(timeline.to, [...place, 'to'], refuse),
    toleranceSeconds,
    steps,
    ...(timeline.besides === undefined ? {} : { besides: timeline.besides as string }),
    ...(timeline.differs === undefined ? {} : { differs: timeline.differs as string }),
  };
}

function readCase(value: unknown, place: Place, refuse: Refuse): CaseLine {
  const line = object(value, place, refuse);
  onlyKeys(
    line,
    ['says', 'departs', 'given', 'add', 'is', 'branch', 'tells', 'through', 'differs'],
    place,
    refuse,
  );
  if (typeof line.says !== 'string') refuse(place, 'says is missing');
  return {
    ...(line as unknown as CaseLine),
    departs: instant(line.departs, [...place, 'departs'], refuse),
    given: readGiven(line.given, [...place, 'given'], refuse),
    add: readGiven(line.add, [...place, 'add'], refuse),
    is: status(line.is, [...place, 'is'], refuse),
    ...(line.through === undefined ? {} : { through: date(line.through, [...place, 'through'], refuse) }),
  };
}

function readWay(value: unknown, place: Place, refuse: Refuse): WayLine {
  const line = object(value, place, refuse);
  onlyKeys(
    line,
    ['says', 'asked', 'departs', 'given', 'acts', 'through', 'never', 'later', 'because', 'differs'],
    place,
    refuse,
  );
  if (typeof line.says !== 'string') refuse(place, 'says is missing');
  if (line.acts !== 'none' && !Array.isArray(line.acts)) refuse(place, 'acts is a list, or none');
  if (line.acts !== 'none' && (line.later !== undefined || line.because !== undefined))
    refuse(place, 'later and because go with "acts: none"');
  return {
    ...(line as unknown as WayLine),
    asked: instant(line.asked, [...place, 'asked'], refuse),
    departs: instant(line.departs, [...place, 'departs'], refuse),
    given: readGiven(line.given, [...place, 'given'], refuse),
    never: (line.never ?? []) as string[],
    ...(line.through === undefined ? {} : { through: date(line.through, [...place, 'through'], refuse) }),
    ...(line.later === undefined ? {} : { later: date(line.later, [...place, 'later'], refuse) }),
  };
}
