import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';

// Files written by one general audio tool (sox) or library (libsndfile) are read by both and by this project; the
// three have to agree on rate, channels and frames. Neither tool shares code with this project.

const tools = hasTools('sox', 'sndfile-info', 'sndfile-convert');
const folder = temporaryFolder('wav-tools');
const files = new SoundFiles(folder);
const synthesise = (name: string, ...kind: string[]) => files.synthesise(name, 0.1017, ...kind);

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
    const facts = await files.facts(name);
    const bySox = files.bySox(name);
    expect(facts).toMatchObject(bySox);
    expect(facts).toMatchObject(files.bySndfile(name));
    expect(facts).toMatchObject({ container: 'wav', encoding, bitsPerSample: bits, channels, problems: [] });
    expect(facts.lengthSeconds).toBeCloseTo(bySox.frames / bySox.sampleRate, 5);
  });

  it('reads the extensible form that sox writes for more than two channels or 16 bits', async () => {
    synthesise('extensible.wav', '-r', '44100', '-b', '24', '-c', '6');
    const bytes = readFileSync(join(folder, 'extensible.wav'));
    expect(bytes.readUInt16LE(20)).toBe(0xfffe);
    expect(await files.facts('extensible.wav')).toMatchObject({
      encoding: 'pcm',
      ...files.bySndfile('extensible.wav'),
    });
  });

  it('reads the RF64 file that libsndfile writes', async () => {
    synthesise('plain.wav', '-r', '44100', '-b', '16', '-c', '2');
    files.run('sndfile-convert', 'plain.wav', 'long.rf64');
    expect(readFileSync(join(folder, 'long.rf64')).toString('latin1', 0, 4)).toBe('RF64');
    const facts = await files.facts('long.rf64');
    expect(facts).toMatchObject(files.bySndfile('long.rf64'));
    expect(facts.problems).toEqual([]);
  });

  it.each(['wav', 'rf64'])(
    'passes the broadcast chunk that libsndfile puts into a file of %s',
    async (ending) => {
      synthesise('bare.wav', '-r', '44100', '-b', '16', '-c', '2');
      files.run('sndfile-convert', 'bare.wav', `copy.${ending}`);
      const described = `described.${ending}`;
      files.run('sndfile-metadata-set', '--bext-description', 'A tone', `copy.${ending}`, described);
      expect(readFileSync(join(folder, described)).includes('bext')).toBe(true);
      expect(await files.facts(described)).toEqual(await files.facts(`copy.${ending}`));
    },
  );

  it.each(['ms-adpcm', 'ima-adpcm'])(
    'takes the frames of %s from the fact chunk, as libsndfile prints it',
    async (encoding) => {
      const name = `${encoding}.wav`;
      synthesise(name, '-r', '22050', '-c', '1', '-e', encoding);
      const printed = /frames\s*:\s*(\d+)/.exec(files.run('sndfile-info', name))?.[1];
      expect(await files.facts(name)).toMatchObject({ encoding, frames: Number(printed) });
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
