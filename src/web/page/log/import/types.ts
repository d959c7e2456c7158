/** What the service answers when a file of flights is looked at. */
export interface ColumnChoice {
  index: number;
  field: string | null;
  form?: string | null;
}

export interface KindChoice {
  words: string;
  category: string;
  class: string;
  tailwheel: boolean;
  typeRating?: string | null;
}

/** How the file is read; what is absent is found out. */
export interface Choices {
  encoding?: string;
  delimiter?: string;
  headingLine?: number;
  columns?: ColumnChoice[];
  dates?: string;
  decimal?: string;
  clock?: string;
  zone?: string;
  role?: string;
  soleManipulator?: boolean;
  takeoffsAsLandings?: boolean;
  kinds?: KindChoice[];
  leaveOutBad?: boolean;
  takeAlike?: boolean;
}

export interface FileColumn {
  index: number;
  heading: string;
  samples: string[];
  field: string | null;
  form: string | null;
  note: string | null;
}

export interface Sums {
  flights: number;
  totalH: number;
  nightH: number;
  crossCountryH: number;
  actualInstrumentH: number;
  simulatedInstrumentH: number;
  dualGivenH: number;
  takeoffs: number;
  landings: number;
}

export interface Preview {
  preview: string | null;
  encoding: string;
  delimiter: string | null;
  headingLine: number;
  remembered: boolean;
  choices: Choices;
  columns: FileColumn[];
  questions: { choice: string; index: number | null; says: string }[];
  kinds: { words: string; rows: number; told: boolean }[];
  counts: {
    rows: number;
    toWrite: number;
    bad: number;
    same: number;
    alike: number;
    sums: number;
    untimed: number;
    rounded: number;
  };
  badReasons: { column: string | null; because: string; rows: number }[];
  bad: { line: number; because: string }[];
  repeated: { line: number; kind: 'same' | 'alike'; earlierLine: number | null; flownOn: string }[];
  firstFlownOn: string | null;
  lastFlownOn: string | null;
  hoursInFile: number;
  totals: { before: Sums; added: Sums; after: Sums };
  notes: string[];
  caution: string;
}

/** A file that was taken over. */
export interface Imported {
  id: string;
  entries: number;
  unreadableRows: number;
  repeatedRows: number;
  firstFlownOn: string;
  lastFlownOn: string;
  recordedAt: string;
  takenBackAt: string | null;
}

/** A line of a preview. */
export type Line = { row: number; of: number } | Preview | { error: { detail: string } };
