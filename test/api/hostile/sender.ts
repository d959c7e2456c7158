import { Agent, request as httpRequest } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Api } from '../../support/api.js';

/** What came back. */
export interface Answer {
  status: number;
  type: string;
  text: string;
  /** Parsed when it is JSON. */
  body: { code?: string; errors?: { field: string }[]; id?: string; items?: unknown[]; rowVersion?: number };
}

/** A request exactly as it goes over the wire. */
export interface Wire {
  method: string;
  /** With /api/v1. */
  path: string;
  token?: string;
  headers?: Record<string, string>;
  /** Sent as JSON, unless it is bytes or text already. */
  body?: unknown;
}

/** Sends requests over loopback without any help a client library would give, each from an address of its own. */
export class Sender {
  private readonly agent = new Agent({ keepAlive: true, maxSockets: 8 });
  private sent = 0;

  constructor(private readonly api: Api) {}

  /** How many requests went out. */
  get count(): number {
    return this.sent;
  }

  send(wire: Wire): Promise<Answer> {
    this.sent += 1;
    const { port } = this.api.app.getHttpServer().address() as AddressInfo;
    const raw = typeof wire.body === 'string' || Buffer.isBuffer(wire.body);
    const payload =
      wire.body === undefined ? null : raw ? (wire.body as string | Buffer) : JSON.stringify(wire.body);
    const from = `10.${(this.sent >> 16) & 255}.${(this.sent >> 8) & 255}.${this.sent & 255}`;
    const headers: Record<string, string | number> = {
      ...(payload === null ? {} : { 'Content-Type': 'application/json' }),
      ...(wire.token ? { Authorization: `Bearer ${wire.token}` } : {}),
      'X-Forwarded-For': from,
      ...wire.headers,
      ...(payload === null ? {} : { 'Content-Length': Buffer.byteLength(payload) }),
    };
    return new Promise((done, failed) => {
      let answered = false;
      const outgoing = httpRequest(
        { host: '127.0.0.1', port, method: wire.method, path: wire.path, agent: this.agent, headers },
        (response) => {
          answered = true;
          const parts: Buffer[] = [];
          response.on('data', (part: Buffer) => parts.push(part));
          response.on('error', failed);
          response.on('end', () => {
            const text = Buffer.concat(parts).toString('utf8');
            const type = response.headers['content-type'] ?? '';
            const body = (/[/+]json\b/.test(type) && text !== '' ? JSON.parse(text) : {}) as Answer['body'];
            // What is left of a body that was refused at its first bytes need not go over the wire.
            if (payload !== null && payload.length > 1_000_000) outgoing.destroy();
            done({ status: response.statusCode ?? 0, type, text, body });
          });
        },
      );
      // A body that is refused before it was read to the end breaks the writing side after the answer.
      outgoing.on('error', (error: NodeJS.ErrnoException) => {
        if (answered) return;
        // A kept connection that the service closed as idle just as it was taken up again: as Node's manual says, once more.
        if (outgoing.reusedSocket && error.code === 'ECONNRESET') this.send(wire).then(done, failed);
        else failed(error);
      });
      outgoing.end(payload ?? undefined);
    });
  }

  close(): void {
    this.agent.destroy();
  }
}
