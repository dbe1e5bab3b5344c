// Measures speed in one process and prints a table of it beside the aims: npm run bench
// ZONEWRIGHT_BENCH_SFZ=FOLDER adds the SFZ files of a folder.
import { runBundle } from './runBundle.mjs';

await runBundle('main.ts', 'bench');
