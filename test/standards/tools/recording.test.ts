import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { run } from '../../unit/commandLine/runInFolder';
import { hasTools } from './soundFiles';
import type { Generators } from './soundFontFile';
import { absoluteCents, Generator, soundFontOfZones, timecents } from './soundFontFile';

const rate = 44100;
/** A tone of five partials that swells a little; the loop takes whole periods of the fundamental. */
const periods = 400;
const period = rate / 261.6255653005986;
const frames = Array.from({ length: Math.round(periods * period) + 16 }, (_, at) => {
  const turn = (2 * Math.PI * (at - 8)) / period;
  return Math.round(
    4000 * (Math.sin(turn) + 0.5 * Math.sin(2 * turn) + 0.3 * Math.sin(3 * turn) + 0.2 * Math.sin(5 * turn)),
  );
});
const loopEnd = frames.length - 8;

const range = (generator: number, low: number, high: number) => [generator, low | (high << 8)] as const;
const keys = (low: number, high: number) => range(43, low, high);
const velocities = (low: number, high: number) => range(44, low, high);

const [lower, upper] = [velocities(1, 63), velocities(64, 127)];
/** Regions of the instrument as zones of a SoundFont, and as SFZ. */
const zones: { font: Generators; sfz: string }[] = [
  ...[48, 50, 52, 54].flatMap((key) => [
    { font: [keys(key, key + 1), lower], sfz: `lokey=${key} hikey=${key + 1} hivel=63` },
    { font: [keys(key, key + 1), upper], sfz: `lokey=${key} hikey=${key + 1} lovel=64` },
  ]),
  {
    font: [keys(60, 62), [Generator.release, timecents(0.2)]],
    sfz: 'lokey=60 hikey=62 ampeg_release=0.2',
  },
  { font: [keys(63, 65), [Generator.pan, -200]], sfz: 'lokey=63 hikey=65 pan=-40' },
  { font: [keys(66, 68), [Generator.fineTune, 30]], sfz: 'lokey=66 hikey=68 tune=30' },
  {
    font: [keys(69, 71), [Generator.filterCutoff, absoluteCents(1500)]],
    sfz: 'lokey=69 hikey=71 cutoff=1500',
  },
];
/** Seconds from strike to strike of the sweep, the first after one second. */
const apart = 1;

const sfz = `<global> sample=tone.wav pitch_keycenter=60 loop_mode=loop_continuous loop_start=8 loop_end=${loopEnd - 1} ampeg_release=0.02\n${zones.map((zone) => `<region> ${zone.sfz}`).join('\n')}\n`;

interface Told {
  status: number;
  error: string;
  equal: boolean;
  fits: boolean;
  notes: number;
  found: number;
  startSeconds: number;
  clockPpm: number;
  shared: { levelDb: number; pitchCents: number };
  doubts: { kind: string }[];
  differences: {
    key: number;
    velocity: number;
    regions: { line: number }[];
    differences: { kind: string; measure: string; size: number; place: { line: number; opcode?: string } }[];
  }[];
}

// FluidSynth plays a SoundFont that the test writes; what it records is compared with the SFZ of the same sample.
describe.skipIf(!hasTools('fluidsynth', 'sox'))('a recording that another program made', () => {
  let folder: string;
  beforeAll(async () => {
    folder = temporaryFolder('recording');
    const raw = Int16Array.from(frames);
    writeFileSync(join(folder, 'tone.raw'), Buffer.from(raw.buffer));
    sox(`-r ${rate} -e signed -b 16 -c 1 tone.raw tone.wav`);
    writeFileSync(join(folder, 'a.sfz'), sfz);
    const font = soundFontOfZones(
      frames,
      rate,
      zones.map(({ font }) => font),
    );
    writeFileSync(join(folder, 'a.sf2'), font);
    expect(
      (await run(folder, [...'sweep a.sfz --output a.mid --hold 0.5 --gap 0.5'.split(' ')])).status,
    ).toBe(0);
    const options = '-niq -R 0 -C 0 -g 0.5 -r 44100 -T wav -O float -o synth.default-soundfont=/nonexistent';
    const made = spawnSync('fluidsynth', [...options.split(' '), '-F', 'all.wav', 'a.sf2', 'a.mid'], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(made.stderr).not.toMatch(/error:/);
  });

  function sox(line: string): void {
    execFileSync('sox', line.split(' '), { cwd: folder, stdio: ['ignore', 'ignore', 'ignore'] });
  }

  async function told(recording = 'all.wav', text = sfz, ...more: string[]): Promise<Told> {
    writeFileSync(join(folder, 'b.sfz'), text);
    const { status, out, error } = await run(folder, [
      ...['compare', 'b.sfz', '--recording', recording, '--notes', 'a.mid', '--format', 'json'],
      ...more,
    ]);
    return { status, error, ...(out === '' ? {} : JSON.parse(out)) };
  }

  it('agrees with the instrument: level within 1 dB, pitch within 5 cents, starts within 15 ms', async () => {
    const { status, notes, found, differences, doubts } = await told();
    expect([notes, found]).toEqual([zones.length, zones.length]);
    expect(doubts).toEqual([]);
    expect(differences).toEqual([]);
    expect(status).toBe(0);
  });

  const faults = [
    ['volume=-4', 'level', 'level', 4],
    ['tune=-25', 'tuning', 'pitch', 25],
    ['pitch_keycenter=61', 'root', 'pitch', 100],
    ['ampeg_release=0.6', 'envelope', 'release', undefined],
    ['loop_mode=no_loop end=6000', 'loop', 'loop', undefined],
    ['cutoff=300', 'filter', 'brightness', undefined],
    ['pan=60', 'pan', 'sides', undefined],
    ['delay=0.04', 'offset', 'start', -40],
    ['ampeg_attack=0.3', 'envelope', 'attack', undefined],
  ] as const;

  it('finds faults of all kinds, each in its region, with its place and within 5 % of its size', async () => {
    const lines = sfz.split('\n');
    for (const [at, [opcodes]] of faults.entries()) lines[at + 1] += ` ${opcodes}`;
    const { status, differences } = await told('all.wav', lines.join('\n'));
    expect(status).toBe(1);
    expect(differences.map(({ regions }) => regions[0].line)).toEqual(faults.map((_, at) => at + 2));
    for (const [at, [opcodes, kind, measure, size]] of faults.entries()) {
      const one = differences[at].differences.find((difference) => difference.measure === measure);
      expect(one, opcodes).toMatchObject({ kind, place: { line: at + 2 } });
      if (size !== undefined) expect(Math.abs((one?.size ?? 0) / size - 1), opcodes).toBeLessThan(0.05);
    }
  });

  // What sox does to the recording is none of the instrument's.
  it.each([
    [
      'another rate, silence in front, a lower level and 16 bits',
      '-r 48000 -b 16 -e signed',
      'pad 2.345 gain -7',
      [],
    ],
    ['one channel of 11 kHz', '-r 11025 -c 1', '', ['rate', 'mono']],
    ['all of it 10 cents high', '', 'speed 10c', ['speed']],
  ] as const)('is not put off by %s', async (_, format, effects, doubts) => {
    sox(`all.wav ${format} other.wav ${effects}`.trim().replace(/ +/g, ' '));
    const answer = await told('other.wav');
    expect(answer.doubts.map(({ kind }) => kind)).toEqual(doubts);
    const found = answer.differences.flatMap((one) => one.differences.map(({ kind }) => kind));
    // A narrow band is duller; what is left out is said.
    expect(found.filter((kind) => kind !== 'filter')).toEqual([]);
    expect(answer.fits).toBe(true);
  });

  it('measures the silence in front and the clock', async () => {
    sox('all.wav other.wav pad 2.345 speed 1.0005');
    // FluidSynth starts notes with its blocks of 64 frames, so its own recording is not quite on time either.
    const before = await told();
    const { startSeconds, clockPpm, differences } = await told('other.wav');
    expect(startSeconds).toBeCloseTo((before.startSeconds + 2.345) / 1.0005, 3);
    // 500 millionths faster.
    expect(Math.abs((clockPpm - before.clockPpm) / -500 - 1)).toBeLessThan(0.05);
    expect(differences).toEqual([]);
  });

  it('names notes that are missing', async () => {
    sox(`all.wav part1.wav trim 0 ${1 + 2 * apart - 0.05}`);
    sox(`all.wav part2.wav trim ${1 + 3 * apart - 0.05}`);
    sox(`-n -r 44100 -c 2 -e float -b 32 gap.wav trim 0 ${apart}`);
    sox('part1.wav gap.wav part2.wav other.wav');
    const { differences, doubts } = await told('other.wav');
    expect(doubts.map(({ kind }) => kind)).toEqual(['missing']);
    expect(differences).toHaveLength(1);
    expect(differences[0]).toMatchObject({ regions: [{ line: 4 }], differences: [{ kind: 'missing' }] });
  });

  it.each([
    ['clipped', 'gain 40', 'clipped'],
    ['cut', 'trim 0 9.2', 'cut'],
  ])('says that a recording is %s', async (_, effects, doubt) => {
    sox(`all.wav -b 16 -e signed other.wav ${effects}`);
    const { doubts } = await told('other.wav');
    expect(doubts.map(({ kind }) => kind)).toContain(doubt);
  });

  it('says that a recording is noisy', async () => {
    sox('-R -n -r 44100 -c 2 -e float -b 32 noise.wav synth 16 whitenoise gain -45');
    sox('-m -v 1 all.wav -v 1 noise.wav other.wav');
    const { doubts, fits } = await told('other.wav');
    expect(doubts.map(({ kind }) => kind)).toContain('noise');
    expect(fits).toBe(true);
  });

  it('says that the notes are in another order', async () => {
    const strikes = Array.from({ length: zones.length }, (_, at) => at).reverse();
    for (const at of strikes) sox(`all.wav piece${at}.wav trim ${1 + apart * at} ${apart}`);
    sox(`${strikes.map((at) => `piece${at}.wav`).join(' ')} other.wav`);
    const { doubts, fits, status } = await told('other.wav');
    expect(fits).toBe(false);
    expect(status).toBe(1);
    expect(doubts.map(({ kind }) => kind)).toContain('order');
  });

  it('takes a recording of something else for one that does not fit', async () => {
    sox('-R -n -r 44100 -c 2 other.wav synth 20 pinknoise');
    const { doubts, fits } = await told('other.wav');
    expect(fits).toBe(false);
    expect(doubts.map(({ kind }) => kind)).toContain('fit');
  });

  it('finds the piece in front of ten minutes of silence', async () => {
    sox('all.wav -r 8000 -c 1 -b 16 -e signed other.wav pad 0 600');
    const { found, doubts } = await told('other.wav');
    expect(found).toBe(zones.length);
    expect(doubts.map(({ kind }) => kind)).toEqual(['rate', 'mono']);
  });

  it.each([
    ['silent', '-n -r 44100 -c 2 other.wav trim 0 5', 'silent'],
    ['no audio', '', 'no audio'],
    ['not there', '', 'no such file'],
  ])('says in one line that a recording is %s', async (kind, line, words) => {
    if (line !== '') sox(line);
    else copyFileSync(join(folder, 'a.mid'), join(folder, 'other.wav'));
    const { status, error } = await told(kind === 'not there' ? 'none.wav' : 'other.wav');
    expect(status).toBe(2);
    expect(error).toContain(words);
    expect(error.trim().split('\n')).toHaveLength(1);
  });
});
