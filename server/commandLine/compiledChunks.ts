import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { Script } from 'node:vm';

/** A chunk that was compiled from its text. */
interface Compiled {
  script: Script;
  path: string;
}

/**
 * Keeps what compiling the chunks in a folder gives for the next start, in another folder, for versions of Node that do not do
 * it themselves. A file of another version, or one that cannot be read or written, costs time and nothing else.
 */
export function keepCompiledChunks(chunks: string, kept: string): void {
  const { extensions } = createRequire(join(chunks, 'chunk.js'));
  const usual = extensions['.js'];
  const compiled: Compiled[] = [];
  // Data of one engine is of no use to another, and chunks are named after their content.
  const folder = join(kept, `${process.versions.v8}-${process.arch}`);
  extensions['.js'] = (module, file) => {
    if (dirname(file) !== chunks || !usual) return usual?.(module, file);
    const path = join(folder, basename(file, '.js'));
    const cachedData = bytesOf(path);
    const text = `(function (exports, require, module) {${readFileSync(file, 'utf8')}\n})`;
    const script = new Script(text, { filename: file, ...(cachedData && { cachedData }) });
    if (!cachedData || script.cachedDataRejected) compiled.push({ script, path });
    const run = script.runInThisContext() as (exports: unknown, require: unknown, module: unknown) => void;
    run.call(module.exports, module.exports, (id: string) => module.require(id), module);
  };
  process.once('exit', () => {
    if (compiled.length > 0) keep(folder, kept, chunks, compiled);
  });
}

function bytesOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

function keep(folder: string, kept: string, chunks: string, compiled: readonly Compiled[]): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    for (const { script, path } of compiled) {
      const beside = `${path}.${process.pid}.part`;
      writeFileSync(beside, script.createCachedData());
      renameSync(beside, path);
    }
    // What other versions of the program and of Node have left goes.
    const now = new Set(readdirSync(chunks).map((name) => basename(name, '.js')));
    for (const name of readdirSync(folder))
      if (!now.has(name) && !name.endsWith('.part')) rmSync(join(folder, name), { force: true });
    for (const name of readdirSync(kept))
      if (name !== basename(folder)) rmSync(join(kept, name), { recursive: true, force: true });
  } catch {
    // Nothing depends on it.
  }
}
