/** The parts of a forecast, each with what holds in it. */
import type { parseTAF } from 'metar-taf-parser';
import { toSeconds, type ForecastPeriod, type Instant, type WeatherConditions } from '../../rules/index.js';
import { conditionsOf } from './conditions.js';
import { groupsOf, unreadIn } from './groups.js';
import { instantOf } from './times.js';

type Taf = ReturnType<typeof parseTAF> & { validity: { start: Date; end: Date } };
type Trend = Taf['trends'][number] & { validity: { start: Date; end?: Date } };

/** Parts in order of their beginning, and the groups that could not be read. */
export interface Parts {
  periods: ForecastPeriod[];
  unread: string[];
}

/**
 * FM begins anew: all of the part is said. BECMG keeps what it does not name, and while it goes on either may hold: the old part lasts to its
 * end, the new one begins with its beginning. TEMPO, INTER and PROB stand beside what prevails.
 */
export function periodsOf(taf: Taf): Parts {
  const end = instantOf(taf.validity.end);
  const read = (part: Parameters<typeof conditionsOf>[0], text: string): [WeatherConditions, string[]] => {
    const groups = groupsOf(text);
    const unread = unreadIn(groups, taf.station);
    return [conditionsOf(part, groups, unread), unread];
  };
  const [first, unreadFirst] = read(taf, taf.initialRaw);
  const prevailing = [
    period({ from: instantOf(taf.validity.start), to: end, conditions: first, text: taf.initialRaw }),
  ];
  const beside: ForecastPeriod[] = [];
  const unread = [...unreadFirst];
  for (const trend of taf.trends as Trend[]) {
    const [conditions, unreadHere] = read(trend, trend.raw);
    unread.push(...unreadHere);
    const from = instantOf(trend.validity.start);
    const until = trend.validity.end ? instantOf(trend.validity.end) : end;
    const last = prevailing.at(-1)!;
    if (trend.type === 'FM') {
      last.to = from;
      prevailing.push(period({ from, to: end, conditions, text: trend.raw }));
    } else if (trend.type === 'BECMG') {
      last.to = until;
      const merged = unreadHere.length > 0 ? conditions : carried(last.conditions, conditions, trend.raw);
      prevailing.push(period({ from, to: end, conditions: merged, text: trend.raw }));
    } else {
      beside.push({
        ...period({ from, to: until, conditions, text: trend.raw }),
        change: trend.probability === undefined ? 'temporary' : 'probable',
        probabilityPercent: trend.probability ?? null,
      });
    }
  }
  return { periods: [...prevailing, ...beside].sort(inOrder), unread };
}

const period = (of: {
  from: Instant;
  to: Instant;
  conditions: WeatherConditions;
  text: string;
}): ForecastPeriod => ({ change: 'prevailing', probabilityPercent: null, ...of });

const inOrder = (a: ForecastPeriod, b: ForecastPeriod): number => toSeconds(a.from) - toSeconds(b.from);

/** What was, with what becomes otherwise. */
function carried(was: WeatherConditions, now: WeatherConditions, text: string): WeatherConditions {
  const groups = groupsOf(text);
  const windTold = now.windKt !== null;
  const weatherTold = now.phenomena.length > 0 || groups.includes('CAVOK');
  const cloudsTold = groups.some((group) => /^(?:FEW|SCT|BKN|OVC|VV|SKC|CLR|NSC|CAVOK|\/\/\/)/.test(group));
  return {
    ...now,
    ...(windTold
      ? {}
      : {
          ...{ windFromDeg: was.windFromDeg, windKt: was.windKt },
          ...{ gustKt: was.gustKt, windVaries: was.windVaries },
        }),
    ...(now.visibilitySm === null ? { visibilitySm: was.visibilitySm, visibilityIs: was.visibilityIs } : {}),
    ...(cloudsTold ? {} : { ceilingFtAgl: was.ceilingFtAgl, ceilingIs: was.ceilingIs }),
    phenomena: weatherTold ? now.phenomena : was.phenomena,
  };
}
