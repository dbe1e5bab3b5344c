import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../../server/commandLine/run';
import type { Comparing, Terminal } from '../../../server/commandLine/terminal';
import { nodeCompareThreads } from '../../../server/workspace/comparing/nodeCompareThreads';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { writeWhole } from '../../../server/workspace/files/writeWhole';
import { cacheFolder } from '../../../server/workspace/measuring/cacheFolder';
import { pairSamples } from '../../corpus/comparison/pairSamples';
import { temporaryFolder } from '../../temporaryFolder';
import { folderWith } from '../commandLine/runInFolder';

const keys = [50, 55, 60, 65];
const instrument = (more: string) =>
  keys.map((key) => `<region> sample=c4.wav key=${key} ${more}`).join('\n');

describe('comparing in threads', () => {
  let program: string;
  beforeAll(async () => {
    program = temporaryFolder('threads');
    await build({
      entryPoints: ['server/compareWorker.ts'],
      outfile: join(program, 'compareWorker.js'),
      bundle: true,
      platform: 'node',
      format: 'cjs',
      alias: { 'codec-parser': './server/audio/decode/streamParser.ts' },
      logLevel: 'error',
    });
  });

  async function compared(folder: string, comparing?: Partial<Comparing>, cache?: string) {
    let [out, error, orders] = ['', '', 0];
    const never = new AbortController().signal;
    const terminal: Terminal = {
      folder,
      files: nodeFiles,
      colour: false,
      async out(text) {
        out += text;
      },
      error(text) {
        error += text;
      },
      standardInput: async () => new Uint8Array(),
      writeFile: writeWhole,
      makeFolder: async () => {},
      ...(comparing && {
        comparing: {
          threads: (sides) => {
            const threads = nodeCompareThreads(program, 2, sides);
            return (
              threads && {
                ...threads,
                measure: (notes) => {
                  orders++;
                  return threads.measure(notes);
                },
              }
            );
          },
          stopped: () => never,
          ...comparing,
        },
      }),
      ...(cache && {
        measuring: {
          measurer: () => {
            throw new Error('No sample is measured here');
          },
          storage: () => cacheFolder(cache),
        },
      }),
    };
    const status = await runCommandLine(['compare', 'a.sfz', 'b.sfz', '--format', 'json'], terminal);
    return { status, out, error, orders };
  }

  const folderOf = () =>
    folderWith({
      'a.sfz': instrument('volume=-3'),
      'b.sfz': instrument('volume=-4'),
      'c4.wav': pairSamples['c4.wav'],
    });

  it('says the same as in one thread', async () => {
    const folder = folderOf();
    const [alone, together] = [await compared(folder), await compared(folder, {})];
    expect(together.orders).toBe(keys.length);
    expect(together.out).toBe(alone.out);
    expect(JSON.parse(together.out).differences).toHaveLength(keys.length);
  });

  it('measures again only what has changed since', async () => {
    const [folder, cache] = [folderOf(), folderWith({})];
    const first = await compared(folder, {}, cache);
    const again = await compared(folder, {}, cache);
    expect([first.orders, again.orders]).toEqual([keys.length, 0]);
    expect(again.out).toBe(first.out);
    // One region more between the others changes no other.
    writeFileSync(
      join(folder, 'b.sfz'),
      instrument('volume=-4')
        .replace('key=55 volume=-4', 'key=55 volume=-5')
        .replace('<region>', '\n<region>'),
    );
    expect((await compared(folder, {}, cache)).orders).toBe(1);
    writeFileSync(join(folder, 'c4.wav'), pairSamples['c4other.wav']);
    expect((await compared(folder, {}, cache)).orders).toBe(keys.length);
  });

  it('stops when it is asked to, with nothing written and the status of a program that was stopped', async () => {
    const stop = new AbortController();
    let measured = 0;
    const { status, out, error } = await compared(folderOf(), {
      stopped: () => stop.signal,
      threads: (sides) => {
        const threads = nodeCompareThreads(program, 1, sides);
        return (
          threads && {
            ...threads,
            measure: async (notes) => {
              if (++measured === 2) stop.abort();
              return threads.measure(notes);
            },
          }
        );
      },
    });
    expect(status).toBe(130);
    expect(out).toBe('');
    expect(error).toContain('stopped');
    expect(measured).toBe(2);
  });

  it('fails with a reason where a thread breaks down', async () => {
    const broken = folderWith({ 'compareWorker.js': 'throw new Error("broken");' });
    const { status, error } = await compared(folderOf(), {
      threads: (sides) => nodeCompareThreads(broken, 2, sides),
    });
    expect(status).toBe(2);
    expect(error).toContain('broken');
  });

  it('is done in the same thread where the bundle is missing', () => {
    const side = { program: {}, playable: {}, paths: [] } as never;
    const options = { toleranceDb: -90, sampleRate: 44100, seed: 0 };
    expect(nodeCompareThreads(folderWith({}), 2, { a: side, b: side, options })).toBeUndefined();
  });
});
