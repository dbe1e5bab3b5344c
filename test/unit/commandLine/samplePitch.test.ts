import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { folderWith, run } from './runInFolder';

/** Half a second of a sine, or of silence. */
function wav(hertz: number): Uint8Array {
  const file = new wavefile.WaveFile();
  const samples = Float64Array.from({ length: 22050 }, (_, frame) =>
    Math.sin((2 * Math.PI * hertz * frame) / 44100),
  );
  file.fromScratch(1, 44100, '32f', samples);
  return file.toBuffer();
}

describe('sample --pitch', () => {
  it('gives hertz, nearest key, cents and confidence; null where nothing sounds', async () => {
    const folder = folderWith({ 'a.wav': wav(446), 'b.wav': wav(0) });
    const { out, error, status } = await run(folder, [
      'sample',
      'a.wav',
      'b.wav',
      '--pitch',
      '--format',
      'json',
    ]);
    expect({ error, status }).toEqual({ error: '', status: 0 });
    const [first, second] = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(first.pitch.hertz).toBeCloseTo(446, 1);
    expect(first.pitch.key).toBe(69);
    // 1200 · log2(446 / 440), A4 = 440 Hz (ISO 16).
    expect(first.pitch.cents).toBeCloseTo(23.45, 0);
    expect(first.pitch.confidence).toBeGreaterThan(0.9);
    expect(second.pitch).toBeNull();
  });

  it('says so in words', async () => {
    const folder = folderWith({ 'a.wav': wav(440), 'b.wav': wav(0) });
    const { out } = await run(folder, ['sample', 'a.wav', 'b.wav', '--pitch']);
    expect(out).toMatch(/pitch 440\.00 Hz, key 69 \(A4\) [+-]0\.0 cents, confidence 1\.00/);
    expect(out).toContain('pitch: none found');
  });
});
