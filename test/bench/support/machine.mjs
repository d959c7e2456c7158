import os from 'node:os';

/** Processor, memory, system, Node.js, and how busy the machine was before the bench began. */
export function machineLine() {
  const cpus = os.cpus();
  const memory = (os.totalmem() / 2 ** 30).toFixed(1);
  const busy = os.loadavg()[0].toFixed(2);
  return (
    `${cpus[0]?.model.trim() ?? 'unknown processor'} x ${cpus.length}, ${memory} GiB, ${os.type()} ${os.release()}, ` +
    `Node.js ${process.versions.node}; load average at the start ${busy}`
  );
}
