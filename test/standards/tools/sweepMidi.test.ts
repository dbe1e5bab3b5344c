import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { sweepOf } from '../../../server/playing/sweep/sweep';
import { sweepMidi } from '../../../server/playing/sweep/sweepMidi';
import { readSfz } from '../../../server/sfz/read';
import { temporaryFolder } from '../../temporaryFolder';
import { hasTools, SoundFiles } from './soundFiles';

// Standard MIDI Files that a sweep is written to, as general tools take them: a synthesizer plays it, and what sounds has to
// start where the sweep says. The layout: MIDI Association, Standard MIDI Files 1.0.

const font = '/usr/share/sounds/sf2/default-GM.sf2';
const rate = 8000;
const folder = temporaryFolder('sweep');
const files = new SoundFiles(folder);

function sweep() {
  const text = `<global> sample=*sine
<region> key=60
<region> key=67 locc1=64
<region> key=72 hibpm=110`;
  const playable = playableInstrument(readSfz(text, { path: 'a.sfz' }));
  return sweepOf(playable, { holdSeconds: 0.4, gapSeconds: 2.6 });
}

/** Times at which sound follows on silence, in seconds: a hundredth of a second above a thousandth of full scale. */
function onsets(samples: Int16Array): number[] {
  const window = rate / 100;
  const times: number[] = [];
  let silent = 0;
  for (let at = 0; at + window <= samples.length; at += window) {
    const isLoud = samples.subarray(at, at + window).some((sample) => Math.abs(sample) > 33);
    if (isLoud && silent > 20) times.push(at / rate);
    silent = isLoud ? 0 : silent + 1;
  }
  return times;
}

describe('a sweep as a Standard MIDI File', () => {
  it('has the header and the end that the standard asks for', () => {
    const bytes = sweepMidi(sweep(), 'Sweep');
    // "MThd", length 6, format 0, one track, 480 steps a quarter note; "MTrk" and its length.
    expect([...bytes.subarray(0, 18)]).toEqual([
      0x4d, 0x54, 0x68, 0x64, 0, 0, 0, 6, 0, 0, 0, 1, 0x01, 0xe0, 0x4d, 0x54, 0x72, 0x6b,
    ]);
    expect(new DataView(bytes.buffer, bytes.byteOffset).getUint32(18)).toBe(bytes.length - 22);
    expect([...bytes.subarray(-3)]).toEqual([0xff, 0x2f, 0]);
  });

  it.skipIf(!hasTools('fluidsynth') || !existsSync(font))(
    'is played by a synthesizer at the times that it says',
    { timeout: 120_000 },
    () => {
      const { strikes } = sweep();
      writeFileSync(join(folder, 'sweep.mid'), sweepMidi(sweep(), 'Sweep'));
      const options = ['-ni', '-q', '-R', '0', '-C', '0', '-r', String(rate), '-T', 'raw', '-O', 's16'];
      const told = files.run('fluidsynth', ...options, '-F', 'sweep.raw', font, 'sweep.mid');
      expect(told).not.toMatch(/error|warning/i);
      const bytes = readFileSync(join(folder, 'sweep.raw'));
      const both = new Int16Array(bytes.buffer, bytes.byteOffset, bytes.length >> 1);
      const heard = onsets(both.filter((_, at) => at % 2 === 0));
      expect(heard).toHaveLength(strikes.length);
      // The synthesizer works in blocks of 64 frames, and a hammer takes its time.
      for (const [at, { seconds }] of strikes.entries())
        expect(Math.abs(heard[at] - seconds)).toBeLessThan(0.03);
    },
  );
});
