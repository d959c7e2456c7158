/** A weather service on loopback that says what a test tells it to: texts by kind and station, or a failure. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** How it behaves. */
export type Behaviour = 'answers' | 'fails' | 'fails-once' | 'hangs' | 'empty' | 'nonsense';

export class WeatherStandIn {
  behaviour: Behaviour = 'answers';
  /** What was asked for, in order: 'metar XQHB,XQPV'. */
  readonly asked: string[] = [];
  /** Texts by kind and station. */
  readonly texts: Record<'metar' | 'taf', Record<string, string>> = { metar: {}, taf: {} };
  private readonly server: Server;

  private constructor() {
    this.server = createServer((request, response) => {
      const address = new URL(request.url ?? '/', 'http://stand-in.invalid');
      const kind = address.pathname.slice(1) as 'metar' | 'taf';
      const stations = (address.searchParams.get('stations') ?? '').split(',');
      this.asked.push(`${kind} ${stations.join()}`);
      const { behaviour } = this;
      if (behaviour === 'hangs') return;
      if (behaviour === 'fails-once') this.behaviour = 'answers';
      const failing = behaviour === 'fails' || behaviour === 'fails-once';
      const found = stations
        .map((station) => this.texts[kind]?.[station])
        .filter((text) => text !== undefined);
      const body = behaviour === 'nonsense' ? '<html>sorry</html>\n' : found.join('\n');
      const status = failing ? 503 : behaviour === 'empty' ? 204 : 200;
      response.writeHead(status, { 'Content-Type': 'text/plain' });
      response.end(status === 200 ? body : undefined);
    });
  }

  static async start(): Promise<WeatherStandIn> {
    const one = new WeatherStandIn();
    await new Promise<void>((resolve) => one.server.listen(0, '127.0.0.1', resolve));
    return one;
  }

  /** What BELLCRANK_WEATHER_URL would be. */
  get url(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}/{kind}?stations={stations}`;
  }

  async stop(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }
}
