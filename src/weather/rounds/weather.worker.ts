import { Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { ClubRounds, type Rounds } from '../../platform/queue/club-rounds.js';
import { WeatherService } from '../weather.service.js';

/** How often clubs are looked at. What is fetched is bound by their own interval. */
const SWEEP_MS = 300_000;

/**
 * Fetches the weather of booked flights before they depart, where a source is configured. What comes in is a changed fact, so the
 * flights' standing answers are judged again; what does not come in leaves reports that grow old, and conditions.
 */
@Injectable()
export class WeatherWorker implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger(WeatherWorker.name);
  private rounds: Rounds | null = null;

  constructor(
    private readonly weather: WeatherService,
    private readonly clubs: ClubRounds,
  ) {}

  async onApplicationBootstrap(): Promise<void> {
    if (!this.weather.fetches) return;
    this.rounds = await this.clubs.begin({
      queue: 'weather',
      work: (clubId) => this.fetch(clubId),
      // Every club that ever had a booked flight judged; whether one is near is seen in its own round.
      due: (em) => em.query('SELECT club_id AS id FROM standing_clubs'),
      sweepMs: SWEEP_MS,
    });
  }

  async onApplicationShutdown(): Promise<void> {
    await this.rounds?.stop();
  }

  private async fetch(clubId: string): Promise<void> {
    const { stations, reports } = await this.weather.bringInBooked(clubId);
    if (stations > 0) this.logger.log(`Weather of ${stations} airfields fetched: ${reports} reports.`);
  }
}
