import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { fontsAmong } from '../../../server/soundfont/fontFiles';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { temporaryFolder } from '../../temporaryFolder';
import { run } from '../../unit/commandLine/runInFolder';
import type { Rendering, TestNote } from './fluidsynth';
import {
  debianFont,
  hasDebianFont,
  midiOf,
  powerDb,
  presetsByFluidsynth,
  rate,
  renderByFluidsynth,
  sides,
} from './fluidsynth';
import { hasTools } from './soundFiles';

// The General MIDI font that Debian carries (package fluid-soundfont-gm, MIT licence), read, written again and played before
// and after by fluidsynth, a free player of another team.

const presets = ['0:0', '0:11', '0:24', '0:40', '0:56', '0:73', '0:88', '128:0'];
const keys = [40, 72];
const velocities = [40, 100];
const noteSeconds = 0.5;
const step = 0.8;

const played = presets.flatMap((preset) =>
  keys.flatMap((key) => velocities.map((velocity) => ({ preset, key, velocity }))),
);

const notes: TestNote[] = played.map(({ preset, key, velocity }, at) => {
  const [bank = 0, program = 0] = preset.split(':').map(Number);
  return { at: at * step, seconds: noteSeconds, key, velocity, before: [{ bank, program }] };
});

/** Level of what two renderings differ by against that of the first, in dB. */
function residualDb(a: Rendering, b: Rendering, from: number, to: number): number {
  const part = ({ left, right }: Rendering) =>
    [left, right].map((side) => side.subarray(Math.round(from * rate), Math.round(to * rate)));
  const [first, second] = [part(a), part(b)];
  const [left, right] = first.map((side, at) =>
    side.map((value, frame) => value - (second[at]?.[frame] ?? 0)),
  );
  const difference = { left: left as Float32Array, right: right as Float32Array };
  return powerDb(difference, 0, to - from) - powerDb(a, from, to);
}

describe.skipIf(!hasDebianFont || !hasTools('fluidsynth'))('the General MIDI font of Debian', () => {
  let folder = '';
  beforeAll(() => {
    folder = temporaryFolder('general-midi');
  });

  it('is read with every preset, under the names, banks and programs that fluidsynth finds', async () => {
    const found = await fontsAmong(nodeFiles).at(debianFont);
    if (found.kind !== 'font') throw new Error(JSON.stringify(found));
    const { view } = found;
    const number = (value: number) => String(value).padStart(3, '0');
    expect(
      view.presets.map(({ bank, program, name }) => `${number(bank)}-${number(program)} ${name}`),
    ).toEqual(presetsByFluidsynth(debianFont));
    expect(view.presets).toHaveLength(189);
    for (const preset of view.presets) {
      const { text } = view.text(preset, 'x.sf2', { samplePath: ({ name }) => name, attenuation: 1 });
      expect(text).toMatch(/<region> sample=/);
    }
    // 485 pairs of left and right stand in its list of samples; those that zones play side by side become one file.
    expect([...view.samples.values()].filter(({ use }) => use.samples.length === 2).length).toBeGreaterThan(
      450,
    );
  });

  it('sounds the same when it is written again', async () => {
    const names = presets.map((preset) => `${debianFont}#${preset}`);
    const { status, error } = await run(folder, [
      'convert',
      ...names,
      '--to',
      'sf2',
      '--attenuation',
      '0.4',
      '--output',
      'again.sf2',
    ]);
    expect(error).not.toMatch(/^zonewright: /m);
    expect(status).toBe(0);
    const midi = midiOf(notes);
    const before = renderByFluidsynth(folder, debianFont, midi);
    const after = renderByFluidsynth(folder, join(folder, 'again.sf2'), midi);
    const differences = played.map((_, at) => {
      const [from, to] = [at * step + 0.01, at * step + step];
      return {
        level: Math.abs(powerDb(after, from, to) - powerDb(before, from, to)),
        residual: residualDb(before, after, from, to),
      };
    });
    const share = (holds: (one: (typeof differences)[number]) => boolean) =>
      differences.filter(holds).length / differences.length;
    // Measured over all 189 presets: 94 % of the notes below −100 dB, 99 % below −20 dB; the bounds here are our choice.
    expect(Math.max(...differences.map(({ level }) => level))).toBeLessThan(0.2);
    expect(share(({ residual }) => residual < -100)).toBeGreaterThan(0.8);
    expect(share(({ residual }) => residual < -40)).toBeGreaterThan(0.9);
  });

  it('sounds as loud from our voice as from fluidsynth, note by note', async () => {
    const preset = '0:0';
    const few = notes.filter((_, at) => played[at]!.preset === preset);
    const one = renderByFluidsynth(folder, debianFont, midiOf(few));
    const { status, error } = await run(folder, [
      'render',
      `${debianFont}#${preset}`,
      '--midi',
      'notes.mid',
      '--attenuation',
      '0.4',
      '--quality',
      'live',
      '--float',
      '--output',
      'voice.wav',
    ]);
    expect([status, error.match(/^zonewright: .*refus/m)]).toEqual([0, null]);
    const bytes = readFileSync(join(folder, 'voice.wav'));
    const data = bytes.indexOf('data') + 8;
    const other = sides(
      new Float32Array(
        new Uint8Array(bytes.subarray(data, data + 8 * Math.floor((bytes.length - data) / 8))).buffer,
      ),
    );
    const levels = few.map(
      ({ at }) => powerDb(one, at + 0.01, at + step) - powerDb(other, at + 0.01, at + step),
    );
    // Samples that are panned hard come 1.1 dB louder from fluidsynth; the same for all notes.
    const middle = (Math.max(...levels) + Math.min(...levels)) / 2;
    expect(Math.abs(middle - 1.1)).toBeLessThan(0.2);
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.4);
  });
});
