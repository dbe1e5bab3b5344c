import { readdir, readFile, writeFile } from 'node:fs/promises';
import { beforeEach, describe, expect, it } from 'vitest';
import { CommandError } from '../../../../server/commandLine/commandError';
import type { OutputFile } from '../../../../server/commandLine/output/overwriting';
import { putOutput } from '../../../../server/commandLine/output/putOutput';
import type { Terminal } from '../../../../server/commandLine/terminal';
import type { ByteChunks, OutputContent } from '../../../../server/model/output';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { writeWhole } from '../../../../server/workspace/files/writeWhole';
import { temporaryFolder } from '../../../temporaryFolder';

let folder: string;
beforeEach(async () => {
  folder = temporaryFolder('output');
});

const parts = (...numbers: number[]): ByteChunks => ({
  length: numbers.length,
  async *chunks() {
    for (const number of numbers) yield Uint8Array.of(number);
  },
});

const failing: ByteChunks = {
  length: 2,
  async *chunks() {
    yield Uint8Array.of(1);
    throw new Error('the disk is gone');
  },
};

const file = (): OutputFile => ({ name: 'a.bin', path: `${folder}/a.bin`, force: true, inputs: new Set() });

const terminal = (written: Uint8Array[] = []) =>
  ({
    files: nodeFiles,
    writeFile: writeWhole,
    out: async (content: string | Uint8Array) => {
      written.push(Buffer.from(content));
    },
  }) as unknown as Terminal;

describe('the files of an output', () => {
  it('are put beside the main file, which comes last', async () => {
    const order: string[] = [];
    const recording = {
      files: nodeFiles,
      writeFile: async (path: string, content: string) => {
        order.push(path);
        await writeWhole(path, content);
      },
    } as unknown as Terminal;
    const files = new Map<string, OutputContent>([
      ['main.bin', parts(1, 2, 3)],
      ['other.bin', Uint8Array.of(9)],
      ['words.txt', 'née'],
    ]);
    await putOutput(recording, files, file());
    expect(order.map((path) => path.slice(folder.length + 1))).toEqual(['other.bin', 'words.txt', 'a.bin']);
    expect([...(await readFile(`${folder}/a.bin`))]).toEqual([1, 2, 3]);
    expect(await readFile(`${folder}/words.txt`, 'utf8')).toBe('née');
  });

  it('leave what was there as it was where their bytes fail half way', async () => {
    await writeFile(`${folder}/a.bin`, 'before');
    const files = new Map([['main.bin', failing]]);
    await expect(putOutput(terminal(), files, file())).rejects.toThrow(CommandError);
    expect(await readdir(folder)).toEqual(['a.bin']);
    expect(await readFile(`${folder}/a.bin`, 'utf8')).toBe('before');
  });

  it('go to standard output where there is one, and are refused where there are several', async () => {
    const written: Uint8Array[] = [];
    await putOutput(terminal(written), new Map([['main.bin', parts(1, 2)]]), undefined);
    expect(Buffer.concat(written)).toEqual(Buffer.of(1, 2));
    const several = new Map([
      ['a', 'a'],
      ['b', 'b'],
    ]);
    await expect(putOutput(terminal(), several, undefined)).rejects.toThrow('--output');
  });

  it('are written as they are where a text is long, whatever characters stand where one part of it ends', async () => {
    for (const shift of ['', 'a', 'é']) {
      const text = shift + '😀'.repeat(600_000);
      await putOutput(terminal(), new Map([['a', text]]), file());
      expect((await readFile(`${folder}/a.bin`)).equals(Buffer.from(text))).toBe(true);
    }
  });
});
