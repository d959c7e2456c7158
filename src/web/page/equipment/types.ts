/** What the equipment page reads and sends. */
export interface Piece {
  id: string;
  kind: string;
  name: string;
  removedOn: string | null;
  portable: boolean;
  weightLb: number | null;
  armIn: number | null;
}

export interface WeightOf {
  emptyWeightLb: number | null;
  emptyArmIn: number | null;
  usefulLoadLb: number | null;
}

export interface ChangeResult {
  changeId: string | null;
  preview: string;
  weight: { before: WeightOf; after: WeightOf; because: string | null };
  kinds: {
    kind: string;
    title: string;
    before: { verdict: string } | null;
    after: { verdict: string; says: string[] } | null;
  }[];
  lost: string[];
  gained: string[];
  itemsEnded: { title: string }[];
  itemsBegun: { title: string }[];
  members: { memberId: string; memberName: string; exempt: boolean }[];
  bookingsJudged: number;
  bookings: {
    bookingId: string;
    memberName: string;
    departs: string;
    before: string;
    after: string;
    because: { title: string; says: string }[];
  }[];
  caution: string;
}

export interface Change {
  id: string;
  title: string;
  doneOn: string;
  removed: string[];
  installed: string[];
  signedBy: string;
  takenBackAt: string | null;
  takenBackReason: string | null;
}

/** A row of what is put in, as typed. */
export interface Row {
  kind: string;
  name: string;
  basis: string;
  document: string;
  weightLb: string;
  armIn: string;
  itemTitle: string;
  itemMonths: string;
}

export const EMPTY_ROW: Row = {
  ...{ kind: 'attitude-indicator', name: '', basis: 'stc', document: '', weightLb: '', armIn: '' },
  ...{ itemTitle: '', itemMonths: '' },
};

export const KINDS = [
  ...[
    'attitude-indicator',
    'heading-indicator',
    'airspeed-indicator',
    'altimeter',
    'vertical-speed',
    'rate-of-turn',
  ],
  ...[
    'slip-skid',
    'clock',
    'magnetic-direction',
    'gps-navigator',
    'nav-receiver',
    'vor-receiver',
    'dme',
    'two-way-radio',
  ],
  ...[
    'transponder',
    'ads-b-out',
    'autopilot',
    'engine-monitor',
    'tachometer',
    'oil-pressure',
    'oil-temperature',
  ],
  ...['manifold-pressure', 'fuel-quantity', 'air-pump', 'backup-battery', 'generator', 'pitot-heat', 'elt'],
  ...[
    'anti-collision-lights',
    'position-lights',
    'landing-light',
    'safety-belts',
    'shoulder-harness',
    'cabin-equipment',
    'other',
  ],
];
export const BASES = [
  { basis: 'type-design', words: 'type design' },
  { basis: 'stc', words: 'supplemental type certificate' },
  { basis: 'alteration-record', words: 'field approval or alteration record' },
  { basis: 'portable', words: 'portable, carried only' },
];
/** 'gps-navigator' as people write it. */
export const kindWords = (kind: string): string => kind.replaceAll('-', ' ');
