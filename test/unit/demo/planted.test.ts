import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { rules } from '../../../server/checks/rules';
import type { Finding } from '../../../server/model/finding';
import type { Instrument } from '../../../server/model/instrument';
import { analyse } from '../../../server/workspace/analyse';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { NotationFinder } from '../../../server/workspace/notations/notationFinder';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';

const demo = resolve(import.meta.dirname, '../../../samples-demo');

beforeAll(() => {
  execFileSync(process.execPath, [join(demo, 'make.mjs')]);
});

/** Analyses an instrument of the demo as the command line does. */
async function check(path: string): Promise<{ instrument: Instrument; findings: Finding[] }> {
  const text = readFileSync(path, 'utf8');
  const finder = new NotationFinder(nodeFiles, new SampleStore(nodeFiles), (message) => {
    throw new Error(message);
  });
  const found = await finder.find({ path, text });
  if (!found) throw new Error(`${path} is not found to be an instrument`);
  const source = {
    path: path.replaceAll('\\', '/'),
    text,
    notation: found.notation,
    ...finder.readingOf(found),
  };
  return analyse(source, new IncludeStore(nodeFiles), new SampleStore(nodeFiles, { measures: true }));
}

/** The marks in a text: each says which finding is planted in the next line that is no mark, and where. */
function marks(text: string): { code: string; line: number; quoted: string }[] {
  const found: { code: string; line: number; quoted: string }[] = [];
  const lines = text.split('\n');
  for (const [index, line] of lines.entries()) {
    const mark = /planted: ([a-z-]+) at (?:"([^"]+)"|'([^']+)')/.exec(line);
    if (!mark) continue;
    let next = index + 1;
    while (lines[next]?.includes('planted:')) next++;
    found.push({ code: mark[1], line: next, quoted: mark[2] ?? mark[3] });
  }
  return found;
}

function instrumentsIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.(sfz|xml)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

const faults = join(demo, 'faults');

describe('every planted fault is found with its code and place, and nothing else', () => {
  it.each(instrumentsIn(faults).map((path) => [relative(faults, path), path]))('%s', async (_name, path) => {
    const { instrument, findings } = await check(path);
    const expected = instrument.sources.flatMap((source, file) =>
      marks(source.text).map((mark) => ({ ...mark, file })),
    );
    expect(expected.length).toBeGreaterThan(0);
    const codes = (list: readonly { code: string }[]) => [...new Set(list.map(({ code }) => code))].sort();
    expect(codes(findings)).toEqual(codes(expected));
    for (const { code, line, quoted, file } of expected) {
      const lineText = instrument.sources[file]?.text.split('\n')[line] ?? '';
      const from = (instrument.sources[file]?.lineStarts[line] ?? 0) + lineText.indexOf(quoted);
      const touching = findings.filter(
        ({ code: found, source, start, end }) =>
          found === code && source === file && start <= from + quoted.length && end >= from,
      );
      expect(lineText, `${code}: the line under the mark`).toContain(quoted);
      if (!path.includes('cycle')) expect(touching.length, `${code} at ${quoted}`).toBeGreaterThan(0);
    }
  });

  it('there is one for every code that an instrument can have', () => {
    const planted = new Set(
      instrumentsIn(faults).flatMap((path) => marks(readFileSync(path, 'utf8')).map(({ code }) => code)),
    );
    const missing = rules.map(({ code }) => code).filter((code) => !planted.has(code));
    // An absolute path differs from machine to machine, so no file can hold one; unused samples show in folders only, and
    // the faults of a SoundFont are no text's.
    expect(new Set(missing)).toEqual(new Set(['sample-absolute', 'sample-unused', 'font-structure']));
  });
});

describe('the clean demo has no finding', () => {
  const clean = join(demo, 'millrace-chimes');
  it.each(instrumentsIn(clean).map((path) => [relative(clean, path), path]))('%s', async (_name, path) => {
    const { findings } = await check(path);
    expect(findings.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });
});
