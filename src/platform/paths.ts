/**
 * Where the installed project lies. The only file that asks the module system where it is: the same code runs from
 * `src/` under the test transform and from `dist/src/` after a build, so everything is found by walking up to package.json.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import { fileURLToPath } from 'node:url';

const PROJECT_NAME = 'bellcrank';

function isProjectRoot(folder: string): boolean {
  const manifest = join(folder, 'package.json');
  if (!existsSync(manifest)) return false;
  return (JSON.parse(readFileSync(manifest, 'utf8')) as { name?: string }).name === PROJECT_NAME;
}

function findProjectRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!isProjectRoot(folder)) {
    if (folder === parse(folder).root)
      throw new Error(`no package.json named "${PROJECT_NAME}" above this module`);
    folder = dirname(folder);
  }
  return folder;
}

/** Does this run from what the build made, and not from the sources? */
export const BUILT = dirname(fileURLToPath(import.meta.url)).includes(join('dist', 'src'));

/** The folder that holds package.json. */
export const PROJECT_ROOT = findProjectRoot();

/** A path inside the project, from path segments. */
export function projectPath(...segments: string[]): string {
  return join(PROJECT_ROOT, ...segments);
}

/** The built pages (HTML, scripts, styles). Present only after a build. */
export const WEB_ASSETS_DIR = projectPath('dist', 'web');
/** Where the embedded database and generated secrets live unless BELLCRANK_DATA_DIR says otherwise. */
export const DEFAULT_DATA_DIR = projectPath('.bellcrank');

/** Version and description out of package.json, for the API description and the health answer. */
export function projectManifest(): { version: string; description: string } {
  const manifest = JSON.parse(readFileSync(projectPath('package.json'), 'utf8')) as Record<string, unknown>;
  return { version: String(manifest['version']), description: String(manifest['description']) };
}
