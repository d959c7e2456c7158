/**
 * Runs the project's TypeScript without a build, as CommonJS, and keeps the import graph: a module can be forgotten together
 * with everything that imports it, and runs again when next asked for. That is what lets a warm process try a change in
 * a module's top level in milliseconds. Packages are loaded by Node, once.
 */
import { transformSync } from '@swc/core';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join, resolve } from 'node:path';
import { Script } from 'node:vm';

const COMPILER = {
  jsc: {
    parser: { syntax: 'typescript', decorators: true },
    transform: { legacyDecorator: true, decoratorMetadata: true },
    target: 'es2022',
    keepClassNames: true,
  },
  module: { type: 'commonjs' },
  configFile: false,
  swcrc: false,
};

export class TypeScriptModules {
  /** Compiled files by path. @type {Map<string, Script>} */
  #compiled = new Map();
  /** Modules that have run. @type {Map<string, { exports: object }>} */
  #instances = new Map();
  /** What each file imports, of the project's own. @type {Map<string, Set<string>>} */
  #imports = new Map();
  /** Text to be run in place of a file's own, by path. @type {Map<string, string>} */
  #instead = new Map();
  #packages;

  /** @param {string} root the project's folder: packages are found from there */
  constructor(root) {
    this.root = resolve(root);
    this.#packages = createRequire(join(this.root, 'package.json'));
  }

  /** The exports of a file, given by its path from the root. */
  load(file) {
    const path = resolve(this.root, file);
    const known = this.#instances.get(path);
    if (known) return known.exports;
    const module = { exports: {} };
    this.#instances.set(path, module);
    const require = Object.assign((name) => this.#require(path, name), {
      resolve: (name) => this.#packages.resolve(name),
    });
    const run = this.#compile(path).runInThisContext();
    try {
      run.call(module.exports, module.exports, require, module, path, dirname(path));
    } catch (error) {
      // Half a module is no module: the next import runs it again.
      this.#instances.delete(path);
      throw error;
    }
    return module.exports;
  }

  /** Runs another text in place of the file's own from now on; its own again with null. */
  replace(file, text) {
    const path = resolve(this.root, file);
    if (text === null) this.#instead.delete(path);
    else this.#instead.set(path, text);
    this.#compiled.delete(path);
    this.forget(file);
  }

  /** Forgets what the file and all that import it have computed. */
  forget(file) {
    for (const path of this.dependentsOf(file)) this.#instances.delete(path);
  }

  /** The file and every loaded file that imports it, directly or not. */
  dependentsOf(file) {
    const importers = new Map();
    for (const [importer, imported] of this.#imports)
      for (const path of imported) importers.set(path, (importers.get(path) ?? new Set()).add(importer));
    return reach(resolve(this.root, file), importers);
  }

  /** The file and every file it imports, directly or not, as far as loaded. */
  closureOf(file) {
    return reach(resolve(this.root, file), this.#imports);
  }

  #require(from, name) {
    if (!name.startsWith('.')) return this.#packages(name);
    const path = resolve(dirname(from), name.replace(/\.js$/, '.ts'));
    if (extname(path) !== '.ts' || !existsSync(path)) return this.#packages(resolve(dirname(from), name));
    this.#imports.get(from).add(path);
    return this.load(path);
  }

  #compile(path) {
    let script = this.#compiled.get(path);
    if (script === undefined) {
      const { code } = transformSync(this.#instead.get(path) ?? readFileSync(path, 'utf8'), {
        ...COMPILER,
        filename: path,
      });
      const wrapped = `(function (exports, require, module, __filename, __dirname) {${code}\n})`;
      script = new Script(wrapped, { filename: path });
      this.#compiled.set(path, script);
      this.#imports.set(path, new Set());
    }
    return script;
  }
}

function reach(start, edges) {
  const reached = new Set([start]);
  for (const path of reached) for (const next of edges.get(path) ?? []) reached.add(next);
  return reached;
}
