/**
 * Runs spec files written for jest in the process at hand: `describe`, `test` and their `each`, with jest's own `expect`. Enough
 * for specs of pure functions; whatever else of jest a spec asks for is missing and fails loudly.
 */
import { expect } from 'expect';
import { format } from 'node:util';

/** Collects the tests of what `load` defines: `{ name, run }`, names made unique. */
export function collectTests(load) {
  const tests = [];
  const path = [];
  const seen = new Map();
  const add = (name, run) => {
    const full = [...path, name].join(' › ');
    const times = (seen.get(full) ?? 0) + 1;
    seen.set(full, times);
    tests.push({ name: times > 1 ? `${full} (${times})` : full, run });
  };
  const describe = (name, body) => {
    path.push(name);
    body();
    path.pop();
  };
  const given = { describe, test: add, it: add, expect };
  for (const define of [describe, add]) {
    define.each = (rows) => (name, body) =>
      rows.forEach((row, index) => {
        const args = Array.isArray(row) ? row : [row];
        define(title(name, args, index), () => body(...args));
      });
  }
  const before = Object.keys(given).map((key) => [key, globalThis[key]]);
  Object.assign(globalThis, given);
  try {
    load();
  } finally {
    for (const [key, value] of before) {
      if (value === undefined) delete globalThis[key];
      else globalThis[key] = value;
    }
  }
  // The globals are asked for while tests run, too.
  return tests.map(({ name, run }) => ({
    name,
    run: () => {
      globalThis.expect = expect;
      if (run() instanceof Promise) throw new Error(`${name}: only tests that end at once can be run here`);
    },
  }));
}

function title(name, args, index) {
  const [first] = args;
  const filled = name
    .replace(/\$(\w+)/g, (whole, key) =>
      first !== null && typeof first === 'object' && key in first ? String(first[key]) : whole,
    )
    .replace(/%#/g, String(index));
  const places = filled.match(/%[sdifjop]/g)?.length ?? 0;
  return places === 0 ? `${filled} #${index}` : format(filled.replace(/%p/g, '%j'), ...args.slice(0, places));
}
