import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WaveFile } from 'wavefile';
import { measureSamplePitch } from '../../server/audio/measure/measureSample';
import { nodeFiles } from '../../server/workspace/files/nodeFiles';
import { quantile } from './compare';
import type { MeasuredNote } from './pianoErrors';
import { pianoErrors } from './pianoErrors';
import type { PianoNote } from './pianoFiles';
import { downloadPiano, pianoNotes } from './pianoFiles';

/** As much of each recording as this project listens to. */
const seconds = 2;
/** Methods of aubio, each with its own default window and with one that holds some periods of the lowest keys. */
const aubioMethods = ['yinfft', 'yinfast', 'yin', 'mcomb', 'fcomb', 'schmitt'];
const aubioWindows = [
  ['2048', '256'],
  ['4096', '1024'],
  ['8192', '2048'],
] as const;

/** One tool's answers, with the milliseconds of processor time, reading included, that a note took. */
interface Answers {
  tool: string;
  notes: MeasuredNote[];
  ms: number;
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
  let ms = 0;
  // The first round warms the process up, as a folder of samples does.
  for (let round = 0; round < 2; round++) {
    measured.length = 0;
    const before = process.cpuUsage();
    for (const { key, path } of notes) {
      const reader = await nodeFiles.open(path);
      if (!reader) throw new Error(`${path} cannot be opened.`);
      const pitch = await measureSamplePitch(reader);
      await reader.close();
      measured.push({ key, pitch: pitch ? pitch.key + pitch.cents / 100 : Number.NaN });
      if (round === 1 && process.env.ZONEWRIGHT_SHOW_ERRORS) {
        const cents = pitch ? 100 * (pitch.key - key) + pitch.cents : Number.NaN;
        process.stderr.write(
          `${path.split('/').pop()} ${cents.toFixed(2)} ${pitch?.confidence.toFixed(2)}\n`,
        );
      }
    }
    const { user, system } = process.cpuUsage(before);
    ms = (user + system) / 1000 / notes.length;
  }
  return { tool: 'this project', notes: measured, ms };
}

function answersOfAubio(notes: readonly PianoNote[], method: string, window: string, hop: string): Answers {
  const options = ['-p', method, '-B', window, '-H', hop, '-u', 'midi', '-r', '0'];
  const short = join(work, 'short.wav');
  const wav = new WaveFile();
  wav.fromScratch(1, 48000, '16', new Int16Array(64));
  writeFileSync(short, wav.toBuffer());
  // Starting is measured by a sound of next to nothing, so that only the work on the notes is counted.
  const starting = runAubio(
    notes.map(() => short),
    options,
  );
  const { texts, ms } = runAubio(
    notes.map(({ path }) => path),
    options,
  );
  const measured = notes.map(({ key }, number) => {
    const found = texts[number]
      .split('\n')
      .map((line) => Number(line.split(/\s+/)[1]))
      .filter((pitch) => pitch > 0);
    return { key, pitch: found.length > 0 ? quantile(found) : Number.NaN };
  });
  return {
    tool: `aubio ${method}, ${window}/${hop}`,
    notes: measured,
    ms: (ms - starting.ms) / notes.length,
  };
}

/** What aubio prints for each file, and the processor time of all in milliseconds, by the shell that starts them. */
function runAubio(paths: readonly string[], options: readonly string[]): { texts: string[]; ms: number } {
  const loop = `TIMEFORMAT='%3U %3S'; time for f; do aubiopitch -i "$f" ${options.join(' ')} 2>/dev/null; echo ---; done`;
  const { stdout, stderr } = spawnSync('bash', ['-c', loop, 'bash', ...paths], {
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const [user = 0, system = 0] = stderr.trim().split(/\s+/).map(Number);
  return { texts: stdout.split('---\n').slice(0, paths.length), ms: 1000 * (user + system) };
}

function tableOf(all: readonly Answers[]): string {
  const heading =
    '| Tool, window/hop | notes | median | p95 | from curve: median | p95 | between layers: median | p95 | octave errors | in keys 28-96 | 0.5-6 semitones | ms a note |';
  const rows = all.map(({ tool, notes, ms }) => {
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
      ms.toFixed(1),
    ];
    return `| ${cells.join(' | ')} |`;
  });
  return [heading, heading.replaceAll(/[^|]+/g, '---'), ...rows].join('\n');
}
