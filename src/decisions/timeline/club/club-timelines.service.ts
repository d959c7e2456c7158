import { Injectable, Logger } from '@nestjs/common';
import type { Response } from 'express';
import type { SignedIn } from '../../../accounts/current-user.js';
import { Clock } from '../../../platform/clock.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { problemDocument } from '../../../platform/problems/problem-document.js';
import { ProblemException } from '../../../platform/problems/index.js';
import type { PairTimeline } from '../../../rules/index.js';
import { Pace } from '../pace.js';
import { pairsOf, type PairsQuestion } from '../pairs.js';
import { firstFlight, spanOf } from '../span.js';
import type { ClubTimelineDto, Join } from '../timeline-request.dto.js';
import { headerLine, pairLine } from './club-lines.js';
import { gatherPairs, type GatheredPairs } from './gather-pairs.js';
import { LineStream } from '../../../platform/http/line-stream.js';

/** Statements here read a whole club. */
const STATEMENT_TIMEOUT_MS = 60_000;

/** Writes timelines of whole clubs, pair by pair. Nothing is stored: a timeline is no decision. */
@Injectable()
export class ClubTimelinesService {
  private readonly logger = new Logger(ClubTimelinesService.name);
  /** Clubs for which one is being written: it is minutes of work at most, and two at once would share the same minutes. */
  private readonly writing = new Set<string>();

  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /**
   * Answers with lines. What can be refused is refused before the first; an error on the way becomes the last line.
   *
   * @throws ProblemException 404, 422; 429 while another one of the club is being written.
   */
  async write(user: SignedIn, question: ClubTimelineDto, response: Response): Promise<void> {
    const { clubId } = user;
    const lines = new LineStream(response);
    const { durationMinutes, join = 'answer' } = question;
    const knownAt = this.clock.now();
    const gathered = await this.gather(clubId, question, knownAt);
    // Only now, so that a question that cannot be answered is told so and does not wait for its turn first.
    if (this.writing.has(clubId))
      throw new ProblemException('timeline-running', { headers: { 'Retry-After': '10' } });
    this.writing.add(clubId);
    try {
      lines.begin();
      if (await lines.write(headerLine(gathered, { durationMinutes, join, knownAt })))
        await this.writePairs(lines, gathered, join, response);
      lines.end();
    } finally {
      this.writing.delete(clubId);
    }
  }

  /** All pairs in turn, with places to pause; the walk ends with its reader. */
  pairs(question: PairsQuestion): Generator<PairTimeline | null> {
    return pairsOf(question);
  }

  private gather(clubId: string, question: ClubTimelineDto, knownAt: string): Promise<GatheredPairs> {
    const {
      memberIds = null,
      aircraftIds = null,
      from,
      to,
      durationMinutes,
      weather,
      join: _join,
      ...flight
    } = question;
    const asked = { from, to, durationMinutes, weather };
    const span = spanOf(asked, knownAt);
    const about = { flight: firstFlight(flight, asked), memberIds, aircraftIds, span, knownAt };
    return this.db.run(clubId, (em) => gatherPairs(em, about), {
      readOnly: true,
      statementTimeoutMs: STATEMENT_TIMEOUT_MS,
    });
  }

  private async writePairs(
    lines: LineStream,
    gathered: GatheredPairs,
    join: Join,
    response: Response,
  ): Promise<void> {
    const pace = new Pace();
    let pairs = 0;
    try {
      for (const pair of this.pairs(gathered)) {
        await pace.breathe();
        if (lines.gone) return;
        if (!pair) continue;
        if (!(await lines.write(pairLine(pair, join)))) return;
        pairs += 1;
      }
      await lines.write({ end: true, pairs });
    } catch (error) {
      const problem =
        error instanceof ProblemException ? error : new ProblemException('unexpected', { cause: error });
      const request = response.req as Response['req'] & { id?: unknown };
      const requestId = String(request.id ?? '');
      this.logger.error({ err: error, requestId, code: problem.code }, problem.title);
      await lines.write({
        error: problemDocument(problem, { path: request.originalUrl.split('?')[0]!, requestId }),
      });
    }
  }
}
