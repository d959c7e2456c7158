/** A line between browser and service that can be cut at a chosen step, as a flaky network cuts it. */
import { connect, createServer, type AddressInfo, type Server, type Socket } from 'node:net';

/** Where it cuts: before the service heard of the request, after it heard all and before it answers, or within the answer. */
export type Cut = 'before' | 'unanswered' | 'within the answer';

export interface CuttingLine {
  port: number;
  /** Cuts requests that begin like this, so often. */
  cut(begins: string, at: Cut, times: number): void;
  /** How many were cut. */
  count(): number;
  stop(): Promise<void>;
}

export async function cuttingLine(to: number): Promise<CuttingLine> {
  let order: { begins: string; at: Cut; times: number } | null = null;
  let cuts = 0;
  const open = new Set<Socket>();
  const server: Server = createServer((near) => {
    const far = connect(to, '127.0.0.1');
    let doomed: Cut | null = null;
    const end = (): void => {
      near.destroy();
      // What was sent before is read by the service all the same.
      far.end();
    };
    for (const socket of [near, far]) {
      open.add(socket);
      socket.on('close', () => open.delete(socket));
      socket.on('error', end);
    }
    near.on('data', (chunk) => {
      if (order && order.times > 0 && chunk.toString('latin1').startsWith(order.begins)) {
        doomed = order.at;
        order.times -= 1;
        cuts += 1;
        if (doomed === 'before') return end();
      }
      far.write(chunk);
    });
    far.on('data', (chunk) => {
      if (doomed === 'unanswered') return end();
      if (doomed === 'within the answer') {
        near.write(chunk.subarray(0, Math.min(chunk.length, 400)), end);
        return;
      }
      near.write(chunk);
    });
    near.on('close', () => far.end());
    far.on('close', () => near.end());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    port: (server.address() as AddressInfo).port,
    cut: (begins, at, times) => {
      order = { begins, at, times };
    },
    count: () => cuts,
    stop: () =>
      new Promise((done) => {
        for (const socket of open) socket.destroy();
        server.close(() => done());
      }),
  };
}
