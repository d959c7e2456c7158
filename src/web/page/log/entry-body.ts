import { airfields } from '../session/session.js';
import { clockIn, dateIn, instantIn, plusDays, today } from '../parts/time.js';
import type { LogEntry } from './types.js';
import { COUNTS, HOURS } from './words.js';

/** The form's texts as the inputs hold them. `aircraft`: 'a:' and an aircraft's id, 'm:' and a model's, or '' for any other. */
export interface EntryTexts {
  day: string;
  off: string;
  on: string;
  from: string;
  to: string;
  aircraft: string;
  aircraftWords: string;
  category: string;
  class: string;
  tailwheel: boolean;
  device: string;
  role: string;
  soleManipulator: boolean;
  holding: boolean;
  interceptTrack: boolean;
  remarks: string;
  figures: Record<string, string>;
}

const FIGURES = [...HOURS, ...COUNTS].map(([field]) => field);

export function textsOf(entry: LogEntry | null, zone: string): EntryTexts {
  if (entry === null)
    return {
      ...{ day: today(zone), off: '', on: '', from: '', to: '', aircraft: '', aircraftWords: '' },
      ...{ category: 'airplane', class: 'single-engine-land', tailwheel: false, device: '' },
      ...{ role: 'pilot-in-command', soleManipulator: true, holding: false, interceptTrack: false },
      ...{ remarks: '', figures: { takeoffs: '1', landings: '1', fullStopLandings: '1' } },
    };
  const { aircraftId, modelId } = entry;
  return {
    ...entry,
    // Times that only stand for a day are not offered as if somebody had written them.
    ...(entry.timesKnown
      ? { day: dateIn(zone, entry.departedAt), off: clockIn(zone, entry.departedAt) }
      : { day: entry.flownOn, off: '' }),
    ...{
      on: entry.timesKnown ? clockIn(zone, entry.arrivedAt) : '',
      from: entry.fromAirfield,
      to: entry.toAirfield,
    },
    aircraft: aircraftId ? `a:${aircraftId}` : modelId ? `m:${modelId}` : '',
    device: entry.device ?? '',
    figures: Object.fromEntries(
      FIGURES.map((field) => [field, entry[field] === 0 ? '' : String(entry[field])]),
    ),
  };
}

/** The entry as the API takes it, or what cannot be read. An arrival earlier than the departure is on the next day. */
export function bodyOf(texts: EntryTexts, zone: string): Record<string, unknown> | string {
  const departedAt = instantIn(zone, texts.day, texts.off);
  const arrivedAt = instantIn(zone, texts.on < texts.off ? plusDays(texts.day, 1) : texts.day, texts.on);
  if (!departedAt || !arrivedAt)
    return 'One of the times does not exist once on that day: the clocks change. Give it a minute earlier or later.';
  const [kind, id] = texts.aircraft.split(':');
  const known = airfields.value.some(({ code }) => code === texts.from.trim());
  return {
    ...{ departedAt, arrivedAt, fromAirfield: texts.from, toAirfield: texts.to },
    ...{ aircraftId: kind === 'a' ? id : null, modelId: kind === 'm' ? id : null },
    ...(kind === ''
      ? {
          ...{ aircraftWords: texts.aircraftWords, category: texts.category, class: texts.class },
          tailwheel: texts.tailwheel,
        }
      : {}),
    // Where the club knows the airfield, the date there is worked out.
    ...(known ? {} : { flownOn: texts.day }),
    ...{ role: texts.role, soleManipulator: texts.soleManipulator, device: texts.device || null },
    ...{ holding: texts.holding, interceptTrack: texts.interceptTrack, remarks: texts.remarks },
    ...Object.fromEntries(FIGURES.map((field) => [field, Number(texts.figures[field] || 0)])),
  };
}

/** What of a body is new: an edit sends no more, so that the rest stays as it was recorded. */
export function changesOf(
  before: Record<string, unknown>,
  after: Record<string, unknown>,
): Record<string, unknown> {
  const changed = Object.entries(after).filter(([name, value]) => value !== before[name]);
  const aircraft = changed.some(([name]) => name === 'aircraftId' || name === 'modelId');
  const other = after['aircraftId'] === null && after['modelId'] === null;
  // Naming another aircraft starts afresh, so all that is said of it goes along.
  const fresh =
    aircraft && other ? ['aircraftId', 'modelId', 'aircraftWords', 'category', 'class', 'tailwheel'] : [];
  return Object.fromEntries([...fresh.map((name) => [name, after[name]] as const), ...changed]);
}
