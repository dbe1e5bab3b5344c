import { describe, expect, it } from 'vitest';
import { readOutline } from '../../../server/workspace/samples/sampleOutlines';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';

// The same sound as a WAV file and compressed by the reference encoders of FLAC and Vorbis, by way of sox and ffmpeg.

const folder = temporaryFolder('outline');
const files = new SoundFiles(folder);

describe.skipIf(!hasTools('sox') || !hasTools('ffmpeg'))('the outline of compressed audio', () => {
  it.each([
    ['tone.flac', 1e-4],
    ['tone.ogg', 0.05],
  ])('of %s is that of the sound before', async (name, tolerance) => {
    const fading = ['synth', '2', 'sine', '220', 'fade', 't', '1', '2', '0.5'];
    files.run('sox', '-R', '-n', '-r', '44100', '-b', '16', 'tone.wav', ...fading);
    files.run('ffmpeg', '-v', 'error', '-y', '-i', 'tone.wav', name);
    const plain = await readOutline(readerOf(files.bytes('tone.wav')));
    const found = await readOutline(readerOf(files.bytes(name)));
    expect(found?.frames).toBe(plain?.frames);
    expect(found?.highest.length).toBe(plain?.highest.length);
    // A part of the outline holds several periods, so that reading a part of it gives nearly the whole swing.
    for (const [step, high] of (plain?.highest ?? []).entries()) {
      expect(Math.abs((found?.highest[step] ?? 9) - high)).toBeLessThan(0.02 + tolerance);
      expect(Math.abs((found?.lowest[step] ?? 9) - (plain?.lowest[step] ?? 0))).toBeLessThan(
        0.02 + tolerance,
      );
    }
    expect(Math.max(...(found?.highest ?? []))).toBeGreaterThan(0.5);
  });

  it('is left out where decoding would take long', async () => {
    files.run(
      'ffmpeg',
      '-v',
      'error',
      '-y',
      '-f',
      'lavfi',
      '-i',
      'anullsrc=r=8000:cl=mono',
      '-t',
      '61',
      'long.flac',
    );
    expect(await readOutline(readerOf(files.bytes('long.flac')))).toBeUndefined();
  });
});
