import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { runCommandLine } from '../../../server/commandLine/run';
import type { Terminal } from '../../../server/commandLine/terminal';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { writeFolder } from '../../../server/workspace/files/writeFolder';
import { writeWhole } from '../../../server/workspace/files/writeWhole';
import { temporaryFolder } from '../../temporaryFolder';

/** What a command answered. */
export interface Answer {
  status: number;
  out: string;
  error: string;
}

/** A fresh folder with files in it; it goes when the test file ends. */
export function folderWith(files: Record<string, string | Uint8Array>): string {
  const folder = temporaryFolder('zonewright');
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

/** Runs a command in a folder, with standard input where it reads that. */
export async function run(folder: string, args: readonly string[], input = ''): Promise<Answer> {
  const answer: Answer = { status: -1, out: '', error: '' };
  const terminal: Terminal = {
    folder: folder.replaceAll('\\', '/'),
    files: nodeFiles,
    colour: false,
    async out(text) {
      answer.out += text;
    },
    error(text) {
      answer.error += text;
    },
    standardInput: async () => new TextEncoder().encode(input),
    writeFile: writeWhole,
    packing: {
      writeFolder,
      flacLibrary: async () => (await import('../../../server/flacLibrary')).flacLibrary,
    },
    makeFolder: async (path) => void mkdirSync(path, { recursive: true }),
  };
  answer.status = await runCommandLine(args, terminal);
  return answer;
}
