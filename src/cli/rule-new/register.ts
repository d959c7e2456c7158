import { Refused, type Names } from './names.js';

/**
 * The text of an index with the new rule imported after the other rules of its folder and listed last in its `ruleList`.
 * `from` is the path of the rule from the index, './recency/tow-currency.js'.
 */
export function registered(index: string, names: Names, from: string): string {
  if (new RegExp(`\\b${names.constant}\\b`).test(index))
    throw new Refused(`the index already has a ${names.constant}; choose another name`);
  // A list of rules holds names only, on one line or on many.
  const list = /\bruleList\(([\w\s,]*)\);/.exec(index);
  const last = [...index.matchAll(/^import .*;\n/gm)].at(-1);
  if (!list || !last) throw new Refused('the index has no ruleList(...) to put the rule into');
  const afterImports = last.index + last[0].length;
  const endOfList = list.index + list[0].length - ');'.length;
  const more = list[1]!.includes('\n') ? `  ${names.constant},\n` : `, ${names.constant}`;
  return (
    index.slice(0, afterImports) +
    `import { ${names.constant} } from '${from}';\n` +
    index.slice(afterImports, endOfList) +
    more +
    index.slice(endOfList)
  );
}
