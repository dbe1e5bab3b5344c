import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { bigChunk, common, form, instrument, marks, sound } from '../../unit/audio/bigEndianFiles';
import { readDamaged } from '../../unit/audio/boundedReading';
import { chunk, format, sampler, silence, text, wave } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';

// FLAC files that sox, libsndfile and the reference encoder wrote, read by them and by this project, which shares no
// code with them.

const folder = temporaryFolder('flac-tools');
const files = new SoundFiles(folder);
const tools = hasTools('sox', 'sndfile-info', 'sndfile-convert');

describe.skipIf(!tools)('FLAC facts against sox and libsndfile', () => {
  const kinds = [16, 24].flatMap((bits) => [1, 2, 6].map((channels) => [bits, channels] as const));

  it.each(kinds)('%i bits, %i channels', async (bits, channels) => {
    for (const rate of ['22050', '44100', '96000']) {
      const name = `${bits}-${channels}-${rate}.flac`;
      files.synthesise(name, 0.1017, '-r', rate, '-b', String(bits), '-c', String(channels));
      const facts = await files.facts(name);
      expect(facts).toMatchObject(files.bySox(name));
      expect(facts).toMatchObject(files.bySndfile(name));
      expect(facts).toMatchObject({ container: 'flac', encoding: 'flac', bitsPerSample: bits, problems: [] });
    }
  });

  it('reads a file that libsndfile wrote', async () => {
    files.synthesise('plain.wav', 0.2, '-r', '48000', '-b', '16', '-c', '2');
    files.run('sndfile-convert', '-pcms8', 'plain.wav', 'eight.flac');
    const facts = await files.facts('eight.flac');
    expect(facts).toMatchObject(files.bySndfile('eight.flac'));
    expect(facts).toMatchObject({ bitsPerSample: 8, problems: [] });
  });

  it('reads damaged files', async () => {
    files.synthesise('whole.flac', 0.1, '-r', '96000', '-b', '24', '-c', '6');
    await readDamaged(files.bytes('whole.flac'));
  });
});

describe.skipIf(!hasTools('flac', 'metaflac', 'sox'))('FLAC facts against the reference tools', () => {
  function byMetaflac(name: string) {
    const asked = ['sample-rate', 'channels', 'bps', 'total-samples'].map((what) => `--show-${what}`);
    const [sampleRate, channels, bitsPerSample, frames] = files
      .run('metaflac', ...asked, name)
      .trim()
      .split('\n')
      .map(Number);
    return { sampleRate, channels, bitsPerSample, frames };
  }

  it.each(['-0', '-8', '--no-padding', '--blocksize=512', '--padding=100000'])(
    'agrees with metaflac on a file written with %s',
    async (option) => {
      files.synthesise('source.wav', 0.3, '-r', '44100', '-b', '24', '-c', '2');
      files.run('flac', '-s', '-f', option, '-T', 'TITLE=Tone', 'source.wav', '-o', 'reference.flac');
      const facts = await files.facts('reference.flac');
      expect(facts).toMatchObject({ ...byMetaflac('reference.flac'), problems: [] });
    },
  );

  const loops = { loops: [{ start: 100, end: 899, type: 'forward' }], rootKey: 67 };

  it('reads root key and loops of a WAV file that the reference encoder kept', async () => {
    const fmt = chunk('fmt ', format(1, 1, 44100, 16));
    const smpl = chunk('smpl', sampler(67, 0x40000000, [[0, 100, 899]]));
    writeFileSync(files.path('played.wav'), wave(fmt, chunk('data', silence(2000)), smpl));
    files.run('flac', '-s', '-f', '--keep-foreign-metadata', 'played.wav', '-o', 'wav.flac');
    expect(await files.facts('wav.flac')).toMatchObject({ ...loops, fineTuneCents: 25, problems: [] });
    await readDamaged(files.bytes('wav.flac'));
  });

  it('reads root key and loops of an AIFF file that the reference encoder kept', async () => {
    const aiff = form(
      'AIFF',
      bigChunk('COMM', common(1, 1000, 16)),
      bigChunk('MARK', marks([1, 100, 'start'], [2, 900, 'end'])),
      bigChunk('INST', instrument(67, -12, [1, 1, 2])),
      bigChunk('SSND', sound(silence(2000))),
    );
    writeFileSync(files.path('played.aiff'), aiff);
    files.run('flac', '-s', '-f', '--keep-foreign-metadata', 'played.aiff', '-o', 'aiff.flac');
    expect(await files.facts('aiff.flac')).toMatchObject({ ...loops, fineTuneCents: 12, problems: [] });
    await readDamaged(files.bytes('aiff.flac'));
  });

  it('passes a tag before the marker, as metaflac does', async () => {
    files.synthesise('source.wav', 0.1, '-r', '44100', '-b', '16', '-c', '1');
    files.run('flac', '-s', '-f', 'source.wav', '-o', 'bare.flac');
    const tag = [...text('ID3\x04\0\0\0\0\x60\0'), ...silence(0x60 * 128)];
    writeFileSync(files.path('tagged.flac'), new Uint8Array([...tag, ...files.bytes('bare.flac')]));
    expect(await files.facts('tagged.flac')).toMatchObject({ ...byMetaflac('tagged.flac'), problems: [] });
  });
});
