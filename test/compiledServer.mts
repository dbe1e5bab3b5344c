// Gives tests the modules of `server` as plain JavaScript, each in a file of its own below `dist/modules`. Node loads and runs these as
// they are; Vite would transform each of them for every kind of workers, and have every call of another module go by an object.
import {
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Plugin } from 'vite';

const root = dirname(import.meta.dirname);
const compiled = join(root, 'dist/modules');

/** The version of the project is read from its package file. */
const packageFile = 'package.json';

/** Where a module is compiled to: by the name of its source without `.ts`, which is how sources name each other, and `.js`. */
const compiledPath = (source: string) => join(compiled, `${relative(root, source).replace(/\.ts$/, '')}.js`);

function filesBelow(folder: string, ending: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name));
}

/** Compiles the sources that have changed since they were compiled, forgets those that are gone, and gives all sources. */
async function compileServer(): Promise<Set<string>> {
  const sources = [join(root, packageFile), ...filesBelow(join(root, 'server'), '.ts')];
  const kept = new Set(sources.map(compiledPath));
  for (const file of filesBelow(join(compiled, 'server'), '.js')) if (!kept.has(file)) rmSync(file);
  const compilers = [fileURLToPath(import.meta.url), join(root, 'package-lock.json')];
  const compilerChanged = Math.max(...compilers.map((path) => statSync(path).mtimeMs));
  const changed = sources.filter((source) => !isCompiled(source, compilerChanged));
  if (changed.length > 0) await compile(changed);
  return new Set(sources);
}

/** What is compiled bears the time of its source, since what is put back from a copy may be older than what was compiled in between. */
function isCompiled(source: string, compilerChanged: number): boolean {
  const path = compiledPath(source);
  if (!existsSync(path)) return false;
  const { mtimeMs, ctimeMs } = statSync(path);
  return Math.abs(mtimeMs - statSync(source).mtimeMs) < 1 && ctimeMs >= compilerChanged;
}

async function compile(sources: readonly string[]): Promise<void> {
  const times = new Map(sources.map((source) => [compiledPath(source), statSync(source).mtime]));
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: sources.map((source) => ({
      in: source,
      out: relative(compiled, compiledPath(source)).replace(/\.js$/, ''),
    })),
    outdir: compiled,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    sourcemap: 'inline',
    sourcesContent: false,
    logLevel: 'warning',
    write: false,
  });
  put(join(compiled, packageFile), '{ "type": "module" }\n');
  for (const { path, text } of outputFiles) put(path, withWholeNames(text), times.get(path));
}

/** Node asks for the whole name of a module, with its ending. */
function withWholeNames(text: string): string {
  const named = /(^import |^(?:import|export) .* from |^\} from |\bimport\()"(\.\.?\/[^"]+)"/gm;
  return text.replace(named, '$1"$2.js"');
}

/** Others may be loading the file as it was. */
function put(path: string, text: string, time = new Date()): void {
  mkdirSync(dirname(path), { recursive: true });
  const written = `${path}.${process.pid}`;
  writeFileSync(written, text);
  utimesSync(written, time, time);
  renameSync(written, path);
}

/** The paths of compiled modules, which Vite is not to look into. */
export const compiledModules = /\/dist\/modules\/server\//;

/** Has whoever imports a module of `server` get it compiled. */
export async function compiledServer(): Promise<Plugin> {
  const sources = await compileServer();
  return {
    name: 'compiled-server',
    enforce: 'pre',
    resolveId(name, importer) {
      if (!importer || !name.startsWith('.')) return undefined;
      const source = `${join(dirname(importer), name)}.ts`;
      if (!sources.has(source)) return undefined;
      return compiledPath(source).replaceAll(sep, '/');
    },
  };
}
