import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../../unit/commandLine/runInFolder';
import { compared } from '../../unit/comparison/comparedTexts';

const hasSox = spawnSync('sox', ['--version']).status === 0;

/** Two instruments of one region; the sample of the second is made of that of the first by effects of sox. */
function madeBySox(effects: string): string {
  const folder = folderWith({
    'a.sfz': '<region> sample=a.wav key=60 loop_mode=one_shot',
    'b.sfz': '<region> sample=b.wav key=60 loop_mode=one_shot',
  });
  const sox = (line: string) => execFileSync('sox', line.split(' '), { cwd: folder });
  // Other tones left and right, faded so that nothing clicks.
  sox('-D -n -r 44100 -b 24 -c 2 a.wav synth 2 sine 330 synth 2 sine create 330 gain -12');
  sox('-D -n -r 44100 -b 24 left.wav synth 2 pluck 330 gain -9');
  sox('-D -n -r 44100 -b 24 right.wav synth 2 pluck 330 gain -15');
  sox('-D -M left.wav right.wav a.wav');
  sox(`-D a.wav b.wav ${effects}`);
  return folder;
}

// SoX (Debian package sox) makes differences of known size; each is found within 5 % and named by its cause.
describe.skipIf(!hasSox)('differences that another program made', () => {
  it.each([
    ['a gain of −0.5 dB', 'gain -0.5', 'level', 'levelDb', -0.5],
    ['a gain of −0.5 dB, in loudness units', 'gain -0.5', 'level', 'loudnessLu', -0.5],
    ['3 cents', 'speed 3c', 'tuning', 'pitchCents', 3],
    ['5 ms', 'pad 0.005', 'offset', 'startMs', 5],
    ['swapped channels', 'remix 2 1', 'pan', undefined, 0],
  ] as const)('%s', async (_, effects, kind, measure, size) => {
    const { differences } = await compared(madeBySox(effects), 'a.sfz', 'b.sfz');
    expect(differences).toHaveLength(1);
    expect(differences[0].cause).toMatchObject({ kind, a: { line: 1 }, b: { line: 1 } });
    if (measure) expect(Math.abs((differences[0][measure] ?? 0) / size - 1)).toBeLessThan(0.05);
  });

  it('one frame of a loop', async () => {
    const folder = madeBySox('gain 0');
    const region = '<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=20000';
    writeFileSync(join(folder, 'a.sfz'), `${region} loop_end=30000`);
    writeFileSync(join(folder, 'b.sfz'), `${region} loop_end=30001`);
    const { differences } = await compared(folder, 'a.sfz', 'b.sfz');
    expect(differences[0].cause).toMatchObject({
      kind: 'loop',
      message: expect.stringContaining('30000 and 30001'),
    });
  });

  it('a root key one semitone off', async () => {
    const folder = madeBySox('gain 0');
    writeFileSync(
      join(folder, 'b.sfz'),
      '<region> sample=a.wav key=60 pitch_keycenter=61 loop_mode=one_shot',
    );
    const { differences } = await compared(folder, 'a.sfz', 'b.sfz');
    expect(differences[0].cause.kind).toBe('root');
    // A semitone of equal temperament is 100 cents.
    expect(Math.abs(differences[0].pitchCents + 100)).toBeLessThan(5);
  });

  it('nothing, where the audio is the same in another container', async () => {
    const folder = madeBySox('gain 0');
    execFileSync('sox', ['-D', 'a.wav', 'b.aiff'], { cwd: folder });
    writeFileSync(join(folder, 'b.sfz'), '<region> sample=b.aiff key=60 loop_mode=one_shot');
    expect(await compared(folder, 'a.sfz', 'b.sfz')).toMatchObject({
      equal: true,
      rendered: 0,
      worstDb: null,
    });
  });
});
