import { describe, expect, it } from 'vitest';
import type { Files } from '../../../../server/model/files';
import { playableInstrument } from '../../../../server/playing/playable/makePlayable';
import { readSfz } from '../../../../server/sfz/read';
import { soundOf } from '../../../../server/sound/program/soundOf';
import { notePart } from '../../../../server/sound/render/messages';
import { renderParts } from '../../../../server/sound/render/renderParts';
import { SampleSource } from '../../../../server/sound/samples/sampleSource';
import { chunk, format, readerOf, wave } from '../../audio/byteFiles';

const rate = 44100;

/** A stereo WAV file of 16 bits whose left side is a saw of 1,000 frames and whose right side is its negative. */
function longFile(frames: number, claimed = frames): Uint8Array {
  const head = wave(chunk('fmt ', format(1, 2, rate, 16)), [...chunk('data', [], claimed * 4)]);
  const bytes = new Uint8Array(head.length + frames * 4);
  bytes.set(head);
  const view = new DataView(bytes.buffer);
  view.setUint32(4, bytes.length - 8, true);
  for (let frame = 0; frame < frames; frame++) {
    view.setInt16(head.length + frame * 4, (frame % 1000) * 20, true);
    view.setInt16(head.length + frame * 4 + 2, -(frame % 1000) * 20, true);
  }
  return bytes;
}

function filesOf(contents: Readonly<Record<string, Uint8Array>>): Files & { readonly opened: string[] } {
  const opened: string[] = [];
  return {
    opened,
    stat: async (path) =>
      contents[path] ? { kind: 'file', size: contents[path].length, modified: 0 } : undefined,
    list: async () => Object.keys(contents).map((name) => ({ name, kind: 'file' })),
    open: async (path) => {
      opened.push(path);
      return contents[path] && readerOf(contents[path]);
    },
  };
}

async function render(
  text: string,
  contents: Readonly<Record<string, Uint8Array>>,
  { mostSampleBytes = 1 << 28, hold = 1 }: { mostSampleBytes?: number; hold?: number } = {},
) {
  const instrument = readSfz(text, { path: 'a.sfz' });
  const program = soundOf(instrument);
  const samples = new SampleSource(filesOf(contents));
  const left: number[] = [];
  const right: number[] = [];
  const report = await renderParts(
    { program, playable: playableInstrument(instrument), samples, paths: program.samples },
    [notePart(60, { velocity: 127, holdSeconds: hold })],
    { sampleRate: rate, quality: 'reference', seed: 0, mostSampleBytes },
    (l, r, count) => {
      left.push(...l.subarray(0, count));
      right.push(...r.subarray(0, count));
    },
  );
  await samples.close();
  return { left: left.slice(0, report.frames), right: right.slice(0, report.frames), report };
}

const saw = (frame: number) => ((frame % 1000) * 20) / 32768;

describe('long samples', () => {
  it('come page by page, frame for frame', async () => {
    const frames = 700_000;
    const { left, right, report } = await render('<region> sample=l.wav loop_mode=one_shot', {
      'l.wav': longFile(frames),
    });
    expect(report.frames).toBe(frames);
    expect(left.every((value, at) => value === saw(at))).toBe(true);
    expect(right.every((value, at) => value === -saw(at) || (value === 0 && saw(at) === 0))).toBe(true);
  });

  it('sound the same whatever memory there is for them', async () => {
    const files = { 'l.wav': longFile(600_000), 's.wav': longFile(50_000) };
    const text =
      '<region> sample=l.wav loop_mode=loop_continuous loop_start=100000 loop_end=500000 tune=700\n<region> sample=s.wav loop_mode=one_shot tune=-300';
    const much = await render(text, files, { hold: 12 });
    const little = await render(text, files, { hold: 12, mostSampleBytes: 1 << 20 });
    expect(little.left.length).toBe(much.left.length);
    expect(little.left.every((value, at) => value === much.left[at])).toBe(true);
  });

  it('that end before they say so go on as silence', async () => {
    const { left, report } = await render('<region> sample=l.wav loop_mode=one_shot', {
      'l.wav': longFile(300_000, 600_000),
    });
    expect(left.slice(0, 300_000).every((value, at) => value === saw(at))).toBe(true);
    expect(left.slice(300_000).every((value) => value === 0)).toBe(true);
    expect(report.unreadableSamples).toEqual([]);
  });

  it('that are not there are told', async () => {
    const { report } = await render('<region> sample=gone.wav', {});
    expect(report).toMatchObject({ frames: 0, unreadableSamples: [0] });
  });
});
