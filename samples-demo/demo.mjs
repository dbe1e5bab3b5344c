// The main job, done on the demo instrument: a copied zone table becomes SFZ and instrument XML, what is wrong
// with instruments is said, and the keyboard map is drawn. Installs and builds what is missing first.
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { prepare } from '../test/prepare.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const out = 'out/demo';

function zonewright(title, args, expected = 0) {
  console.log(`\n── ${title}\n$ zonewright ${args.join(' ')}`);
  const { status } = spawnSync(process.execPath, ['dist/cli.js', ...args], { cwd: root, stdio: 'inherit' });
  if (status !== expected) {
    console.error(`The command ended with status ${status}, ${expected} was expected.`);
    process.exit(1);
  }
}

prepare();
mkdirSync(join(root, out), { recursive: true });

const table = 'samples-demo/millrace-chimes/zones.tsv';
const samples = 'samples-demo/millrace-chimes';
zonewright('A copied zone table becomes SFZ', [
  'convert',
  table,
  '--to',
  'sfz',
  '--samples',
  samples,
  '--output',
  `${out}/millrace-chimes.sfz`,
]);
zonewright('… and instrument XML', [
  ...['convert', table, '--to', 'xml', '--samples', samples],
  ...['--output', `${out}/millrace-chimes.instrument.xml`, '--notes', `${out}/notes.md`],
]);
zonewright('What came of it, checked', ['check', out]);
zonewright('The instrument written by hand, checked', ['check', 'samples-demo/millrace-chimes']);
zonewright('A folder with planted faults, checked', ['check', 'samples-demo/faults'], 1);
zonewright('The keyboard map', [
  'map',
  `${out}/millrace-chimes.sfz`,
  '--output',
  `${out}/millrace-chimes.svg`,
]);
zonewright(
  'The instrument in XML of other names, by a vocabulary file; the notes tell what it has no place for',
  [
    ...[
      'convert',
      'samples-demo/millrace-chimes/millrace-chimes.sfz',
      '--to',
      'samples-demo/chime-rack.vocabulary.json',
    ],
    ...['--output', `${out}/chime-rack.xml`, '--notes', `${out}/chime-rack-notes.md`],
  ],
);
zonewright('… and how that text is read, worked out from itself alone', [
  'vocabulary',
  'print',
  `${out}/chime-rack.xml`,
]);
console.log(`\nWritten: ${out}/millrace-chimes.sfz, .instrument.xml, chime-rack.xml, .svg and notes.`);
