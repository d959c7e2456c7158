/** What can be inferred from where a new rule is to stand. */

/** Refuses what cannot be done; the message says what to type instead. */
export class Refused extends Error {}

/** A new rule's names. */
export interface Names {
  /** Path of its file without the ending, from the project's folder. */
  path: string;
  /** Dotted id. */
  id: string;
  /** Name of the exported constant. */
  constant: string;
  title: string;
  weight: 'law' | 'club';
  binds: 'pilot' | 'aircraft' | 'flight' | 'club';
  /** A fact that the skeleton reads; the author puts the right ones. */
  reads: string;
  /** What a source looks like in this pack. */
  source: string;
}

interface Pack {
  /** Second part of an id, where other packs have rules on the same topic. */
  mark: string | null;
  weight: Names['weight'];
  source: string;
}

const PACKS: Record<string, Pack> = {
  us: { mark: null, weight: 'law', source: '14 CFR 61.57(a)' },
  eu: { mark: 'easa', weight: 'law', source: 'FCL.060(b)' },
  ca: { mark: 'canada', weight: 'law', source: 'CAR 401.05(2)' },
  club: { mark: null, weight: 'club', source: 'Club handbook, section 4.1' },
};

const USAGE = `npm run rule:new -- PACK TOPIC/NAME, with PACK one of ${Object.keys(PACKS).join(', ')}; for example: npm run rule:new -- us pilot/recency/tow-currency`;

/** Names for `us pilot/recency/tow-currency`; throws Refused for anything else. */
export function namesFor(args: readonly string[]): Names {
  const [packName, topicAndName] = args;
  if (args.length !== 2 || packName === undefined || topicAndName === undefined) throw new Refused(USAGE);
  const pack = PACKS[packName];
  if (!pack) throw new Refused(`there is no pack ${packName}. ${USAGE}`);
  const parts = topicAndName.split('/');
  const wrong = parts.find((part) => !/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(part));
  if (wrong !== undefined || parts.length < 2)
    throw new Refused(`${topicAndName} is not TOPIC/NAME in lower case with hyphens. ${USAGE}`);
  const name = parts.at(-1)!;
  const topic = parts.at(-2)!.replaceAll('-', '_');
  const words = name.split('-');
  return {
    path: `src/rules/packs/${packName}/${topicAndName}`,
    id: [packName === 'club' ? 'club' : topic, pack.mark, words.join('_')]
      .filter((part) => part !== null)
      .join('.'),
    constant: words.map((word, index) => (index === 0 ? word : capital(word))).join(''),
    title: capital(words.join(' ')),
    weight: pack.weight,
    ...whomItBinds(packName, parts[0]!),
    source: pack.source,
  };
}

function whomItBinds(pack: string, area: string): Pick<Names, 'binds' | 'reads'> {
  if (pack === 'club') return { binds: 'club', reads: 'member.standing' };
  if (area === 'aircraft') return { binds: 'aircraft', reads: 'aircraft.items' };
  if (area === 'flight') return { binds: 'flight', reads: 'aircraft.type' };
  return { binds: 'pilot', reads: 'pic.log' };
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
