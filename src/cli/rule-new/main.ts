/** `npm run rule:new -- PACK TOPIC/NAME`: makes a rule's file and case table, and lists the rule in its folder's index. */
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { Refused, namesFor, type Names } from './names.js';
import { registered } from './register.js';
import { caseTable, ruleFile } from './skeleton.js';

/** Runs the command in the project's folder; gives the exit code. */
export function main(args: string[], root = process.cwd()): number {
  try {
    const names = namesFor(args);
    refuseExisting(root, names);
    const index = indexFor(root, names);
    const from = `./${relative(dirname(index), names.path)}.js`;
    const listed = registered(readFileSync(join(root, index), 'utf8'), names, from);
    mkdirSync(dirname(join(root, names.path)), { recursive: true });
    writeFileSync(join(root, `${names.path}.ts`), ruleFile(names));
    writeFileSync(join(root, `${names.path}.cases.yaml`), caseTable(names));
    writeFileSync(join(root, index), listed);
    console.log(
      [
        `made   ${names.path}.ts (rule ${names.id}, exported as ${names.constant})`,
        `made   ${names.path}.cases.yaml`,
        `listed in ${index}`,
        `next   npx jest test/rules/cases -t '${names.id}' tells what is still to be filled in`,
      ].join('\n'),
    );
    return 0;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    console.error(error.message);
    return 1;
  }
}

function refuseExisting(root: string, { path, id }: Names): void {
  for (const file of [`${path}.ts`, `${path}.cases.yaml`])
    if (existsSync(join(root, file))) throw new Refused(`${file} is there already`);
  const rules = join(root, 'src/rules');
  for (const name of readdirSync(rules, { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.ts')) continue;
    if (readFileSync(join(rules, name), 'utf8').includes(`id: '${id}'`))
      throw new Refused(
        `src/rules/${name} already has the id ${id}, and ids are never used twice; choose another name`,
      );
  }
}

/** The nearest index above the rule that lists rules. */
function indexFor(root: string, { path }: Names): string {
  for (let folder = dirname(path); folder.startsWith('src/rules/packs/'); folder = dirname(folder)) {
    const index = join(folder, 'index.ts');
    if (existsSync(join(root, index)) && readFileSync(join(root, index), 'utf8').includes('ruleList('))
      return index;
  }
  throw new Refused(
    `no index.ts above ${path} lists rules: in the us pack a rule stands below pilot/, aircraft/ or flight/`,
  );
}
