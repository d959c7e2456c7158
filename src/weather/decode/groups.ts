/**
 * The groups a report or forecast may be made of, WMO-No. 306 FM 15 and FM 51 with the statute miles of North America.
 * The parser passes over what it does not know; a layer of cloud mistyped must not read as a clear sky.
 */

const PHENOMENON = '(?:DZ|RA|SN|SG|PL|IC|GR|GS|UP|FG|BR|HZ|DU|FU|SA|PY|SQ|PO|TS|DS|SS|FC|VA)';
const WEATHER = new RegExp(`^(?=.)(?:\\+|-|VC)?(?:MI|BC|PR|DR|BL|SH|TS|FZ)?${PHENOMENON}*$`);
const CLOUD = /^(?:FEW|SCT|BKN|OVC|VV|\/\/\/)(?:\d{3}|\/\/\/)(?:CB|TCU|\/\/\/)?$/;
const WIND = /^(?:VRB|\d{3}|\/\/\/)(?:P?\d{2,3}|\/\/)(?:G(?:P?\d{2,3}|\/\/))?(KT|MPS|KMH)$/;

const KNOWN: readonly RegExp[] = [
  /^(?:METAR|SPECI|TAF|AMD|COR|AUTO|CC[A-Z]|NIL|CNL|RTD)$/,
  /^\d{6}Z$/,
  /^\d{4}\/\d{4}$/,
  WIND,
  /^\d{3}V\d{3}$/,
  // Visibility: statute miles, a whole number before a fraction, metres with and without a direction.
  /^(?:[PM]?\d{1,2}(?:\/\d{1,2})?SM|\d|\d{4}(?:NDV|[NS]?[EW]?)|CAVOK|\/\/\/\/(?:SM)?)$/,
  /^R\d\d[LCR]?\/\S+$/,
  WEATHER,
  /^(?:NSW|\/\/)$/,
  CLOUD,
  /^(?:SKC|CLR|NSC|NCD|\/\/\/|\/{6})$/,
  /^(?:M?\d\d|\/\/)\/(?:M?\d\d|\/\/|XX)?$/,
  /^[AQ](?:\d{4}|\/\/\/\/)$/,
  // Recent weather, wind shear, sea and runway state, highest and lowest temperature, setting in a forecast.
  /^(?:RE\S+|WS|ALL|RWY\S*|R\d\d[LCR]?|WS\d{3}\/\d{5,6}(?:KT|MPS)|W(?:M?\d\d|\/\/)\/\S+|T[XN]M?\d\d\/\d{4}Z|QNH\d{4}INS)$/,
  // What begins a part of a forecast.
  /^(?:FM\d{6}|BECMG|TEMPO|INTER|PROB\d\d)$/,
];

/** The groups before the remarks. */
export const groupsOf = (text: string): string[] => {
  const groups = text.split(' ').filter((group) => group !== '');
  const remarks = groups.indexOf('RMK');
  return remarks === -1 ? groups : groups.slice(0, remarks);
};

/** Where a report begins to tell of the next two hours. */
export const trendAt = (groups: readonly string[]): number =>
  groups.findIndex((group) => /^(?:NOSIG|BECMG|TEMPO|INTER|PROB\d\d)$/.test(group));

/** Groups that are none of the code's. `station` stands in every report and is none of them. */
export const unreadIn = (groups: readonly string[], station: string): string[] =>
  groups.filter((group) => group !== station && !KNOWN.some((known) => known.test(group)));

/** The unit of the wind's speed, as it is written. */
export function windUnit(groups: readonly string[]): 'KT' | 'MPS' | 'KMH' | null {
  const wind = groups.find((group) => WIND.test(group));
  return wind === undefined ? null : (WIND.exec(wind)![1] as 'KT' | 'MPS' | 'KMH');
}
