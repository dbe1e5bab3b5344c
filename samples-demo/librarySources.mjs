// Invents sixty sources of instruments as they lie on a disk: copied tables in several layouts and languages, SFZ, instrument
// XML, XML in three vocabularies, recordings without a table. The same files each time.

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { monoWave, partialsAt } from './monoWave.mjs';

const frames = 6615;
const rate = 22050;
const noteNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];
const noteName = (key) => `${noteNames[key % 12]}${Math.floor(key / 12) - 1}`;

const places = ['Quay', 'Mill', 'Lock', 'Ferry', 'Weir', 'Ford', 'Pier', 'Sluice', 'Delta', 'Spring'];
const things = ['Bell', 'Reed', 'Harp', 'Drum', 'Organ', 'Lute'];
const names = things.flatMap((thing) => places.map((place) => `${place} ${thing}`));

/** Words of headings: sample, low key, high key, root key, tuning. */
const languages = [
  ['Sample', 'Low key', 'High key', 'Root key', 'Tune (cents)'],
  ['Datei', 'Taste von', 'Taste bis', 'Grundton', 'Feinstimmung (Cent)'],
  ['Fichier', 'Note basse', 'Note haute', 'Note de base', 'Accordage (cents)'],
  ['Archivo', 'Tecla baja', 'Tecla alta', 'Nota raíz', 'Afinación (cents)'],
  ['サンプル', '最低キー', '最高キー', 'ルートキー', 'チューン (cents)'],
  ['Файл', 'Нижняя клавиша', 'Верхняя клавиша', 'Основной тон', 'Подстройка (центы)'],
];

/** How rows of cells are written. */
const layouts = [
  { ending: 'tsv', write: (rows) => rows.map((row) => row.join('\t')).join('\n') },
  {
    ending: 'csv',
    write: (rows) => rows.map((row) => row.map((cell) => `"${cell}"`).join(';')).join('\r\n'),
  },
  {
    ending: 'md',
    write: ([head, ...rows]) =>
      [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n'),
  },
  {
    ending: 'html',
    write: (rows) =>
      `<table>${rows.map((row) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join('')}</tr>`).join('\n')}</table>`,
  },
];

/** XML in words of nobody but this scenario. */
const vocabularies = [
  (zones, folder) =>
    `<rack><drawer>${zones.map((one) => `<chime file="${folder}/${one.file}" from="${one.low}" to="${one.high}" pitch="${one.root}" detune="${one.cents}"/>`).join('\n')}</drawer></rack>`,
  (zones, folder) =>
    `<ferry landing="north">${zones.map((one) => `<passenger><sample>${folder}/${one.file}</sample><keys low="${one.low}" high="${one.high}" root="${one.root}"/></passenger>`).join('\n')}</ferry>`,
  (zones, folder) =>
    `<millpond>${zones.map((one) => `<ripple wav="${folder}/${one.file}" lowNote="${noteName(one.low)}" highNote="${noteName(one.high)}" rootNote="${noteName(one.root)}" gain="-3.0"/>`).join('\n')}</millpond>`,
];

/** Writes the sources below a folder; answers how many there are of each kind. */
export function writeSources(folder) {
  const counts = {};
  for (const [at, name] of names.entries()) {
    const kind = kindOf(at);
    counts[kind] = (counts[kind] ?? 0) + 1;
    writeSource(folder, at, name, kind);
  }
  return counts;
}

function kindOf(at) {
  if (at < 26) return 'tables';
  if (at < 38) return 'SFZ';
  if (at < 44) return 'instrument XML';
  if (at < 56) return 'XML of other names';
  return 'recordings alone';
}

function writeSource(folder, at, name, kind) {
  const zones = Array.from({ length: 12 }, (_, number) => {
    const root = 36 + 5 * number;
    const low = number === 0 ? 24 : root - 2;
    return { root, low, high: root + 2, cents: ((at + number) % 7) - 3, file: '' };
  });
  const samples = `recordings/${name}`;
  for (const one of zones) {
    one.file = `${name.toLowerCase().replace(' ', '-')}-${kind === 'recordings alone' ? noteName(one.root) : one.root}.wav`;
    put(join(folder, samples, one.file), tone(440 * 2 ** ((one.root - 69 - one.cents / 100) / 12)));
  }
  const above = `../${samples}`;
  if (kind === 'tables') {
    const layout = layouts[at % layouts.length];
    const rows = zones.map((one) => [one.file, one.low, one.high, one.root, one.cents].map(String));
    put(join(folder, `tables/${name}.${layout.ending}`), `${layout.write([languages[at % 6], ...rows])}\n`);
  } else if (kind === 'SFZ') {
    const lines = zones.map(
      (one) =>
        `<region> sample=${one.file} lokey=${one.low} hikey=${one.high} pitch_keycenter=${one.root} tune=${one.cents}`,
    );
    const text = [
      `// ${name}, by hand`,
      `<control> default_path=${above}/`,
      '<global> ampeg_release=0.4',
      ...lines,
    ];
    put(join(folder, `old/${name}.sfz`), `${text.join('\n')}\n`);
  } else if (kind === 'instrument XML') {
    const regions = zones.map(
      (one) =>
        `    <region sample="${above}/${one.file}" lokey="${one.low}" hikey="${one.high}" pitch_keycenter="${one.root}"/>`,
    );
    put(
      join(folder, `old/${name}.instrument.xml`),
      `<?xml version="1.0"?>\n<instrument>\n  <group label="all">\n${regions.join('\n')}\n  </group>\n</instrument>\n`,
    );
  } else if (kind === 'XML of other names')
    put(join(folder, `old/${name}.xml`), `${vocabularies[at % 3](zones, above)}\n`);
}

/** A decaying sound with some partials. */
function tone(hertz) {
  return monoWave(rate, frames, (at) => {
    const faded = Math.min(1, at / 100, (frames - at) / 500);
    return 6000 * partialsAt(hertz, rate, 4, at) * faded * Math.exp(-at / 4000);
  });
}

function put(path, content) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, content);
}
