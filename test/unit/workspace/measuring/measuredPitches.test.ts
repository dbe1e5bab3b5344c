import { describe, expect, it } from 'vitest';
import { WaveFile } from 'wavefile';
import { readTableWithSamples } from '../../../../server/workspace/readTableWithSamples';
import { toneAt } from '../../audio/measure/tones';
import { MemoryFiles } from '../memoryFiles';

/** A WAV file of a tone at a key, without a word of its root key. */
function toneFile(key: number): Uint8Array {
  const { samples, sampleRate } = toneAt(key, { seconds: 1 });
  const wav = new WaveFile();
  wav.fromScratch(
    1,
    sampleRate,
    '16',
    Array.from(samples, (value) => Math.round(value * 20_000)),
  );
  return wav.toBuffer();
}

const table = 'Sample\tRoot\tLow\tHigh\none.wav\tA3\tG3\tB3\ntwo.wav\tE4\tC4\tG4\n';
const folders = { path: 'table', samplesFolder: '/w', outputFolder: '/w' };

// Equal temperament with A4 = key 69 = 440 Hz (ISO 16): a sample that sounds key 69 under the name A3 comes from a place
// where middle C is C3.
describe('the octave of a table whose files say nothing of their root keys', () => {
  it.each([
    ['C4', 57, 64],
    ['C3', 69, 76],
    ['C5', 45, 52],
  ])('is that of %s where the samples sound so', async (middleC, first, second) => {
    const files = new MemoryFiles({ '/w/one.wav': toneFile(first), '/w/two.wav': toneFile(second) });
    const { middleC: found, instrument, notes } = await readTableWithSamples(files, table, folders);
    expect(found).toBe(middleC);
    expect([...instrument.regions].map((region) => instrument.rootKey(region))).toEqual([first, second]);
    expect(notes.some(({ message }) => /pitch|sound/.test(message))).toBe(true);
  });

  it('is open where they have no pitch, or cannot be read', async () => {
    const noise = new WaveFile();
    noise.fromScratch(1, 44_100, '16', new Int16Array(44_100));
    const files = new MemoryFiles({ '/w/one.wav': noise.toBuffer(), '/w/two.wav': 'no audio' });
    expect((await readTableWithSamples(files, table, folders)).middleC).toBe('C4');
  });

  it('opens no file for its audio where a person has said it', async () => {
    const files = new MemoryFiles({ '/w/one.wav': toneFile(69), '/w/two.wav': toneFile(76) });
    const { middleC } = await readTableWithSamples(files, table, { ...folders, middleC: 'C5' });
    expect(middleC).toBe('C5');
    expect(files.opened).toHaveLength(2);
  });
});
