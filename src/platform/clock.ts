import { Injectable } from '@nestjs/common';

/** UTC instant, RFC 3339 with whole seconds: '2026-11-25T13:00:00Z'. */
export type Instant = string;

/**
 * The one place where the wall clock is read. Everything else gets a `Clock` injected, so that a test (or a replay of
 * an old decision) says what time it is.
 */
@Injectable()
export class Clock {
  /** Now, cut to the whole second. */
  now(): Instant {
    return `${new Date().toISOString().slice(0, 19)}Z`;
  }
}

/** A clock that stands still until it is set. For tests and demonstrations. */
export class FixedClock extends Clock {
  constructor(private instant: Instant) {
    super();
  }

  override now(): Instant {
    return this.instant;
  }

  /** Moves the clock to another instant, forwards or backwards. */
  set(instant: Instant): void {
    this.instant = instant;
  }
}
