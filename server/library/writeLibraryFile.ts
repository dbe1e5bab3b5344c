import type { LibraryFile } from './libraryFile';

/** A list or object that fits on a line of so many characters stands on one. */
const lineLength = 110;

/** All members of a library file in the order in which they are written. */
const members: Readonly<Record<keyof LibraryFile, true>> = {
  title: true,
  output: true,
  build: true,
  targets: true,
  template: true,
  samples: true,
  middleC: true,
  facts: true,
  pack: true,
  sources: true,
  instruments: true,
  leftOut: true,
};

/** A library file as text: what is short on one line, members always in the same order. */
export function writeLibraryFile(library: LibraryFile): string {
  const values = new Map(Object.entries(library));
  const inOrder = Object.fromEntries(Object.keys(members).map((name) => [name, values.get(name)]));
  return `${laidOut(inOrder, '', 0)}\n`;
}

function laidOut(value: unknown, indent: string, before: number): string {
  const short = inLine(value);
  if (indent !== '' && indent.length + before + short.length <= lineLength) return short;
  const inner = `${indent}  `;
  if (Array.isArray(value))
    return value.length === 0
      ? '[]'
      : `[\n${value.map((one) => inner + laidOut(one, inner, 0)).join(',\n')}\n${indent}]`;
  if (typeof value !== 'object' || value === null) return short;
  const members = membersOf(value).map(([name, one]) => {
    const start = `${JSON.stringify(name)}: `;
    return inner + start + laidOut(one, inner, start.length);
  });
  return members.length === 0 ? '{}' : `{\n${members.join(',\n')}\n${indent}}`;
}

function inLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = membersOf(value).map(([name, one]) => `${JSON.stringify(name)}: ${inLine(one)}`);
  return members.length === 0 ? '{}' : `{ ${members.join(', ')} }`;
}

function membersOf(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, one]) => one !== undefined);
}
