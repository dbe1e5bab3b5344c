import fc from 'fast-check';

/** A region of a known instrument, in the terms of the open SFZ format. */
export interface KnownRegion {
  sample: string;
  lokey: number;
  hikey: number;
  pitch_keycenter: number;
  lovel: number;
  hivel: number;
  volume: number;
  pan: number;
  tune: number;
  loop?: readonly [start: number, end: number];
  trigger: 'attack' | 'release';
  /** Whether it is written as switched off. */
  isOff: boolean;
}

/** Names of parameters in one vocabulary. */
type Names = Readonly<
  Record<
    | 'sample'
    | 'low'
    | 'high'
    | 'root'
    | 'soft'
    | 'loud'
    | 'level'
    | 'pan'
    | 'tune'
    | 'loopStart'
    | 'loopEnd'
    | 'trigger',
    string
  >
>;

/** Words that makers of documents could take, in several languages; written without having looked at what is understood. */
const languages: readonly Names[] = [
  named('file lowKey highKey rootKey lowVelocity highVelocity gain pan tune loopStart loopEnd trigger'),
  named('Sample NoteMin NoteMax NoteRoot VelMin VelMax Volume Panorama Detune LoopBegin LoopEnd PlayOn'),
  named(
    'wave bottom-note top-note base-note softest loudest level balance cents loop-from loop-to starts-on',
  ),
  named(
    'audio key_from key_to key_original vel_from vel_to loudness pan_position pitch_shift loop_start loop_end when',
  ),
  named(
    'Datei TasteVon TasteBis Grundton AnschlagVon AnschlagBis Pegel Panorama Stimmung SchleifeStart SchleifeEnde Ausloeser',
  ),
  named(
    'fichier noteMin noteMax noteBase veloMin veloMax niveau panoramique accordage boucleDebut boucleFin declencheur',
  ),
  named(
    'archivo notaMin notaMax notaBase velMin velMax volumen panorama afinacion bucleInicio bucleFin disparo',
  ),
  named('src kLo kHi kRoot vLo vHi amp pan fine lStart lEnd trig'),
];

function named(words: string): Names {
  const [sample, low, high, root, soft, loud, level, pan, tune, loopStart, loopEnd, trigger] =
    words.split(' ');
  return { sample, low, high, root, soft, loud, level, pan, tune, loopStart, loopEnd, trigger };
}

const elements: readonly (readonly [root: string, group: string, region: string])[] = [
  ['instrument', 'layer', 'zone'],
  ['Orchard', 'Row', 'Tree'],
  ['quay', 'berth', 'boat'],
  ['Klang', 'Schicht', 'Probe'],
  ['kit', 'pad', 'hit'],
];
const switches: readonly (readonly [name: string, on: string, off: string])[] = [
  ['enabled', 'true', 'false'],
  ['active', 'yes', 'no'],
  ['muted', '0', '1'],
  ['state', 'on', 'off'],
];
const triggers: readonly (readonly [attack: string, release: string])[] = [
  ['attack', 'release'],
  ['noteOn', 'noteOff'],
  ['key down', 'key up'],
];
const noteNames = 'C C# D D# E F F# G G# A A# B'.split(' ');

/** How a vocabulary writes an instrument. */
export interface Style {
  names: Names;
  elements: (typeof elements)[number];
  values: 'attributes' | 'children' | 'pairs' | 'nested';
  samples: 'path' | 'folder' | 'list' | 'numbered list';
  keys: 'number' | 'C3' | 'C4';
  velocity: 127 | 100 | 1;
  level: 'dB' | 'percent' | 'factor';
  tune: 'cents' | 'semitones';
  /** Whether the unit stands in the name, behind the number, or nowhere. */
  unit: 'name' | 'value' | 'nowhere';
  off: (typeof switches)[number];
  trigger: (typeof triggers)[number];
  isGrouped: boolean;
  hasDistractors: boolean;
  states: boolean;
}

/** Random vocabularies. */
export const styles: fc.Arbitrary<Style> = fc.record({
  names: fc.constantFrom(...languages),
  elements: fc.constantFrom(...elements),
  values: fc.constantFrom('attributes', 'children', 'pairs', 'nested'),
  samples: fc.constantFrom('path', 'folder', 'list', 'numbered list'),
  keys: fc.constantFrom('number', 'C3', 'C4'),
  velocity: fc.constantFrom(127, 100, 1),
  level: fc.constantFrom('dB', 'percent', 'factor'),
  tune: fc.constantFrom('cents', 'semitones'),
  unit: fc.constantFrom('name', 'value', 'nowhere'),
  off: fc.constantFrom(...switches),
  trigger: fc.constantFrom(...triggers),
  isGrouped: fc.boolean(),
  hasDistractors: fc.boolean(),
  states: fc.boolean(),
});

/** Random instruments: keys in rows, two velocity layers, some loops, regions on release and regions that are off. */
export const instruments: fc.Arbitrary<KnownRegion[]> = fc
  .record({
    widths: fc.array(fc.integer({ min: 3, max: 9 }), { minLength: 2, maxLength: 4 }),
    first: fc.integer({ min: 30, max: 50 }),
    split: fc.integer({ min: 30, max: 99 }),
    levels: fc.array(fc.constantFrom(0, -1.5, -3, -6, -12), { minLength: 8, maxLength: 8 }),
    tunes: fc.array(fc.constantFrom(0, 5, -12, 30, -45), { minLength: 8, maxLength: 8 }),
    pans: fc.array(fc.constantFrom(0, -50, 50, 100, -100), { minLength: 8, maxLength: 8 }),
    loops: fc.array(fc.option(fc.integer({ min: 2000, max: 9000 }), { nil: undefined }), {
      minLength: 8,
      maxLength: 8,
    }),
    release: fc.boolean(),
    off: fc.option(fc.integer({ min: 1, max: 7 }), { nil: undefined }),
  })
  .map(({ widths, first, split, levels, tunes, pans, loops, release, off }) => {
    const regions: KnownRegion[] = [];
    let low = first;
    for (const width of widths) {
      for (const layer of [0, 1]) {
        const at = regions.length;
        const loop = loops[at];
        regions.push({
          sample: `s${low}_${layer === 0 ? 'soft' : 'hard'}.wav`,
          lokey: low,
          hikey: low + width - 1,
          pitch_keycenter: low + 1,
          lovel: layer === 0 ? 1 : split + 1,
          hivel: layer === 0 ? split : 127,
          volume: levels[at],
          pan: pans[at],
          tune: tunes[at],
          ...(loop !== undefined && { loop: [loop, loop + 5000] as const }),
          trigger: release && at === widths.length * 2 - 1 ? 'release' : 'attack',
          isOff: at === off,
        });
      }
      low += width;
    }
    return regions;
  });

/** An instrument as XML in a vocabulary. */
export function render(regions: readonly KnownRegion[], style: Style): string {
  const [root, group, region] = style.elements;
  const isListed = style.samples.endsWith('list');
  const paths = [...new Set(regions.map(({ sample }) => sample))];
  const keyOf = (sample: string) => `${style.samples === 'list' ? 'w' : ''}${paths.indexOf(sample) + 11}`;
  const folder = 'Recordings/Take 2';
  const list = isListed
    ? `<recordings folder="${folder}">${paths.map((path) => `<recording mark="${keyOf(path)}" path="${path}"/>`).join('')}</recordings>`
    : '';
  const written = regions.map((one) => {
    const sample = isListed
      ? keyOf(one.sample)
      : style.samples === 'path'
        ? `${folder}/${one.sample}`
        : one.sample;
    return element(region, valuesOf(one, sample, style), style);
  });
  const half = Math.ceil(written.length / 2);
  const rows = style.isGrouped
    ? `<${group}>${written.slice(0, half).join('\n')}</${group}>\n<${group}>${written.slice(half).join('\n')}</${group}>`
    : written.join('\n');
  const distractors = style.hasDistractors
    ? '<reverb impulse="hall.wav" gain="0.3"/><panel picture="back.png" width="400"><knob level="7" name="Tone"/></panel>'
    : '';
  const said = style.states ? `<!-- ${statements(style)} -->` : '';
  const attributes = style.samples === 'folder' ? ` folder="${folder}"` : '';
  return `<?xml version="1.0"?>\n<${root}${attributes}>${said}${distractors}${list}\n${rows}\n</${root}>`;
}

function statements({ keys, velocity, level, tune }: Style): string {
  const octave = keys === 'number' ? '' : `Middle C is ${keys}. `;
  return `${octave}Velocities from 0 to ${velocity}. Levels in ${level === 'factor' ? 'linear' : level}. Tuning in ${tune}.`;
}

function valuesOf(one: KnownRegion, sample: string, style: Style): [string, string][] {
  const { names, keys, unit, off, trigger } = style;
  const key = (number: number) =>
    keys === 'number'
      ? `${number}`
      : `${noteNames[number % 12]}${Math.floor(number / 12) - (keys === 'C3' ? 2 : 1)}`;
  const velocity = (value: number) =>
    style.velocity === 127
      ? `${value}`
      : String(Number(((value / 127) * style.velocity).toFixed(style.velocity === 1 ? 5 : 3)));
  const amplitude = 10 ** (one.volume / 20);
  const level = { dB: one.volume, factor: amplitude, percent: amplitude * 100 }[style.level];
  const tune = style.tune === 'cents' ? one.tune : one.tune / 100;
  const suffix =
    unit === 'name'
      ? {
          level: { dB: 'Db', factor: 'Factor', percent: 'Percent' }[style.level],
          tune: { cents: 'Cents', semitones: 'Semitones' }[style.tune],
        }
      : { level: '', tune: '' };
  const behind =
    unit === 'value'
      ? {
          level: { dB: ' dB', factor: '', percent: '%' }[style.level],
          tune: { cents: ' cents', semitones: ' st' }[style.tune],
        }
      : { level: '', tune: '' };
  return [
    [names.sample, sample],
    [names.low, key(one.lokey)],
    [names.high, key(one.hikey)],
    [names.root, key(one.pitch_keycenter)],
    [names.soft, velocity(one.lovel)],
    [names.loud, velocity(one.hivel)],
    [names.level + suffix.level, `${Number(level.toFixed(6))}${behind.level}`],
    [names.pan, `${one.pan}`],
    [names.tune + suffix.tune, `${Number(tune.toFixed(4))}${behind.tune}`],
    ...(one.loop
      ? ([
          [names.loopStart, `${one.loop[0]}`],
          [names.loopEnd, `${one.loop[1]}`],
        ] as [string, string][])
      : []),
    [names.trigger, trigger[one.trigger === 'attack' ? 0 : 1]],
    [off[0], one.isOff ? off[2] : off[1]],
  ];
}

function element(
  name: string,
  values: readonly (readonly [string, string])[],
  { values: how }: Style,
): string {
  switch (how) {
    case 'attributes':
      return `<${name} ${values.map(([at, value]) => `${at}="${value}"`).join(' ')}/>`;
    case 'children':
      return `<${name}>${values.map(([at, value]) => `<${at}>${value}</${at}>`).join('')}</${name}>`;
    case 'pairs':
      return `<${name}>${values.map(([at, value]) => `<value name="${at}" is="${value}"/>`).join('')}</${name}>`;
    case 'nested': {
      const [first, ...rest] = values;
      return `<${name} ${first[0]}="${first[1]}"><settings ${rest.map(([at, value]) => `${at}="${value}"`).join(' ')}/></${name}>`;
    }
  }
}
