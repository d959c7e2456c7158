/** What a form of a sheet is given. */
export interface SheetForm<T> {
  /** Null: there is none yet. */
  sheet: T | null;
  mayWrite: boolean;
  /** Tells what is wrong before anything is sent. */
  refuse: (problem: string | null) => void;
  save: (body: object) => Promise<boolean>;
  remove: () => Promise<boolean>;
}
