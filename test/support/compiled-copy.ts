import { transformFileSync } from '@swc/core';
import { spawnSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  chmodSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
  copyFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { PROJECT_ROOT, projectPath } from '../../src/platform/paths.js';

/** A copy of the service as plain JavaScript, so that tests can start it as separate processes. */
export interface CompiledCopy {
  /** Folder that looks like the project: package.json, node_modules, dist/. */
  root: string;
  /** Writes an ES module beside the compiled code and returns its path; import from './dist/src/...'. */
  script(name: string, source: string): string;
  remove(): void;
}

/**
 * Translates `src` (without the pages) and `migrations` file by file, without type checks, in well under a second.
 * @param options.copyModules false leaves node_modules out, so that a test can put its own there.
 */
export function compileCopy(options: { linkModules?: boolean } = {}): CompiledCopy {
  const root = mkdtempSync(join(tmpdir(), 'bellcrank-copy-'));
  chmodSync(root, 0o755);
  for (const folder of ['src', 'migrations']) {
    for (const entry of readdirSync(projectPath(folder), { recursive: true, withFileTypes: true })) {
      const file = join(entry.parentPath, entry.name);
      if (!entry.isFile() || !/(?<!\.spec|\.d)\.ts$/.test(file) || file.includes(join('web', 'page')))
        continue;
      const target = join(root, 'dist', relative(PROJECT_ROOT, file)).replace(/\.ts$/, '.js');
      mkdirSync(dirname(target), { recursive: true });
      writeFileSync(target, translate(file));
    }
  }
  copyFileSync(projectPath('package.json'), join(root, 'package.json'));
  if (options.linkModules !== false) bringModules(join(root, 'node_modules'));
  return {
    root,
    script(name, source) {
      const file = join(root, name);
      writeFileSync(file, source);
      return file;
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  };
}

/**
 * A link to the modules; but where a closed folder above them would keep another account out (a checkout in a private
 * folder), the modules themselves, as hard links if the file system allows.
 */
function bringModules(target: string): void {
  const modules = projectPath('node_modules');
  if (openToAll(modules)) return symlinkSync(modules, target);
  if (spawnSync('cp', ['-al', modules, target]).status === 0) return;
  rmSync(target, { recursive: true, force: true });
  if (spawnSync('cp', ['-a', modules, target]).status !== 0) throw new Error(`cannot copy ${modules}`);
}

/** Can every account walk to this folder? */
function openToAll(folder: string): boolean {
  const open = (statSync(folder).mode & 0o001) !== 0;
  return open && (folder === dirname(folder) || openToAll(dirname(folder)));
}

function translate(file: string): string {
  return transformFileSync(file, {
    jsc: {
      parser: { syntax: 'typescript', decorators: true },
      transform: { legacyDecorator: true, decoratorMetadata: true },
      target: 'es2022',
      keepClassNames: true,
    },
    module: { type: 'es6' },
    swcrc: false,
  }).code;
}
