import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { runCommandLine } from '../../../server/commandLine/run';
import type { Terminal } from '../../../server/commandLine/terminal';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { cacheFolder } from '../../../server/workspace/measuring/cacheFolder';
import { sameThreadMeasurer } from '../../../server/workspace/measuring/measurer';
import { folderWith, run } from './runInFolder';

/** A second of a sine of 997 Hz at full scale, 48,000 frames a second; its loop is of a whole number of periods or not. */
function tone(loopEnd: number): Uint8Array {
  const wav = new wavefile.WaveFile();
  const frames = Float64Array.from({ length: 48000 }, (_, at) => Math.sin((2 * Math.PI * 997 * at) / 48000));
  wav.fromScratch(1, 48000, '32f', frames);
  return withLoop(wav.toBuffer(), 0, loopEnd);
}

/** Adds a `smpl` chunk with one forward loop (Multimedia Programming Interface 1.0; last frame included). */
function withLoop(bytes: Uint8Array, start: number, end: number): Uint8Array {
  const fields = [0, 0, 20833, 60, 0, 0, 0, 1, 0, 0, 0, start, end, 0, 0];
  const chunk = Buffer.alloc(8 + fields.length * 4);
  chunk.write('smpl', 0, 'latin1');
  chunk.writeUInt32LE(fields.length * 4, 4);
  for (const [at, value] of fields.entries()) chunk.writeUInt32LE(value, 8 + at * 4);
  const whole = Buffer.concat([bytes, chunk]);
  whole.writeUInt32LE(whole.length - 8, 4);
  return whole;
}

const lines = (out: string) =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));

describe('sample --measure', () => {
  it('gives levels, loudness and the seams of loops', async () => {
    // 48,000 frames are 997 periods; 12,000 are 249 and a quarter, so the loop jumps from the top of the wave to zero.
    const folder = folderWith({ 'a.wav': tone(47999), 'b.wav': tone(11999) });
    const { out, status } = await run(folder, ['sample', 'a.wav', 'b.wav', '--measure', '--format', 'json']);
    expect(status).toBe(0);
    const [first, second] = lines(out);
    expect(first.pitch.hertz).toBeCloseTo(997, 0);
    // ITU-R BS.1770-5: a 0 dB, 997 Hz sine in one of the front channels reads −3.01 LKFS.
    expect(first.survey.loudness).toBeGreaterThan(-3.11);
    expect(first.survey.loudness).toBeLessThan(-2.91);
    expect(first.survey.peak).toBeCloseTo(1, 2);
    expect(first.survey.frames).toBe(48000);
    expect(first.survey.channelCorrelation).toBeNull();
    expect(first.loopSeams.map((seam: { isAudible: boolean }) => seam.isAudible)).toEqual([false]);
    expect(second.loopSeams.map((seam: { isAudible: boolean }) => seam.isAudible)).toEqual([true]);
  });

  it('has null and nothing where it was not asked for', async () => {
    const folder = folderWith({ 'a.wav': tone(47999) });
    const [plain] = lines((await run(folder, ['sample', 'a.wav', '--format', 'json'])).out);
    expect(plain).toMatchObject({ pitch: null, survey: null, loopSeams: [] });
    const [pitched] = lines((await run(folder, ['sample', 'a.wav', '--pitch', '--format', 'json'])).out);
    expect(pitched).toMatchObject({ pitch: { key: 83 }, survey: null, loopSeams: [] });
  });

  it('says it in words', async () => {
    const folder = folderWith({ 'a.wav': tone(11999) });
    const { out } = await run(folder, ['sample', 'a.wav', '--measure']);
    expect(out).toMatch(/loop forward, frames 0 to 11999, jumps where it closes/);
    expect(out).toMatch(/loudness -3\.0 LUFS/);
    expect(out).toMatch(/peak -?0\.00 dB, offset from zero 0\.00000/);
  });

  it('goes on after a file that cannot be read', async () => {
    const folder = folderWith({ 'a.wav': tone(47999), 'b.wav': 'no audio' });
    const { out, error, status } = await run(folder, ['sample', 'b.wav', 'gone.wav', 'a.wav', '--measure']);
    expect(status).toBe(2);
    expect(out).toContain('a.wav');
    expect(error).toMatch(
      /^zonewright: b\.wav: .+; gone\.wav: there is no such file, or it cannot be read\n$/,
    );
  });
});

describe('what commands find out of samples', () => {
  it('is kept for the next time, unless that is not wanted', async () => {
    const folder = folderWith({ 'a.wav': tone(47999), 'a.sfz': '<region> sample=a.wav key=83\n' });
    const kept = `${folder}/kept`;
    const measured: string[] = [];
    const command = async (...args: string[]) => {
      measured.length = 0;
      const measurer = sameThreadMeasurer(nodeFiles);
      let out = '';
      const terminal: Terminal = {
        folder,
        files: nodeFiles,
        colour: false,
        out: async (text) => {
          out += text;
        },
        error: () => {},
        standardInput: async () => new Uint8Array(),
        writeFile: async () => {},
        makeFolder: async () => {},
        measuring: {
          measurer: () => ({
            ...measurer,
            measure(path, requests, signal) {
              measured.push(...requests.map(({ what }) => what));
              return measurer.measure(path, requests, signal);
            },
          }),
          storage: () => cacheFolder(kept),
        },
      };
      expect(await runCommandLine(args, terminal)).toBe(0);
      return out;
    };
    await command('sample', 'a.wav', '--pitch', '--no-cache');
    expect(measured).toEqual(['pitch']);
    expect(readdirSync(folder)).not.toContain('kept');
    await command('sample', 'a.wav', '--pitch');
    expect(measured).toEqual(['pitch']);
    const first = await command('sample', 'a.wav', '--measure', '--format', 'json');
    expect(measured).toEqual(['survey', 'loopSeam']);
    expect(await command('sample', 'a.wav', '--measure', '--format', 'json')).toBe(first);
    expect(measured).toEqual([]);
    expect(await command('sample', 'a.wav', '--measure', '--format', 'json', '--no-cache')).toBe(first);
    expect(measured).toEqual(['pitch', 'survey', 'loopSeam']);
    await command('check', 'a.sfz');
    expect(measured.filter((what) => what !== 'loopSeam')).toEqual([]);
  });
});
