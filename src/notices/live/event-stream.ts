import type { Response } from 'express';

/** Between two signs of life: proxies cut what is silent for a minute. */
const BEAT_MS = 20_000;

/** One listener's stream of server-sent events (WHATWG HTML, section 9.2). */
export class EventStream {
  private readonly beating: NodeJS.Timeout;
  private readonly ending: NodeJS.Timeout;
  private open = true;

  /** @param closed called once, whoever ends it. */
  constructor(
    private readonly response: Response,
    of: { seconds: number; closed: () => void },
  ) {
    response.status(200).setHeader('Content-Type', 'text/event-stream; charset=utf-8');
    response.setHeader('Cache-Control', 'no-store');
    response.setHeader('X-Accel-Buffering', 'no');
    response.flushHeaders();
    this.beating = setInterval(() => this.write(': still here\n\n'), BEAT_MS);
    this.ending = setTimeout(() => this.end(), of.seconds * 1000);
    const closed = (): void => {
      if (!this.open) return;
      this.open = false;
      clearInterval(this.beating);
      clearTimeout(this.ending);
      of.closed();
    };
    response.once('close', closed);
    response.once('finish', closed);
    response.on('error', closed);
  }

  send(event: string, id: string, data: object): void {
    this.write(`event: ${event}\nid: ${id}\ndata: ${JSON.stringify(data)}\n\n`);
  }

  end(): void {
    if (this.open) this.response.end();
  }

  private write(text: string): void {
    if (!this.open) return;
    // Events are few and small: a listener that leaves so many unread is not listening.
    if (this.response.writableLength > 64 * 1024) this.response.destroy();
    else this.response.write(text);
  }
}
