import { createServer } from 'node:net';

/** Is a TCP port free on 127.0.0.1? */
export async function isPortFree(port: number): Promise<boolean> {
  return (await tryPort(port)) !== null;
}

/** A TCP port of 127.0.0.1 that is free right now. */
export async function freePort(): Promise<number> {
  const port = await tryPort(0);
  if (port === null) throw new Error('no free TCP port on 127.0.0.1');
  return port;
}

function tryPort(port: number): Promise<number | null> {
  return new Promise((done) => {
    const server = createServer();
    server.once('error', () => done(null));
    server.listen({ port, host: '127.0.0.1', exclusive: true }, () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address ? address.port : null));
    });
  });
}
