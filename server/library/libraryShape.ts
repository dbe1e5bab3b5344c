import type { ObjectShape, ValueShape } from './shape';

const text = (description: string): ValueShape => ({ kind: 'text', description });
const texts = (description: string): ValueShape => ({
  kind: 'list',
  description,
  of: text('One of them.'),
});

const facts: ValueShape = {
  kind: 'object',
  called: '"facts"',
  description:
    'What goes with an instrument when it is shared. What is not known stays out: nothing is made up.',
  fields: {
    title: text('What people call it. If not set, its name.'),
    maker: text('Who made the recordings or the instrument.'),
    licence: text(
      'The licence of the recordings and texts, as a name or a sentence. Ask the maker before you share.',
    ),
    source: text('Where the recordings come from: an address or a sentence.'),
    credits: texts('Who else is to be named, one a line.'),
    tags: texts('Words by which it can be found.'),
    contact: text('Whom to tell of faults: an address or a sentence.'),
    picture: text('The path of a picture, from the folder of the library file.'),
  },
};

const pack: ValueShape = {
  kind: 'object',
  called: '"pack"',
  description: 'How an instrument is packed to be shared.',
  fields: {
    form: {
      kind: 'choice',
      choices: ['zip', 'folder'],
      description: 'One archive an instrument, or a folder of files.',
    },
    audio: {
      kind: 'choice',
      choices: ['keep', 'flac'],
      description: 'Audio as it is, or as FLAC with the same samples.',
    },
    output: text('The folder that packs are written to.'),
    withoutLicence: {
      kind: 'flag',
      description: 'Packs it although no licence is known. Recordings belong to their makers.',
    },
  },
};

const build: ValueShape = {
  kind: 'object',
  called: '"build"',
  description: 'What every build does beside converting and checking.',
  fields: {
    measure: { kind: 'flag', description: 'Measures the audio: pitch, loudness, seams of loops.' },
    prove: {
      kind: 'flag',
      description: 'Plays each conversion against its source and tells how they differ.',
    },
    pack: { kind: 'flag', description: 'Packs each instrument to be shared, as "pack" says.' },
  },
};

const target: ValueShape = {
  kind: 'textOr',
  description: 'A notation: sfz, xml, sf2, or the path of a vocabulary (*.vocabulary.json).',
  object: {
    kind: 'object',
    called: 'A target',
    description: 'A notation with what goes for it alone.',
    required: ['notation'],
    fields: {
      notation: text('sfz, xml, sf2, or the path of a vocabulary (*.vocabulary.json).'),
      template: text('The path of the template that is filled.'),
      folder: text('The folder below the output that files of this target go to.'),
    },
  },
};

const settings = {
  samples: text(
    'The folder that the sample names of a table are looked up in. If not set, that of the table.',
  ),
  middleC: {
    kind: 'choice',
    choices: ['C3', 'C4', 'C5'],
    description: 'Which note name means key 60 in a table. If not set, it is worked out.',
  },
  targets: { kind: 'list', description: 'What it is converted to. If not set, SFZ.', of: target },
  template: text('The path of a template, for the target that is written in its notation.'),
  facts,
  pack,
} as const satisfies Record<string, ValueShape>;

const pairing: ValueShape = {
  kind: 'object',
  called: '"pairing"',
  description:
    'How sure it is that source, samples and name belong together. Remove it once you have checked.',
  required: ['confidence'],
  fields: {
    confidence: { kind: 'share', description: 'From 0, a guess, to 1, certain.' },
    because: texts('What speaks for it.'),
    doubts: texts('What to check.'),
  },
};

const source: ValueShape = {
  kind: 'object',
  called: 'A source',
  description: 'Files that are instruments each, named after the file.',
  required: ['files'],
  fields: {
    files: texts('Patterns of paths: * for any part of a name, ** for folders, ? for one character.'),
    except: texts('Patterns of those that are no instruments.'),
    ...settings,
  },
};

/** The settings of one instrument in a file beside its source. */
export const besideShape: ObjectShape = {
  kind: 'object',
  called: 'A file of settings',
  description:
    'Settings of the instrument that this file stands beside; they count before those of the library file.',
  fields: { $schema: text('Where this schema stands.'), name: text('What people call it.'), ...settings },
};

const instrument: ValueShape = {
  kind: 'object',
  called: 'An instrument',
  description: 'One instrument. What is set here counts before what is set for the library.',
  required: ['name', 'source'],
  fields: {
    name: text('What people call it; its files are named after it.'),
    source: text(
      'The path of a text, of a SoundFont with #bank:preset after it, or of a folder of recordings.',
    ),
    ...settings,
    pairing,
    leaveOut: { kind: 'flag', description: 'Stays in this file and is not built.' },
  },
};

/** The shape of a library file. */
export const libraryShape: ObjectShape = {
  kind: 'object',
  called: 'A library',
  description:
    'Which instruments a library has and what is made of them. Paths have / and start from the folder of this file.',
  fields: {
    $schema: text('Where this schema stands.'),
    title: text('What people call the library.'),
    output: text('The folder that results go to. If not set, "built".'),
    build,
    ...settings,
    sources: { kind: 'list', description: 'Files that are instruments each, by patterns.', of: source },
    instruments: { kind: 'list', description: 'The instruments, one by one.', of: instrument },
    leftOut: {
      kind: 'list',
      description:
        'What was found and is not known to be an instrument of the library. Nothing is done with it.',
      of: {
        kind: 'object',
        called: 'Something left out',
        description: 'A file or folder.',
        required: ['path', 'because'],
        fields: { path: text('Where it is.'), because: text('Why it is left out.') },
      },
    },
  },
};
