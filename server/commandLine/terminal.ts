import { homedir } from 'node:os';
import type { Files } from '../model/files';
import type { OutputContent } from '../model/output';
import { nodeFiles } from '../workspace/files/nodeFiles';
import { cacheFolder } from '../workspace/measuring/cacheFolder';
import type { CacheStorage } from '../workspace/measuring/measureCache';
import type { Measurer } from '../workspace/measuring/measurer';
import { nodeMeasurer } from '../workspace/measuring/nodeMeasureThread';
import { userCacheFolder } from '../workspace/measuring/userCacheFolder';

/** How samples are measured, and where what was found out is kept. */
export interface Measuring {
  measurer(files: Files): Measurer;
  /** `undefined` where nothing can be kept. */
  storage(): CacheStorage | undefined;
}

/** What a command reads from and writes to, so that it can be run in tests as well. */
export interface Terminal {
  /** Absolute path of the folder that the command runs in, with `/`. */
  folder: string;
  files: Files;
  /** Folders that instruments may include from although they lie elsewhere: `--include-folder`, absolute with `/`. */
  includeFolders?: readonly string[];
  /** Whether standard output is a terminal that shows colour. */
  colour: boolean;
  out(content: string | Uint8Array): Promise<void>;
  error(text: string): void;
  standardInput(): Promise<Uint8Array>;
  /** Puts a whole file in place, or leaves what is there as it is. */
  writeFile(path: string, content: OutputContent): Promise<void>;
  /** Makes a folder with those around it, where they are not there. */
  makeFolder(path: string): Promise<void>;
  /** Missing where samples are measured in the same thread and nothing is kept. */
  measuring?: Measuring;
}

/** The terminal of this process; `program` is the folder that the program's bundles stand in. */
export function processTerminal(program: string): Terminal {
  // A reader that closes early, such as a pager, is no fault.
  process.stdout.on('error', () => process.exit(0));
  return {
    folder: process.cwd().replaceAll('\\', '/'),
    files: nodeFiles,
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
    out: (content) => new Promise((done) => process.stdout.write(content, () => done())),
    error: (text) => {
      process.stderr.write(text);
    },
    async standardInput() {
      const parts: Buffer[] = [];
      for await (const part of process.stdin) parts.push(Buffer.from(part));
      return Buffer.concat(parts);
    },
    writeFile: async (path, content) => {
      const { writeWhole } = await import('./writeWhole');
      await writeWhole(path, content);
    },
    makeFolder: async (path) => {
      const { mkdir } = await import('node:fs/promises');
      await mkdir(path, { recursive: true });
    },
    measuring: {
      measurer: (files) => nodeMeasurer(files, program),
      storage: () => {
        const { platform, env: environment } = process;
        const folder = userCacheFolder({ platform, home: homedir(), environment });
        return folder === undefined ? undefined : cacheFolder(folder);
      },
    },
  };
}
