import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeMidi } from 'midi-file';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { createPlayer } from '../../../server/playing/player/createPlayer';
import { readSfz } from '../../../server/sfz/read';
import type { Quality } from '../../../server/sound/interpolation/interpolator';
import { soundOf } from '../../../server/sound/program/soundOf';
import type { VoiceEngine } from '../../../server/sound/voiceEngine';
import { createVoiceEngine } from '../../../server/sound/voiceEngine';
import { Generator, soundFontOfZones } from '../../standards/tools/soundFontFile';
import { quantile } from '../compare';
import type { AddRow } from '../table';
import { milliseconds } from '../table';

const rate = 48000;
const voices = 256;
const blockFrames = 128;
const sample = Array.from({ length: 96000 }, (_, at) => Math.round(3000 * Math.sin(at * 0.05)));
const moving = 'cutoff=2000 fileg_depth=1200 fileg_decay=3 pitchlfo_freq=5 pitchlfo_depth=20';

/** An engine on which so many voices of one looped sample sound, each a cent from the next. */
function sounding(quality: Quality, channels: number, opcodes: string): VoiceEngine {
  const loop = 'loop_mode=loop_continuous loop_start=8 loop_end=95991';
  const regions = Array.from(
    { length: voices },
    (_, at) => `<region> sample=a.wav tune=${(at % 198) - 99} ${loop} ${opcodes}`,
  );
  const instrument = readSfz(regions.join('\n'), { path: 'a.sfz' });
  const engine = createVoiceEngine(soundOf(instrument), createPlayer(playableInstrument(instrument)), {
    sampleRate: rate,
    quality,
    mostVoices: voices,
    makesVoicesFirst: true,
  });
  const values = Float32Array.from(sample, (value) => value / 32768);
  engine.addSample(
    0,
    Array.from({ length: channels }, () => values.slice()),
    rate,
  );
  engine.noteOn(60, 100);
  return engine;
}

/**
 * Seconds of the processor that a second of sound takes, so that other work on the machine does not count: the median of five
 * parts, as other work and what JavaScript still compiles fall into some.
 */
function costOf(engine: VoiceEngine, seconds: number): number {
  const left = new Float32Array(blockFrames);
  const right = new Float32Array(blockFrames);
  const run = (count: number) => {
    for (let block = 0; block < count; block++) engine.process(left, right);
  };
  run(1000);
  const costs = Array.from({ length: 5 }, () => {
    const before = process.cpuUsage();
    run((seconds * rate) / blockFrames / 5);
    const { user, system } = process.cpuUsage(before);
    return ((user + system) / 1e6 / seconds) * 5;
  });
  return quantile(costs);
}

/**
 * The same for as many voices of fluidsynth on the same sample, reading by so many points, starting it taken off; `undefined`
 * where it is not there.
 */
function fluidsynthCost(seconds: number, points: 4 | 7): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'voices-'));
  try {
    const zones = Array.from({ length: voices }, (_, at) => [[Generator.fineTune, (at % 198) - 99] as const]);
    writeFileSync(join(folder, 'a.sf2'), soundFontOfZones(sample, rate, zones));
    writeFileSync(join(folder, 'points.conf'), `interp ${points}\n`);
    const spent = (length: number): number | undefined => {
      const track = [
        { deltaTime: 0, type: 'setTempo' as const, microsecondsPerBeat: 1_000_000, meta: true as const },
        { deltaTime: 0, type: 'noteOn' as const, channel: 0, noteNumber: 60, velocity: 100 },
        { deltaTime: length * 1000, type: 'noteOff' as const, channel: 0, noteNumber: 60, velocity: 0 },
        { deltaTime: 0, type: 'endOfTrack' as const, meta: true as const },
      ];
      const header = { format: 0 as const, numTracks: 1, ticksPerBeat: 1000 };
      writeFileSync(join(folder, 'a.mid'), Uint8Array.from(writeMidi({ header, tracks: [track] })));
      const command = `fluidsynth -niq -R 0 -C 0 -g 0.05 -r ${rate} -T raw -O float -o synth.polyphony=4096 -o synth.default-soundfont=/nonexistent -f points.conf -F /dev/null a.sf2 a.mid && times`;
      const { stdout, status } = spawnSync('bash', ['-c', command], { cwd: folder, encoding: 'utf8' });
      // The second line: user and system time of what the shell started.
      const parts = /(\d+)m([\d.]+)s (\d+)m([\d.]+)s\s*$/.exec(stdout);
      return status === 0 && parts
        ? Number(parts[1]) * 60 + Number(parts[2]) + Number(parts[3]) * 60 + Number(parts[4])
        : undefined;
    };
    const short = spent(1);
    const long = spent(1 + seconds);
    return short === undefined || long === undefined ? undefined : (long - short) / seconds;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Voices that one core plays in time, beside fluidsynth, and the time of single blocks. */
export function measureVoices(add: AddRow): void {
  const row = (what: string, quality: Quality, channels: number, opcodes: string, aim: string): number => {
    const cost = costOf(sounding(quality, channels, opcodes), quality === 'live' ? 8 : 1);
    const remark = `${milliseconds(cost * 1000)} of the processor a second of ${voices}`;
    add({ what, result: `${Math.round(voices / cost)} voices`, aim, remark });
    return cost;
  };
  const live = row('Voices in time on one core, live quality, mono', 'live', 1, '', '≥ 256');
  row('The same, stereo', 'live', 2, '', '≥ 256');
  row('The same, mono, with a moving filter and vibrato', 'live', 1, moving, '≥ 256');
  row('The same, mono, with a loop of 200 frames', 'live', 1, 'loop_start=400 loop_end=599', '≥ 256');
  row('Voices in time on one core, reference quality, mono', 'reference', 1, '', '');
  row('The same, stereo', 'reference', 2, '', '');
  for (const points of [4, 7] as const) {
    const theirs = fluidsynthCost(10, points);
    if (theirs === undefined) continue;
    const remark = `${Math.round(voices / theirs)} voices of fluidsynth`;
    add({
      what: `Voices of live quality (8 points) to those of fluidsynth by ${points} points`,
      result: `× ${(theirs / live).toFixed(2)}`,
      aim: '≥ 1',
      remark,
    });
  }
  addBlocks(add);
}

function addBlocks(add: AddRow): void {
  const engine = sounding('live', 1, '');
  const left = new Float32Array(blockFrames);
  const right = new Float32Array(blockFrames);
  const timesOf = (count: number) =>
    Array.from({ length: count }, () => timeOf(() => engine.process(left, right)));
  // The sample is read to its end and from the start of its loop, four times, before all that is done has been compiled.
  const rows = [
    ['in its first seconds, what other threads compile counted in', timesOf(3000)],
    ['after them', timesOf(1500)],
  ] as const;
  for (const [when, times] of rows) {
    add({
      what: `A block of ${blockFrames} frames, ${voices} live voices, ${when}`,
      result: milliseconds(quantile(times)),
      aim: 'worst ≤ 2.67 ms',
      remark: `p99 ${milliseconds(quantile(times, 0.99))}, worst ${milliseconds(Math.max(...times))}, ${times.length} times`,
    });
  }
}

/**
 * Milliseconds of some work: the time that passes, or that of the processor where that is less. The one counts in what other work
 * takes in between, the other what the other threads of this process do.
 */
function timeOf(work: () => void): number {
  const start = performance.now();
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return Math.min(performance.now() - start, (user + system) / 1000);
}
