import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../server/model/samples';
import { readerOf } from '../../unit/audio/byteFiles';

// Files written by one general audio tool (sox) or library (libsndfile) are read by both and by this project; the
// three have to agree on rate, channels and frames. Neither tool shares code with this project.

const has = (tool: string) => spawnSync(tool, ['--version']).error === undefined;
const tools = has('sox') && has('sndfile-info') && has('sndfile-convert');
const folder = mkdtempSync(join(tmpdir(), 'wav-tools-'));
afterAll(() => rmSync(folder, { recursive: true }));

const run = (tool: string, ...args: string[]) => execFileSync(tool, args, { cwd: folder, encoding: 'utf8' });

function synthesise(name: string, ...kind: string[]): void {
  run('sox', '-R', '-n', ...kind, name, 'synth', '0.1017', 'sine', '440', 'gain', '-3');
}

async function factsOf(name: string): Promise<SampleFacts> {
  const reading = await readSampleFacts(readerOf(new Uint8Array(readFileSync(join(folder, name)))));
  if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
  return reading.facts;
}

function bySox(name: string) {
  const ask = (what: string) => Number(run('sox', '--info', what, name));
  return { sampleRate: ask('-r'), channels: ask('-c'), frames: ask('-s') };
}

function bySndfile(name: string) {
  const text = run('sndfile-info', name);
  const number = (label: string) => Number(new RegExp(`^${label}\\s*:\\s*(\\d+)`, 'm').exec(text)?.[1]);
  return { sampleRate: number('Sample Rate'), channels: number('Channels'), frames: number('Frames') };
}

describe.skipIf(!tools)('WAV facts against sox and libsndfile', () => {
  const kinds: [name: string, encoding: string, bits: number, options: string[]][] = [
    ['8-bit', 'pcm', 8, ['-r', '8000', '-b', '8']],
    ['16-bit', 'pcm', 16, ['-r', '44100', '-b', '16']],
    ['24-bit', 'pcm', 24, ['-r', '48000', '-b', '24']],
    ['32-bit', 'pcm', 32, ['-r', '96000', '-b', '32']],
    ['float', 'float', 32, ['-r', '44100', '-b', '32', '-e', 'floating-point']],
    ['double', 'float', 64, ['-r', '44100', '-b', '64', '-e', 'floating-point']],
    ['alaw', 'alaw', 8, ['-r', '8000', '-e', 'a-law']],
    ['mulaw', 'mulaw', 8, ['-r', '8000', '-e', 'mu-law']],
  ];
  const layouts = kinds.flatMap((kind) => [1, 2, 6].map((channels) => [...kind, channels] as const));

  it.each(layouts)('%s (%s, %i bits): %j, %i channels', async (kind, encoding, bits, options, channels) => {
    const name = `${kind}-${channels}.wav`;
    synthesise(name, ...options, '-c', String(channels));
    const facts = await factsOf(name);
    expect(facts).toMatchObject(bySox(name));
    expect(facts).toMatchObject(bySndfile(name));
    expect(facts).toMatchObject({ container: 'wav', encoding, bitsPerSample: bits, channels, problems: [] });
    expect(facts.lengthSeconds).toBeCloseTo(Number(run('sox', '--info', '-D', name)), 5);
  });

  it('reads the extensible form that sox writes for more than two channels or 16 bits', async () => {
    synthesise('extensible.wav', '-r', '44100', '-b', '24', '-c', '6');
    const bytes = readFileSync(join(folder, 'extensible.wav'));
    expect(bytes.readUInt16LE(20)).toBe(0xfffe);
    expect(await factsOf('extensible.wav')).toMatchObject({
      encoding: 'pcm',
      ...bySndfile('extensible.wav'),
    });
  });

  it('reads the RF64 file that libsndfile writes', async () => {
    synthesise('plain.wav', '-r', '44100', '-b', '16', '-c', '2');
    run('sndfile-convert', 'plain.wav', 'long.rf64');
    expect(readFileSync(join(folder, 'long.rf64')).toString('latin1', 0, 4)).toBe('RF64');
    const facts = await factsOf('long.rf64');
    expect(facts).toMatchObject(bySndfile('long.rf64'));
    expect(facts.problems).toEqual([]);
  });

  it.each(['wav', 'rf64'])(
    'passes the broadcast chunk that libsndfile puts into a file of %s',
    async (ending) => {
      synthesise('bare.wav', '-r', '44100', '-b', '16', '-c', '2');
      run('sndfile-convert', 'bare.wav', `copy.${ending}`);
      const described = `described.${ending}`;
      run('sndfile-metadata-set', '--bext-description', 'A tone', `copy.${ending}`, described);
      expect(readFileSync(join(folder, described)).includes('bext')).toBe(true);
      expect(await factsOf(described)).toEqual(await factsOf(`copy.${ending}`));
    },
  );

  it.each(['ms-adpcm', 'ima-adpcm'])(
    'takes the frames of %s from the fact chunk, as libsndfile prints it',
    async (encoding) => {
      const name = `${encoding}.wav`;
      synthesise(name, '-r', '22050', '-c', '1', '-e', encoding);
      const printed = /frames\s*:\s*(\d+)/.exec(run('sndfile-info', name))?.[1];
      expect(await factsOf(name)).toMatchObject({ encoding, frames: Number(printed) });
    },
  );

  it('takes the frames of a file that sox wrote into a pipe from its size', async () => {
    const bytes = execFileSync(
      'sox',
      ['-r', '8000', '-n', '-b', '16', '-t', 'wav', '-', 'synth', '800s', 'sine', '440'],
      {
        stdio: ['ignore', 'pipe', 'ignore'],
      },
    );
    const reading = await readSampleFacts(readerOf(new Uint8Array(bytes)));
    expect(reading).toMatchObject({
      kind: 'facts',
      facts: { frames: 800, problems: [{ kind: 'size-wrong' }] },
    });
  });
});
