/** `demo`: the service with an invented club in it. The only way the demo club comes to be. */
import { AppModule } from '../app.module.js';
import { Clock } from '../platform/clock.js';
import type { AppConfig } from '../platform/config.js';
import { openDatabase, type OpenOptions } from '../platform/database/open.js';
import { startService } from '../platform/serve.js';
import { stopOnSignal } from '../platform/signals.js';
import type { Instant } from '../rules/index.js';
import { DEMO_SEED, DEMO_SLUG } from './ids.js';
import { loadDemo, type Loaded } from './load.js';
import { everybody } from './people/person.js';
import { signInLines } from './sign-in.js';
import { tries } from './tries.js';
import { When } from './when.js';

/** Loads today's demo club and serves until SIGINT or SIGTERM; prints whom to sign in as and what to try. */
export async function runDemo(config: AppConfig): Promise<void> {
  const asOf = new Clock().now();
  await prepareDemo(config, asOf);
  const service = await startService(config, (settings, database) => AppModule.register(settings, database));
  stopOnSignal(service);
  const when = new When(asOf);
  const people = everybody(DEMO_SEED, when);
  for (const line of signInLines({ url: service.url, people, tries: tries(people, when) })) say(line);
  say(`Bellcrank answers at ${service.url}. Stop with Ctrl-C.`);
}

/** Opens the database, sees to it that today's demo club is in it, says what was done, and closes the database. */
export async function prepareDemo(
  config: AppConfig,
  asOf: Instant,
  options: OpenOptions = {},
): Promise<Loaded> {
  const database = await openDatabase(config, { notice: say, ...options });
  try {
    say(`Demo club "${DEMO_SLUG}": made from today's date; the first start of a day takes some seconds.`);
    const loaded = await loadDemo(database, config, asOf);
    for (const line of loadedLines(loaded)) say(line);
    return loaded;
  } finally {
    await database.close();
  }
}

function loadedLines({ outcome, before, bookings }: Loaded): string[] {
  const what = {
    kept: `Kept the demo club made earlier today, with whatever was changed in it.`,
    made: 'Made the demo club.',
    'made-anew': `Made the demo club anew: the one of ${before} is gone, with whatever was changed in it. No other club was touched.`,
  }[outcome];
  if (!bookings) return [what];
  return [
    what,
    `Booked ${bookings.booked} flights of the coming six weeks; the rules refused ${bookings.refused} others.`,
  ];
}

const say = (line: string): void => void process.stdout.write(`${line}\n`);
