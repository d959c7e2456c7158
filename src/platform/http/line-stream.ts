import type { Response } from 'express';

/** How long a client may leave lines unread before it counts as gone. */
const STALL_MS = 60_000;

/** JSON values one a line, written no faster than the client reads them. */
export class LineStream {
  private closed: boolean;

  constructor(
    private readonly response: Response,
    private readonly stallMs = STALL_MS,
  ) {
    this.closed = response.closed || response.destroyed;
    response.once('close', () => (this.closed = true));
    // A write that meets a broken connection; `close` follows.
    response.on('error', () => (this.closed = true));
  }

  /** The client has gone, or never reads. */
  get gone(): boolean {
    return this.closed;
  }

  /** Sends the headers; from here on nothing but lines can be said. */
  begin(): void {
    if (this.closed) return;
    this.response.status(200).setHeader('Content-Type', 'application/x-ndjson');
    this.response.setHeader('Cache-Control', 'no-store');
    // Proxies that gather answers before passing them on (nginx reads this header) would undo the streaming.
    this.response.setHeader('X-Accel-Buffering', 'no');
    this.response.flushHeaders();
  }

  /** Writes a line and waits until there is room for the next; false once the client has gone. */
  async write(value: object): Promise<boolean> {
    if (this.closed) return false;
    if (!this.response.write(`${JSON.stringify(value)}\n`)) await this.room();
    return !this.closed;
  }

  end(): void {
    if (!this.closed) this.response.end();
  }

  private room(): Promise<void> {
    const { response } = this;
    return new Promise((done) => {
      const go = () => {
        clearTimeout(stalled);
        response.off('drain', go).off('close', go);
        done();
      };
      const stalled = setTimeout(() => {
        this.closed = true;
        response.destroy();
        go();
      }, this.stallMs);
      response.once('drain', go).once('close', go);
    });
  }
}
