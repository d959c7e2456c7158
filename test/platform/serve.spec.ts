import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { freePort } from '../../src/platform/database/embedded/ports.js';
import { compileCopy, type CompiledCopy } from '../support/compiled-copy.js';

/**
 * Whether a process is gone within five seconds. It has stopped when the service says so; its entry in the process table stays
 * until whoever inherited it has taken note, on a busy machine a moment later.
 */
async function endsSoon(pid: number): Promise<boolean> {
  for (let waitedMs = 0; waitedMs < 5_000; waitedMs += 50) {
    try {
      process.kill(pid, 0);
    } catch {
      return true;
    }
    await pause(50);
  }
  return false;
}

/** The service as a process of its own: the platform's controllers on the embedded database. */
const SOURCE = `
  import { loadConfig } from './dist/src/platform/config.js';
  import { PlatformModule } from './dist/src/platform/platform.module.js';
  import { serve } from './dist/src/platform/serve.js';
  import { describeStartFailure } from './dist/src/platform/startup-error.js';
  import { Controller, Get } from '@nestjs/common';
  class Root {}
  class Crash {
    boom() {
      throw new Error('the inner reason');
    }
  }
  Controller('crash')(Crash);
  Get()(Crash.prototype, 'boom', Object.getOwnPropertyDescriptor(Crash.prototype, 'boom'));
  try {
    await serve(loadConfig(), (config, database) => ({ module: Root, controllers: [Crash], imports: [PlatformModule.register(config, database, [])] }));
  } catch (error) {
    console.error(describeStartFailure(error));
    process.exit(1);
  }`;

jest.setTimeout(60_000);

describe('the running service', () => {
  let copy: CompiledCopy;
  let folder: string;
  const children: ChildProcess[] = [];

  beforeAll(() => {
    copy = compileCopy();
    folder = mkdtempSync(join(tmpdir(), 'bellcrank-serve-'));
    chmodSync(folder, 0o711);
    copy.script('serve.mjs', SOURCE);
  });
  afterAll(async () => {
    for (const child of children) {
      if (child.exitCode !== null || child.signalCode !== null) continue;
      child.kill('SIGTERM');
      await once(child, 'close');
    }
    copy.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Starts the service; `until` resolves when its output holds a text, `ended` with the exit code. */
  function start(env: Record<string, string>) {
    const child = spawn(process.execPath, [join(copy.root, 'serve.mjs')], {
      cwd: '/',
      env: {
        PATH: process.env['PATH'],
        HOME: '/nonexistent',
        BELLCRANK_DATA_DIR: join(folder, 'data'),
        ...env,
      },
    });
    children.push(child);
    let output = '';
    child.stdout.on('data', (data) => (output += String(data)));
    child.stderr.on('data', (data) => (output += String(data)));
    const ended = once(child, 'close').then(([code]) => code as number | null);
    const until = async (text: string) => {
      let over = false;
      void ended.then(() => (over = true));
      while (!output.includes(text)) {
        if (over) throw new Error(`ended before "${text}":\n${output}`);
        await new Promise((done) => setTimeout(done, 20));
      }
      return output;
    };
    return { child, ended, until, output: () => output };
  }

  it('serves, logs requests without tokens, refuses a second start, and stops in order', async () => {
    const port = await freePort();
    const first = start({ PORT: String(port) });
    await first.until(`answers at http://127.0.0.1:${port}`);
    const answer = await fetch(`http://127.0.0.1:${port}/problems/not-found?token=hush`, {
      headers: { Authorization: 'Bearer hush' },
    });
    expect(answer.status).toBe(200);
    const log = await first.until('/problems/not-found');
    const line = log.split('\n').find((text) => text.includes('/problems/not-found'))!;
    expect(JSON.parse(line)).toMatchObject({
      method: 'GET',
      path: '/problems/not-found',
      status: 200,
      requestId: answer.headers.get('x-request-id'),
    });
    const early = await fetch(`http://127.0.0.1:${port}/api/v1/x?token=hush`, {
      method: 'POST',
      body: 'hush',
    });
    expect(early.status).toBe(415);
    expect(await first.until('"status":415')).not.toContain('hush');

    const crash = await fetch(`http://127.0.0.1:${port}/api/v1/crash`);
    const told = await crash.text();
    expect(crash.status).toBe(500);
    expect(told).not.toContain('inner reason');
    const inLog = (await first.until('the inner reason'))
      .split('\n')
      .find((text) => text.includes('the inner reason'))!;
    expect(JSON.parse(inLog)).toMatchObject({
      requestId: (JSON.parse(told) as { requestId: string }).requestId,
      err: { stack: expect.stringContaining('boom') },
    });

    const second = start({ PORT: '0' });
    expect(await second.ended).toBe(1);
    expect(second.output()).toContain(
      `Bellcrank cannot start: the data folder ${join(folder, 'data')} is in use by process ${first.child.pid}`,
    );

    const postgres = Number(
      readFileSync(join(folder, 'data', 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0],
    );
    first.child.kill('SIGTERM');
    expect(await first.ended).toBe(0);
    expect(await endsSoon(postgres)).toBe(true);
    expect(existsSync(join(folder, 'data', 'service.lock'))).toBe(false);
  });

  it('names the HTTP port when it is taken, and leaves no database running', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as { port: number };
    const service = start({ PORT: String(port) });
    expect(await service.ended).toBe(1);
    other.close();
    expect(service.output()).toContain(
      `Bellcrank cannot start: port ${port} on 127.0.0.1 is taken by another program`,
    );
    expect(service.output()).not.toMatch(/\n\s+at /);
    expect(existsSync(join(folder, 'data', 'postgres', 'postmaster.pid'))).toBe(false);
  });

  it('says which variable is wrong', async () => {
    const service = start({ PORT: 'many' });
    expect(await service.ended).toBe(1);
    expect(service.output().trim()).toBe(
      'Bellcrank cannot start: PORT must be a whole number from 0 to 65535.',
    );
  });
});
