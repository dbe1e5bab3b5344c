import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WaveFile } from 'wavefile';
import { measureSamplePitch } from '../../server/audio/measure/measureSample';
import { nodeFiles } from '../../server/workspace/nodeFiles';
import { quantile } from './compare';
import type { MeasuredNote } from './pianoErrors';
import { pianoErrors } from './pianoErrors';
import type { PianoNote } from './pianoFiles';
import { downloadPiano, pianoNotes } from './pianoFiles';

/** As much of each recording as this project listens to. */
const seconds = 2;
/** Each note is measured so often; its shortest time counts, since others on the machine only make it longer. */
const rounds = 3;
/** Methods of aubio, each with its own default window and with one that holds some periods of the lowest keys. */
const aubioMethods = ['yinfft', 'yinfast', 'yin', 'mcomb', 'fcomb', 'schmitt'];
const aubioWindows = [
  ['2048', '256'],
  ['4096', '1024'],
  ['8192', '2048'],
] as const;

/** One tool's answers, with the milliseconds that each note took. */
interface Answers {
  tool: string;
  notes: MeasuredNote[];
  times: number[];
}

const work = mkdtempSync(join(tmpdir(), 'piano-bench-'));
try {
  let folder = process.env.ZONEWRIGHT_PIANO;
  if (process.argv.includes('--download')) {
    folder = mkdtempSync(join(work, 'download-'));
    downloadPiano(folder);
  }
  if (!folder) {
    throw new Error('Name a folder of piano recordings in ZONEWRIGHT_PIANO, or add --download.');
  }
  const notes = pianoNotes(folder, work, seconds);
  if (notes.length === 0) throw new Error(`${folder} holds no recordings named like C4v8.ogg.`);
  const all = [await answersOfOurs(notes)];
  for (const [window, hop] of aubioWindows) {
    for (const method of process.env.ZONEWRIGHT_PIANO_METHODS?.split(',') ?? aubioMethods)
      all.push(answersOfAubio(notes, method, window, hop));
  }
  process.stdout.write(`${tableOf(all)}\n`);
} finally {
  rmSync(work, { recursive: true, force: true });
}

async function answersOfOurs(notes: readonly PianoNote[]): Promise<Answers> {
  const measured: MeasuredNote[] = [];
  const times: number[] = [];
  // The first round warms the process up, as a folder of samples does.
  for (let round = 0; round <= rounds; round++) {
    measured.length = 0;
    for (const [number, { key, path }] of notes.entries()) {
      const start = performance.now();
      const reader = await nodeFiles.open(path);
      if (!reader) throw new Error(`${path} cannot be opened.`);
      const pitch = await measureSamplePitch(reader);
      await reader.close();
      const time = performance.now() - start;
      if (round > 0) times[number] = Math.min(time, times[number] ?? time);
      measured.push({ key, pitch: pitch ? pitch.key + pitch.cents / 100 : Number.NaN });
      if (round === 1 && process.env.ZONEWRIGHT_SHOW_ERRORS) {
        const cents = pitch ? 100 * (pitch.key - key) + pitch.cents : Number.NaN;
        process.stderr.write(
          `${path.split('/').pop()} ${cents.toFixed(2)} ${pitch?.confidence.toFixed(2)}\n`,
        );
      }
    }
  }
  return { tool: 'this project', notes: measured, times };
}

function answersOfAubio(notes: readonly PianoNote[], method: string, window: string, hop: string): Answers {
  const options = ['-p', method, '-B', window, '-H', hop, '-u', 'midi', '-r', '0'];
  const startTime = aubioStartTime(options);
  const times: number[] = [];
  const measured = notes.map(({ key, path }) => {
    let stdout = '';
    let shortest = Number.POSITIVE_INFINITY;
    for (let round = 0; round < rounds; round++) {
      const start = performance.now();
      ({ stdout } = spawnSync('aubiopitch', ['-i', path, ...options], { encoding: 'utf8' }));
      shortest = Math.min(shortest, performance.now() - start);
    }
    times.push(shortest - startTime);
    const found = stdout
      .split('\n')
      .map((line) => Number(line.split(/\s+/)[1]))
      .filter((pitch) => pitch > 0);
    return { key, pitch: found.length > 0 ? quantile(found) : Number.NaN };
  });
  return { tool: `aubio ${method}, ${window}/${hop}`, notes: measured, times };
}

/** What starting aubio takes, by a sound of one hop, so that only its work on the notes is counted. */
function aubioStartTime(options: readonly string[]): number {
  const path = join(work, 'short.wav');
  const wav = new WaveFile();
  wav.fromScratch(1, 48000, '16', new Int16Array(64));
  writeFileSync(path, wav.toBuffer());
  const times = Array.from({ length: 15 }, () => {
    const start = performance.now();
    spawnSync('aubiopitch', ['-i', path, ...options], { encoding: 'utf8' });
    return performance.now() - start;
  });
  return Math.min(...times);
}

function tableOf(all: readonly Answers[]): string {
  const heading =
    '| Tool, window/hop | notes | median | p95 | from curve: median | p95 | between layers: median | p95 | octave errors | in keys 28-96 | 0.5-6 semitones | ms a note |';
  const rows = all.map(({ tool, notes, times }) => {
    const errors = pianoErrors(notes);
    const cells = [
      tool,
      errors.notes,
      ...[
        errors.median,
        errors.p95,
        errors.curveMedian,
        errors.curveP95,
        errors.layersMedian,
        errors.layersP95,
      ].map((cents) => cents.toFixed(2)),
      errors.octaveErrors,
      errors.octaveErrorsInside,
      errors.otherErrors,
      quantile(times).toFixed(1),
    ];
    return `| ${cells.join(' | ')} |`;
  });
  return [heading, heading.replaceAll(/[^|]+/g, '---'), ...rows].join('\n');
}
