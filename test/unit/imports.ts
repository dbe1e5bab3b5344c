import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';

/** One import statement: who asks for what. Files of the project are paths from its root with `/`. */
export interface Import {
  file: string;
  imports: string;
  /** Whether `imports` is a file of the project, not a package. */
  own: boolean;
  /** Whether what is imported is handed on under the name of this file. */
  isHandedOn: boolean;
}

const statement =
  /^[ \t]*(?:import|export)\b[^'";]*?\bfrom\s*['"]([^'"]+)['"]|^[ \t]*import\s*['"]([^'"]+)['"]|\b(?:import|require)\(\s*['"]([^'"]+)['"]\s*\)/gm;

/** What the text of a module imports, types too, as written. */
export function importsIn(text: string): string[] {
  return statementsIn(text).map(({ written }) => written);
}

/** What the text of a module hands on from other modules, as written. */
export function handedOnIn(text: string): string[] {
  return statementsIn(text).flatMap(({ written, isHandedOn }) => (isHandedOn ? [written] : []));
}

function statementsIn(text: string): { written: string; isHandedOn: boolean }[] {
  const code = text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '');
  return [...code.matchAll(statement)].map((match) => ({
    written: match[1] ?? match[2] ?? match[3],
    isHandedOn: match[0].trimStart().startsWith('export'),
  }));
}

const exported =
  /^export (?:declare )?(?:abstract )?(?:async )?(?:function\*?|class|interface|type|const|let|enum) +(\w+)/gm;

/** The names that the text of a module gives out, each once, even where it is both a value and its type. */
export function exportsIn(text: string): string[] {
  const code = text.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...new Set([...code.matchAll(exported)].map(([, name]) => name))];
}

/** The names that several TypeScript files in some folders of the project give out, each with the files. */
export function exportedTwice(root: string, ...folders: string[]): Map<string, string[]> {
  const files = new Map<string, string[]>();
  for (const path of folders.flatMap((folder) => filesBelow(join(root, folder)))) {
    const file = relative(root, path).replaceAll('\\', '/');
    for (const name of exportsIn(readFileSync(path, 'utf8')))
      files.set(name, [...(files.get(name) ?? []), file]);
  }
  return new Map([...files].filter(([, those]) => those.length > 1));
}

/** All imports of the TypeScript files in some folders of the project. */
export function importsBelow(root: string, ...folders: string[]): Import[] {
  return folders.flatMap((folder) => filesBelow(join(root, folder))).flatMap((path) => importsOf(root, path));
}

function importsOf(root: string, path: string): Import[] {
  const file = relative(root, path).replaceAll('\\', '/');
  return statementsIn(readFileSync(path, 'utf8')).map(({ written, isHandedOn }) => {
    const own = written.startsWith('.');
    const imports = own ? fileOf(root, resolve(dirname(path), written)) : written;
    return { file, imports, own, isHandedOn };
  });
}

/** The file that an import stands for, from the root of the project. */
function fileOf(root: string, path: string): string {
  const file = [`${path}.ts`, join(path, 'index.ts')].find((one) => existsSync(one)) ?? path;
  return relative(root, file).replaceAll('\\', '/');
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return filesBelow(path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

/** The room of a file: the first folder below `server/`; undefined for other files. */
export function roomOf(file: string): string | undefined {
  return /^server\/([^/]+)\//.exec(file)?.[1];
}

/** A way through rooms or files that comes back to where it started, such as `sfz → xml → sfz`; undefined when there is none. */
export function cycleOf(edges: readonly (readonly [from: string, to: string])[]): string | undefined {
  const next = new Map<string, Set<string>>();
  for (const [from, to] of edges) {
    if (from !== to) next.set(from, (next.get(from) ?? new Set()).add(to));
  }
  const done = new Set<string>();
  const way: string[] = [];
  const visit = (room: string): string | undefined => {
    if (way.includes(room)) return [...way.slice(way.indexOf(room)), room].join(' → ');
    if (done.has(room)) return undefined;
    way.push(room);
    for (const one of next.get(room) ?? []) {
      const cycle = visit(one);
      if (cycle) return cycle;
    }
    way.pop();
    done.add(room);
    return undefined;
  };
  for (const room of next.keys()) {
    const cycle = visit(room);
    if (cycle) return cycle;
  }
  return undefined;
}
