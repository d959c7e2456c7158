import { Injectable, Logger } from '@nestjs/common';
import pLimit from 'p-limit';
import { Clock } from '../../platform/clock.js';
import { AppConfig, type WeatherSettings } from '../../platform/config.js';
import { toSeconds } from '../../rules/index.js';
import { readReport, UnreadableReport, type Kind, type ReadReport } from '../decode/read-report.js';
import { reportsIn } from './texts.js';

/** Requests to the source at once, in this process. */
const AT_ONCE = 2;
/** After a failure the source is left alone for so long. */
const REST_SECONDS = 30;
const PAUSE_MS = 250;
/** No answer for a dozen stations is as long. */
const MOST_BYTES = 512 * 1024;

interface Remembered {
  until: number;
  reports: ReadReport[];
}

/**
 * Reports from the configured public weather service. Whatever goes wrong there gives no reports and never an error: rules
 * make conditions of what is missing.
 */
@Injectable()
export class WeatherSource {
  private readonly logger = new Logger(WeatherSource.name);
  private readonly limit = pLimit(AT_ONCE);
  private readonly remembered = new Map<string, Remembered>();
  private readonly running = new Map<string, Promise<void>>();

  constructor(
    private readonly config: AppConfig,
    private readonly clock: Clock,
  ) {}

  get configured(): boolean {
    return this.config.weather !== undefined;
  }

  /** The current reports and forecasts of these stations, from memory where they were asked for a short while ago. */
  async reportsOf(stations: readonly string[]): Promise<ReadReport[]> {
    const { weather } = this.config;
    if (!weather || stations.length === 0) return [];
    const all = await Promise.all([
      this.ofKind(weather, 'metar', stations),
      this.ofKind(weather, 'taf', stations),
    ]);
    return all.flat();
  }

  private async ofKind(
    settings: WeatherSettings,
    kind: Kind,
    stations: readonly string[],
  ): Promise<ReadReport[]> {
    const now = toSeconds(this.clock.now());
    const stale = stations.filter(
      (station) => (this.remembered.get(`${kind} ${station}`)?.until ?? 0) <= now,
    );
    if (stale.length > 0) await this.once(settings, kind, [...stale].sort());
    return stations.flatMap((station) => this.remembered.get(`${kind} ${station}`)?.reports ?? []);
  }

  /** Many ask for the same field at once; one request answers them. */
  private once(settings: WeatherSettings, kind: Kind, stations: string[]): Promise<void> {
    const key = `${kind} ${stations.join()}`;
    const running = this.running.get(key);
    if (running) return running;
    const work = this.limit(() => this.refresh(settings, kind, stations)).finally(() =>
      this.running.delete(key),
    );
    this.running.set(key, work);
    return work;
  }

  private async refresh(settings: WeatherSettings, kind: Kind, stations: string[]): Promise<void> {
    const now = this.clock.now();
    const keep = (reports: ReadReport[], seconds: number): void => {
      for (const station of stations)
        this.remembered.set(`${kind} ${station}`, {
          until: toSeconds(now) + seconds,
          reports: reports.filter(({ airfield }) => airfield === station),
        });
    };
    try {
      const texts = reportsIn(await this.fetchTwice(settings, kind, stations));
      keep(
        texts.flatMap((text) => this.read(kind, text, now)),
        settings.cacheSeconds,
      );
    } catch (error) {
      this.logger.warn(`weather source gave no ${kind} for ${stations.join()}: ${String(error)}`);
      keep([], REST_SECONDS);
    }
  }

  private read(kind: Kind, text: string, now: string): ReadReport[] {
    try {
      return [readReport(kind, text, now)];
    } catch (error) {
      if (!(error instanceof UnreadableReport)) throw error;
      this.logger.warn(`weather source gave a ${kind} that cannot be read: ${text.slice(0, 80)}`);
      return [];
    }
  }

  private async fetchTwice(settings: WeatherSettings, kind: Kind, stations: string[]): Promise<string> {
    try {
      return await fetchOnce(settings, kind, stations);
    } catch {
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
      return fetchOnce(settings, kind, stations);
    }
  }
}

async function fetchOnce(
  { url, timeoutMs }: WeatherSettings,
  kind: Kind,
  stations: string[],
): Promise<string> {
  const address = url
    .replaceAll('{kind}', kind)
    .replaceAll('{stations}', stations.map(encodeURIComponent).join(','));
  const answer = await fetch(address, {
    headers: { Accept: 'text/plain' },
    signal: AbortSignal.timeout(timeoutMs),
  });
  if (answer.status === 204 || answer.status === 404) return '';
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  if (Number(answer.headers.get('content-length') ?? 0) > MOST_BYTES) throw new Error('answer too long');
  const text = await answer.text();
  if (text.length > MOST_BYTES) throw new Error('answer too long');
  return text;
}
