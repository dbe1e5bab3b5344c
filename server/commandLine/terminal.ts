import { availableParallelism, homedir } from 'node:os';
import type { FlacLibrary } from '../audio/encode/flacEncoder';
import type { Files } from '../model/files';
import type { OutputContent } from '../model/output';
import type { ComparedSides, CompareThreads } from '../workspace/comparing/nodeCompareThreads';
import { nodeCompareThreads } from '../workspace/comparing/nodeCompareThreads';
import { waitingNodeFiles } from '../workspace/files/nodeFiles';
import { cacheFolder } from '../workspace/measuring/cacheFolder';
import type { CacheStorage } from '../workspace/measuring/measureCache';
import type { Measurer } from '../workspace/measuring/measurer';
import { nodeMeasurer } from '../workspace/measuring/nodeMeasureThread';
import { userCacheFolder } from '../workspace/measuring/userCacheFolder';
import { CommandError } from './commandError';
import { systemReason } from './systemReason';

/** How samples are measured, and where what was found out is kept. */
export interface MeasuringTools {
  measurer(files: Files): Measurer;
  /** `undefined` where nothing can be kept. */
  storage(): CacheStorage | undefined;
}

/** How notes are compared in threads, and how a person stops a command that takes long. */
export interface Comparing {
  /** `undefined` where there are no threads. */
  threads(sides: ComparedSides): CompareThreads | undefined;
  /** Aborted when the person asks for it once; asking again ends the program. */
  stopped(): AbortSignal;
}

/** What packing needs beside files. */
export interface Packing {
  /** Puts a whole folder of files in the place of what is there, or leaves that as it is; paths start from the folder. */
  writeFolder(path: string, files: ReadonlyMap<string, OutputContent>): Promise<void>;
  /** The encoder of FLAC; it is large, so it is loaded when it is asked for. */
  flacLibrary(): Promise<FlacLibrary>;
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
  /** Missing where nothing is packed. */
  packing?: Packing;
  /** Missing where samples are measured in the same thread and nothing is kept. */
  measuring?: MeasuringTools;
  /** The folder that the program's bundles stand in; missing where it runs from its source. */
  program?: string;
  /** Missing where notes are compared in the same thread and cannot be stopped. */
  comparing?: Comparing;
}

function isClosedPipe(error: Error): boolean {
  return 'code' in error && error.code === 'EPIPE';
}

/** The terminal of this process; `program` is the folder that the program's bundles stand in. */
export function processTerminal(program: string): Terminal {
  // A reader that closes early, such as a pager, is no fault. Other faults come to who writes.
  process.stdout.on('error', (error) => {
    if (isClosedPipe(error)) process.exit(0);
  });
  process.stderr.on('error', () => {});
  return {
    program,
    folder: process.cwd().replaceAll('\\', '/'),
    files: waitingNodeFiles,
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
    out: (content) =>
      new Promise((done, fail) => {
        process.stdout.write(content, (error) => {
          if (error) fail(new CommandError(`standard output cannot be written to: ${systemReason(error)}`));
          else done();
        });
      }),
    error: (text) => {
      process.stderr.write(text, (error) => {
        // There is no way left to say it.
        if (error && !isClosedPipe(error)) process.on('exit', () => (process.exitCode = 2));
      });
    },
    async standardInput() {
      const parts: Buffer[] = [];
      for await (const part of process.stdin) parts.push(Buffer.from(part));
      return Buffer.concat(parts);
    },
    writeFile: async (path, content) => {
      const { writeWhole } = await import('../workspace/files/writeWhole');
      await writeWhole(path, content);
    },
    makeFolder: async (path) => {
      const { mkdir } = await import('node:fs/promises');
      await mkdir(path, { recursive: true });
    },
    packing: packingOf(program),
    comparing: {
      threads: (sides) => nodeCompareThreads(program, availableParallelism(), sides),
      stopped: () => {
        const stop = new AbortController();
        process.once('SIGINT', () => stop.abort());
        return stop.signal;
      },
    },
    measuring: measuringOf(program),
  };
}

function packingOf(program: string): Packing {
  return {
    writeFolder: async (path, content) => {
      const { writeFolder } = await import('../workspace/files/writeFolder');
      await writeFolder(path, content);
    },
    flacLibrary: async () => (await import('../workspace/files/flacLibraryIn')).flacLibraryIn(program),
  };
}

function measuringOf(program: string): MeasuringTools {
  return {
    // Who waits for the command wants all of the machine; its own thread mostly waits too.
    measurer: (files) => nodeMeasurer(files, program, availableParallelism()),
    storage: () => {
      const { platform, env: environment } = process;
      const folder = userCacheFolder({ platform, home: homedir(), environment });
      return folder === undefined ? undefined : cacheFolder(folder);
    },
  };
}
