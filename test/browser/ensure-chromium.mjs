/**
 * Finds a Chromium for the browser test: CHROMIUM_PATH, or one of the usual places. On a Debian-like machine it is
 * installed when this runs as root; otherwise the message says what to do.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
];
const found = () => [process.env.CHROMIUM_PATH, ...PLACES].find((path) => path && existsSync(path));

if (!found()) {
  const root = process.getuid?.() === 0;
  if (root && existsSync('/usr/bin/apt-get')) {
    console.log('The browser test needs Chromium; installing the Debian package.');
    const run = (...args) =>
      spawnSync('apt-get', args, {
        stdio: 'inherit',
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      }).status;
    run('update', '-q');
    run('install', '-y', '-q', '--no-install-recommends', 'chromium');
  }
}
if (!found()) {
  console.error(
    'The browser test needs Chromium. Install it (Debian: apt-get install chromium), or set CHROMIUM_PATH to one.',
  );
  process.exit(1);
}
