/** One thing that a notice tells of. Days and instants in its sentences are ISO and written out for each reader. */
export interface NoticeItem {
  /** What it is about: of several with the same key the last one counts. */
  key: string;
  title: string;
  says: string[];
  /** Where on the page more of it is. */
  link: string;
  /** What was, and what is: with both the same again there is nothing to tell. */
  before?: string;
  after?: string;
  /** What would make it a yes. Found out before the mail goes, not when the thing happens. */
  ways?: string[];
}

/**
 * What is left to tell of things in the order they happened: of each the last, against what was before the first. One
 * that is back where it began is not told of.
 */
export function compactItems(items: readonly NoticeItem[]): NoticeItem[] {
  const byKey = new Map<string, NoticeItem>();
  for (const item of items) {
    const first = byKey.get(item.key);
    byKey.delete(item.key);
    byKey.set(item.key, first?.before === undefined ? item : { ...item, before: first.before });
  }
  return [...byKey.values()].filter(({ before, after }) => before === undefined || before !== after);
}
