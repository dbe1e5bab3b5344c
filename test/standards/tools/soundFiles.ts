import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../server/model/samples';
import { readerOf } from '../../unit/audio/byteFiles';

/** Whether general audio tools are installed. */
export function hasTools(...tools: string[]): boolean {
  return tools.every((tool) => spawnSync(tool, ['--version']).error === undefined);
}

/** What a file shows of its audio, whoever reads it. */
export interface Shown {
  sampleRate: number;
  channels: number;
  frames: number;
}

/** A folder of sound files that general audio tools write and read. */
export class SoundFiles {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  run(tool: string, ...args: string[]): string {
    return execFileSync(tool, args, {
      cwd: this.#folder,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  }

  path(name: string): string {
    return join(this.#folder, name);
  }

  bytes(name: string): Uint8Array {
    return new Uint8Array(readFileSync(this.path(name)));
  }

  /** Has sox write a tone; `kind` are its options for the file. */
  synthesise(name: string, seconds: number, ...kind: string[]): void {
    this.run('sox', '-R', '-n', ...kind, name, 'synth', String(seconds), 'sine', '440', 'gain', '-3');
  }

  /** What this project reads. */
  async facts(name: string): Promise<SampleFacts> {
    const reading = await readSampleFacts(readerOf(this.bytes(name)));
    if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
    return reading.facts;
  }

  bySox(name: string): Shown {
    const text = this.run('sox', '--info', name);
    const number = (before: string) => Number(new RegExp(`^${before}(\\d+)`, 'm').exec(text)?.[1]);
    return {
      sampleRate: number('Sample Rate\\s*: '),
      channels: number('Channels\\s*: '),
      // The length comes in hours, minutes and seconds first.
      frames: number('Duration\\s*: [\\d:.]+ = '),
    };
  }

  bySndfile(name: string): Shown {
    // The log of the header comes first and may give other numbers under the same names.
    const text = this.run('sndfile-info', name).split('\n----').pop() ?? '';
    const number = (label: string) => Number(new RegExp(`^${label}\\s*:\\s*(\\d+)`, 'm').exec(text)?.[1]);
    return { sampleRate: number('Sample Rate'), channels: number('Channels'), frames: number('Frames') };
  }
}
