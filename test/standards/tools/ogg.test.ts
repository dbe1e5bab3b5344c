import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { readDamaged } from '../../unit/audio/boundedReading';
import { hasTools, SoundFiles } from './soundFiles';

// Ogg files that sox, libsndfile and the reference encoder wrote, read by them and by this project, which shares no
// code with them.

const folder = temporaryFolder('ogg-tools');
const files = new SoundFiles(folder);
const tools = hasTools('sox', 'sndfile-info', 'sndfile-convert');

describe.skipIf(!tools)('Ogg facts against sox and libsndfile', () => {
  const kinds = [8000, 22050, 44100, 48000].flatMap((rate) =>
    [1, 2, 6].map((channels) => [rate, channels] as const),
  );

  it.each(kinds)('Vorbis at %i Hz, %i channels', async (rate, channels) => {
    for (const seconds of [0.0517, 2.5]) {
      const name = `${rate}-${channels}-${seconds}.ogg`;
      files.synthesise(name, seconds, '-r', String(rate), '-c', String(channels));
      const facts = await files.facts(name);
      expect(facts).toMatchObject(files.bySox(name));
      expect(facts).toMatchObject(files.bySndfile(name));
      expect(facts).toMatchObject({ container: 'ogg', encoding: 'vorbis', bitsPerSample: 0, problems: [] });
    }
  });

  it.each([1, 2])('Opus, %i channels', async (channels) => {
    // Only a rate of 48 kHz is shown alike: libsndfile gives frames at the rate of what was encoded.
    files.synthesise('source.wav', 1.2345, '-r', '48000', '-b', '16', '-c', String(channels));
    files.run('sndfile-convert', '-opus', 'source.wav', 'opus.ogg');
    const facts = await files.facts('opus.ogg');
    expect(facts).toMatchObject(files.bySndfile('opus.ogg'));
    expect(facts).toMatchObject({ frames: files.bySox('source.wav').frames, encoding: 'opus', problems: [] });
  });

  it('counts Opus at 48 kHz whatever was encoded (RFC 7845, section 4)', async () => {
    files.synthesise('low.wav', 1, '-r', '16000', '-b', '16', '-c', '1');
    files.run('sndfile-convert', '-opus', 'low.wav', 'low.ogg');
    expect(await files.facts('low.ogg')).toMatchObject({ sampleRate: 48000, frames: 48000 });
    expect(files.bySndfile('low.ogg')).toMatchObject({ sampleRate: 16000, frames: 16000 });
  });

  it('reads damaged files', async () => {
    files.synthesise('vorbis.ogg', 1.5, '-r', '44100', '-c', '2');
    files.synthesise('source.wav', 0.5, '-r', '48000', '-b', '16', '-c', '1');
    files.run('sndfile-convert', '-opus', 'source.wav', 'damaged.ogg');
    for (const name of ['vorbis.ogg', 'damaged.ogg']) await readDamaged(files.bytes(name));
  });
});

describe.skipIf(!hasTools('oggenc', 'ogginfo', 'sox'))('Ogg facts against the reference tools', () => {
  /** Length in milliseconds as ogginfo prints it, and what it says of the stream. */
  function byOgginfo(name: string) {
    const text = files.run('sh', '-c', `LC_ALL=C ogginfo ${name} || true`);
    const [, minutes, seconds] = /Playback length: (\d+)m:([\d.]+)s/.exec(text) ?? [];
    const number = (label: string) => Number(new RegExp(`${label}: (\\d+)`).exec(text)?.[1]);
    return {
      milliseconds: Number(minutes) * 60_000 + Number(seconds) * 1000,
      shown: { sampleRate: number('Rate'), channels: number('Channels') },
    };
  }

  it.each(['-1', '3', '10'])('agrees with ogginfo on a file of quality %s', async (quality) => {
    files.synthesise('source.wav', 3.21, '-r', '32000', '-b', '16', '-c', '2');
    files.run('oggenc', '-Q', '-q', quality, '-t', 'Tone', 'source.wav', '-o', 'reference.ogg');
    const facts = await files.facts('reference.ogg');
    const { milliseconds, shown } = byOgginfo('reference.ogg');
    expect(facts).toMatchObject({ ...shown, ...files.bySox('source.wav'), problems: [] });
    expect(Math.abs(facts.lengthSeconds * 1000 - milliseconds)).toBeLessThanOrEqual(1);
  });

  it('counts what is whole of a file that is cut short, as ogginfo does', async () => {
    files.synthesise('source.wav', 6, '-r', '44100', '-b', '16', '-c', '2');
    files.run('oggenc', '-Q', 'source.wav', '-o', 'whole.ogg');
    const whole = files.bytes('whole.ogg');
    for (const part of [0.55, 0.7, 0.9]) {
      writeFileSync(files.path('cut.ogg'), whole.slice(0, Math.floor(whole.length * part)));
      const facts = await files.facts('cut.ogg');
      expect(facts.problems.map((problem) => problem.kind)).toEqual(['cut-short']);
      expect(facts.frames).toBeGreaterThan(0);
      const { milliseconds } = byOgginfo('cut.ogg');
      expect(Math.abs(facts.lengthSeconds * 1000 - milliseconds)).toBeLessThanOrEqual(1);
    }
  });
});
