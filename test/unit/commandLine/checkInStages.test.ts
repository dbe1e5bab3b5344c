import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCommandLine } from '../../../server/commandLine/run';
import type { Terminal } from '../../../server/commandLine/terminal';
import type { CacheStorage } from '../../../server/workspace/measuring/measureCache';
import type { Measurer } from '../../../server/workspace/measuring/measurer';
import type { FileOrder } from '../../../server/workspace/measuring/visitFile';
import { visitFile } from '../../../server/workspace/measuring/visitFile';
import { waveBytes } from '../server/host/waveBytes';
import { MemoryFiles } from '../workspace/memoryFiles';

/** A library: instruments that use some samples each, others in common, and parts that several include. */
function library(instruments: number): Record<string, string | Uint8Array> {
  const files: Record<string, string | Uint8Array> = {
    '/lib/parts/low.sfzh': '<region> sample=shared-1.wav key=20 unheard_of=1\n',
    '/lib/Samples/unused.wav': waveBytes(300),
  };
  for (const number of [0, 1, 2]) files[`/lib/Samples/shared-${number}.wav`] = waveBytes(2000 + number);
  for (let number = 0; number < instruments; number++) {
    const name = String(number).padStart(3, '0');
    files[`/lib/Samples/own-${name}.wav`] = waveBytes(1000 + number);
    files[`/lib/i-${name}.sfz`] = [
      '<control> default_path=Samples/',
      `<region> sample=own-${name}.wav key=60`,
      `<region> sample=shared-${number % 3}.wav key=61 loop_mode=loop_continuous loop_start=5 loop_end=${100 + number}`,
      `<region> sample=none-${name}.wav key=62`,
      number % 4 === 0 ? '#include "parts/low.sfzh"' : '',
    ].join('\n');
  }
  return files;
}

interface Run {
  /** What was written, as it came. */
  out: string[];
  /** Paths of samples that were opened. */
  opened: string[];
  /** What was measured in which file. */
  measured: string[];
}

/** Checks a library; threads answer after as many turns of the event loop as `delays` say, one after the other. */
async function check(
  contents: Record<string, string | Uint8Array>,
  { delays = [0], storage, words = [] }: { delays?: number[]; storage?: CacheStorage; words?: string[] } = {},
): Promise<Run> {
  const files = new MemoryFiles(contents);
  const run: Run = { out: [], opened: [], measured: [] };
  let orders = 0;
  const wait = async () => {
    for (let turn = delays[orders++ % delays.length] ?? 0; turn > 0; turn--)
      await new Promise((resolve) => setImmediate(resolve));
  };
  const inThread = new MemoryFiles(contents);
  const measurer: Measurer = {
    width: 2,
    measure: async () => ({ kind: 'failed', reason: 'broken' }),
    async visit(all: readonly FileOrder[], signal) {
      await wait();
      for (const { path, requests } of all)
        for (const { what } of requests) run.measured.push(`${what} ${path}`);
      return Promise.all(all.map((order) => visitFile(inThread, order, signal)));
    },
    close: async () => {},
  };
  const terminal: Terminal = {
    folder: '/lib',
    files,
    colour: false,
    out: async (text) => void run.out.push(String(text)),
    error: () => {},
    standardInput: async () => new Uint8Array(),
    writeFile: async () => {},
    makeFolder: async () => {},
    measuring: { measurer: () => measurer, storage: () => storage },
  };
  await runCommandLine(['check', '.', ...words], terminal);
  run.opened = [...files.opened, ...inThread.opened].filter((path) => path.endsWith('.wav'));
  return run;
}

function memoryStorage(): CacheStorage {
  const kept = new Map<string, Uint8Array>();
  return {
    read: async (name) => kept.get(name),
    write: async (name, bytes) => void kept.set(name, bytes),
  };
}

describe('a check of many instruments', () => {
  it('says the same in the same order, however long threads take', async () => {
    const contents = library(40);
    const first = (await check(contents)).out.join('');
    expect(first.split('\n').filter((line) => line.includes('[sample-missing]'))).toHaveLength(40);
    expect(first.match(/unheard_of/g)).toHaveLength(1);
    expect(first).toContain('Samples/unused.wav:1:1: information');
    const places = first.split('\n').flatMap((line) => /^(i-\d+\.sfz):/.exec(line)?.[1] ?? []);
    expect(places).toEqual([...places].sort());
    const delays = fc.array(fc.nat(7), { minLength: 1, maxLength: 9 });
    await fc.assert(
      fc.asyncProperty(delays, async (some) => {
        expect((await check(contents, { delays: some })).out.join('')).toBe(first);
      }),
      { numRuns: 15 },
    );
  });

  it('writes findings as they come, not all at the end', async () => {
    const { out } = await check(library(40));
    expect(out.length).toBeGreaterThan(30);
    expect(out[0]).toContain('i-000.sfz');
  });

  it('measures what several instruments use once, and opens each file once for it', async () => {
    const { measured, opened } = await check(library(40));
    expect(measured.length).toBe(
      new Set(measured.filter((one) => !one.startsWith('loopSeam'))).size + count(measured, 'loopSeam'),
    );
    expect(measured.filter((one) => one.startsWith('survey') && one.includes('shared'))).toHaveLength(3);
    // Once for the header, and once for what has to be measured.
    const own = opened.filter((path) => path.includes('own-'));
    expect(own.length).toBe(2 * new Set(own).size);
  });

  it('opens no sample and measures nothing the next time, and says the same', async () => {
    const contents = library(40);
    const storage = memoryStorage();
    const first = await check(contents, { storage });
    expect(first.measured.length).toBeGreaterThan(40);
    const again = await check(contents, { storage });
    expect(again.opened).toEqual([]);
    expect(again.measured).toEqual([]);
    expect(again.out.join('')).toBe(first.out.join(''));
  });

  it('gathers files in the forms that are one value', async () => {
    const contents = library(9);
    const { out } = await check(contents, { words: ['--format', 'json'] });
    expect(out).toHaveLength(1);
    const { files, totals } = JSON.parse(out.join('')) as { files: { path: string }[]; totals: object };
    const paths = files.map(({ path }) => path);
    expect(paths).toEqual([...new Set(paths)].sort());
    expect(paths).toContain('parts/low.sfzh');
    expect(totals).toMatchObject({ error: 9 });
  });
});

function count(measured: readonly string[], what: string): number {
  return measured.filter((one) => one.startsWith(what)).length;
}
