/**
 * Who may approve which work for return to service under 14 CFR 43.3, 43.7, 65.85, 65.87, 65.95, 91.409(a)(1) and (d)(1), 91.411(b), 91.413(c):
 * what the record of a signer has to say before the work is taken as signed. From memory. It judges records, not people.
 */
import type { ItemKind } from '../../rules/index.js';
import type { Holds } from '../signers/signer.entity.js';
import type { LineKind } from './work-line.entity.js';

const MECHANICS: readonly Holds[] = [
  'mechanic',
  'inspection-authorization',
  'repair-station',
  'manufacturer',
];

/** What work asks for: those whose record covers it, and the section that says so. */
export interface Authority {
  holds: readonly Holds[];
  citation: string;
}

const BY_MECHANIC: Authority = { holds: MECHANICS, citation: '14 CFR 43.3(b), 43.7(b), 65.85, 65.87' };
const BY_SHOP: readonly Holds[] = ['repair-station', 'manufacturer'];
const ANYBODY: Authority = { holds: [...MECHANICS, 'pilot'], citation: '14 CFR 43.3(g), 43.7(f)' };

const ITEMS: Partial<Record<ItemKind, Authority>> = {
  annual: {
    holds: ['inspection-authorization', ...BY_SHOP],
    citation: '14 CFR 91.409(a)(1), 43.7, 65.95(a)(2)',
  },
  progressive: {
    holds: ['inspection-authorization', ...BY_SHOP],
    citation: '14 CFR 91.409(d)(1), 43.7',
  },
  'altimeter-static': { holds: BY_SHOP, citation: '14 CFR 91.411(b)' },
  transponder: { holds: BY_SHOP, citation: '14 CFR 91.413(c)' },
  // Not maintenance: 14 CFR 91.171 asks for a pilot's own check.
  'vor-check': ANYBODY,
  'elt-battery': ANYBODY,
  club: ANYBODY,
};

/** What a line asks for. */
export function authorityFor(kind: LineKind, item: ItemKind | null): Authority {
  if (kind === 'item') return ITEMS[item!] ?? BY_MECHANIC;
  // An upgrade is an alteration, and weighing sets the empty weight the aircraft is flown by.
  return kind === 'squawk' || kind === 'other' ? ANYBODY : BY_MECHANIC;
}

/** Is the work covered by preventive maintenance alone, which the signature of a pilot then has to be? */
export const onlyPreventive = (holds: Holds): boolean => holds === 'pilot';
