// Makes the WAV files of the demo instrument and of the planted faults. The same bytes come out every time, and a
// file is written only where it differs. Usage: node samples-demo/make.mjs [folder to write to]
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import wavefile from 'wavefile';

const sampleRate = 22050;
const fullScale = 32767;

/**
 * Partials of a bar with free ends, as multiples of the lowest (Euler-Bernoulli beam: squares of 3.011, 5, 7, 9).
 * Source: Fletcher and Rossing, The Physics of Musical Instruments, chapter on bars: 1, 2.756, 5.404, 8.933.
 */
const barRatios = [1, 2.756, 5.404, 8.933];

/** Keys that were recorded; each bar sounds some cents above its key, which the instrument tunes back. */
const bars = [
  { name: 'C4', key: 60, cents: 0 },
  { name: 'F4', key: 65, cents: 4 },
  { name: 'B4', key: 71, cents: 7 },
  { name: 'F5', key: 77, cents: 0 },
  { name: 'C6', key: 84, cents: 12 },
];

/** A harder stroke is louder, and its felt gives way sooner, so that more of the upper partials sound. */
const dynamics = [
  { name: 'soft', peak: 0.16, brightness: 0.08, contactSeconds: 0.006 },
  { name: 'medium', peak: 0.38, brightness: 0.22, contactSeconds: 0.004 },
  { name: 'loud', peak: 0.78, brightness: 0.5, contactSeconds: 0.002 },
];

const takes = [1, 2];

/** Frequency in hertz in equal temperament, A4 = key 69 = 440 Hz (ISO 16). */
const frequencyOf = (key) => 440 * 2 ** ((key - 69) / 12);

/** Numbers from -1 to 1 that are the same for the same seed (a linear congruential generator modulo 2^32). */
function noise(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 0x80000000 - 1;
  };
}

function struckBar({ frequency, peak, brightness, contactSeconds, seconds, seed }) {
  const random = noise(seed);
  const partials = barRatios
    .map((ratio, number) => ({
      step: (2 * Math.PI * frequency * ratio) / sampleRate,
      // Where exactly the bar is struck differs from take to take.
      level: brightness ** number * (1 + 0.3 * random() * Math.sign(number)),
      decay: (3 + 4 * number) / sampleRate,
      hertz: frequency * ratio,
    }))
    .filter((partial) => partial.hertz < 0.45 * sampleRate);
  const contact = contactSeconds * sampleRate;
  const frames = Math.round(seconds * sampleRate);
  const out = new Float64Array(frames);
  let thump = 0;
  for (let frame = 0; frame < frames; frame++) {
    let value = 0;
    for (const { step, level, decay } of partials)
      value += level * Math.exp(-decay * frame) * Math.sin(step * frame);
    thump += 0.15 * (random() - thump);
    const felt = 0.5 * thump * Math.exp(-frame / (2 * contact));
    const attack = frame < contact ? 0.5 - 0.5 * Math.cos((Math.PI * frame) / contact) : 1;
    const fade = Math.min(1, (frames - 1 - frame) / (0.08 * sampleRate));
    out[frame] = (value + felt * brightness) * attack * fade;
  }
  return scaled(out, peak);
}

/** A bowed bar moves periodically, so its partials are whole multiples; the loop holds whole periods and closes exactly. */
function bowedBar({ frequency, peak }) {
  const loopStart = Math.round(0.2 * sampleRate);
  const periods = Math.round(0.3 * frequency);
  const loopFrames = Math.round((periods * sampleRate) / frequency);
  const frames = loopStart + loopFrames + Math.round(0.1 * sampleRate);
  const out = new Float64Array(frames);
  for (let frame = 0; frame < frames; frame++) {
    const phase = (2 * Math.PI * ((frame % loopFrames) * periods)) / loopFrames;
    let value = 0;
    for (let number = 1; number <= 6 && number * frequency < 0.45 * sampleRate; number++) {
      value += Math.sin(number * phase) / number ** 1.6;
    }
    const attack = Math.min(1, frame / (0.9 * loopStart));
    const fade = Math.min(1, (frames - 1 - frame) / (0.08 * sampleRate));
    out[frame] = value * attack * attack * (3 - 2 * attack) * fade;
  }
  return { samples: scaled(out, peak), loop: { start: loopStart, end: loopStart + loopFrames - 1 } };
}

function scaled(samples, peak) {
  let highest = 0;
  for (const value of samples) highest = Math.max(highest, Math.abs(value));
  return Int16Array.from(samples, (value) => Math.round((value / highest) * peak * fullScale));
}

/** A WAV file with a `smpl` chunk: root key, cents above it, and the loop where there is one. */
function wavOf(samples, key, cents, loop) {
  return wavIn({ rate: sampleRate, depth: '16', channels: [samples] }, key, cents, loop);
}

/** As {@link wavOf}, with another sample rate, bit depth or number of channels. */
function wavIn({ rate, depth, channels }, key, cents, loop) {
  const wav = new wavefile.WaveFile();
  wav.fromScratch(channels.length, rate, depth, channels.length === 1 ? channels[0] : channels);
  Object.assign(wav.smpl, {
    chunkId: 'smpl',
    dwSamplePeriod: Math.round(1e9 / rate),
    dwMIDIUnityNote: key,
    // 0x80000000 stands for 50 cents.
    dwMIDIPitchFraction: Math.round((cents / 50) * 0x80000000),
    dwNumSampleLoops: loop ? 1 : 0,
    loops: loop
      ? [{ dwName: 0, dwType: 0, dwStart: loop.start, dwEnd: loop.end, dwFraction: 0, dwPlayCount: 0 }]
      : [],
  });
  return wav.toBuffer();
}

function* chimes() {
  const folder = 'millrace-chimes/Samples';
  for (const [number, { name, key, cents }] of bars.entries()) {
    for (const [layer, { name: dynamic, ...stroke }] of dynamics.entries()) {
      for (const take of takes) {
        const samples = struckBar({
          ...stroke,
          frequency: frequencyOf(key + cents / 100),
          seconds: 0.8 - 0.06 * number,
          seed: 1000 * key + 10 * layer + take,
        });
        yield [`${folder}/felt-${dynamic}-${name}-${take}.wav`, wavOf(samples, key, cents)];
      }
    }
    const { samples, loop } = bowedBar({ frequency: frequencyOf(key), peak: 0.5 });
    yield [`${folder}/bowed-${name}.wav`, wavOf(samples, key, 0, loop)];
  }
}

/** Two good bars of 4410 frames, two bowed ones with loops, and files with something wrong with them. */
function* faults() {
  const folder = 'faults/Samples';
  const bar = (key) => {
    const stroke = { ...dynamics[1], frequency: frequencyOf(key), seconds: 0.2, seed: key };
    return wavOf(struckBar(stroke), key, 0);
  };
  yield [`${folder}/bar-low.wav`, bar(60)];
  yield [`${folder}/bar-high.wav`, bar(72)];
  yield [`${folder}/bar-spare.wav`, bar(67)];
  for (const [name, key] of [
    ['low', 57],
    ['high', 69],
  ]) {
    const { samples, loop } = bowedBar({ frequency: frequencyOf(key), peak: 0.5 });
    yield [`${folder}/bow-${name}.wav`, wavOf(samples, key, 0, loop)];
  }
  yield [`${folder}/bar-cut.wav`, bar(60).slice(0, 3000)];
  yield [
    `${folder}/bar-note.wav`,
    new TextEncoder().encode('The second take was better. Record it again.\n'),
  ];
}

/** Bars of key 60 whose sound has something wrong with it. */
function* faultySounds() {
  const folder = 'faults/Samples';
  const key = 60;
  const bar = (seconds) => struckBar({ ...dynamics[1], frequency: frequencyOf(key), seconds, seed: key + 1 });
  const shaped = (samples, shape) =>
    Int16Array.from(samples, (value, frame) =>
      Math.max(-fullScale - 1, Math.min(fullScale, Math.round(shape(value, frame)))),
    );
  const short = bar(0.4);
  const whole = bar(0.9);
  const late = new Int16Array(Math.round(0.06 * sampleRate) + short.length);
  late.set(short, late.length - short.length);
  yield [`${folder}/sound-late.wav`, wavOf(late, key, 0)];
  yield [`${folder}/sound-stopped.wav`, wavOf(bar(1.2).slice(0, Math.round(0.55 * sampleRate)), key, 0)];
  const drift = (frame) => Math.max(0, 1 - (whole.length - 1 - frame) / (0.05 * sampleRate));
  const drifting = shaped(whole, (value, frame) => value + 0.015 * fullScale * drift(frame));
  yield [`${folder}/sound-ticking.wav`, wavOf(drifting, key, 0)];
  yield [
    `${folder}/sound-shifted.wav`,
    wavOf(
      shaped(short, (value) => value + 0.08 * fullScale),
      key,
      0,
    ),
  ];
  yield [
    `${folder}/sound-flattened.wav`,
    wavOf(
      shaped(short, (value) => 4 * value),
      key,
      0,
    ),
  ];
  yield [
    `${folder}/sound-soft.wav`,
    wavOf(
      shaped(short, (value) => 0.25 * value),
      key,
      0,
    ),
  ];
  const stereo = { rate: sampleRate, depth: '16' };
  const opposite = shaped(short, (value) => -value);
  yield [`${folder}/sound-opposite.wav`, wavIn({ ...stereo, channels: [short, opposite] }, key, 0)];
  yield [`${folder}/sound-doubled.wav`, wavIn({ ...stereo, channels: [short, short] }, key, 0)];
  const halved = short.filter((_, frame) => frame % 2 === 0);
  yield [
    `${folder}/sound-slow.wav`,
    wavIn({ rate: sampleRate / 2, depth: '16', channels: [halved] }, key, 0),
  ];
  const deep = Int32Array.from(short, (value) => 256 * value);
  yield [`${folder}/sound-deep.wav`, wavIn({ rate: sampleRate, depth: '24', channels: [deep] }, key, 0)];
}

function writeIfDifferent(path, bytes) {
  try {
    if (readFileSync(path).equals(bytes)) return false;
  } catch {
    mkdirSync(dirname(path), { recursive: true });
  }
  writeFileSync(path, bytes);
  return true;
}

const target = process.argv[2] ?? dirname(fileURLToPath(import.meta.url));
let files = 0;
let written = 0;
for (const set of [chimes(), faults(), faultySounds()]) {
  for (const [path, bytes] of set) {
    files++;
    if (writeIfDifferent(join(target, path), bytes)) written++;
  }
}
console.log(`Demo samples: ${files} files, ${written} written, ${files - written} unchanged.`);
