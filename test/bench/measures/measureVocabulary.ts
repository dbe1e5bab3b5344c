import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { ValueForm, Vocabulary, VocabularyParameter } from '../../../server/vocabulary/vocabulary';
import { bareScan } from '../bareScan';
import { compare } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

type Parameter = [parameter: string, attribute: string, form: ValueForm];

const number: ValueForm = { kind: 'number' };
const key: ValueForm = { kind: 'key', written: 'number' };
const text: ValueForm = { kind: 'text' };
const frames: ValueForm = { kind: 'position', unit: 'frames' };
const seconds: ValueForm = { kind: 'time', unit: 'seconds' };
const velocity: ValueForm = { kind: 'velocity', most: 127 };
const cents: ValueForm = { kind: 'tuning', unit: 'cents' };
const decibels: ValueForm = { kind: 'level', unit: 'dB' };

/** The attributes of the large instrument under invented names, with forms in which most numbers are scaled. */
const instrument: Parameter[] = [
  ['ampeg_attack', 'attackTime', seconds],
  ['ampeg_release', 'releaseTime', seconds],
  ['amp_veltrack', 'velocityTracking', number],
  ['bend_up', 'bendUpwards', cents],
  ['bend_down', 'bendDownwards', cents],
  ['sw_lokey', 'switchesFrom', key],
  ['sw_hikey', 'switchesTo', key],
];
const way: Parameter[] = [
  ['master_label', 'title', text],
  ['sw_last', 'chosenBy', key],
  ['loprog', 'programsFrom', number],
  ['hiprog', 'programsTo', number],
];
const layer: Parameter[] = [
  ['group_label', 'title', text],
  ['lovel', 'weakestBlow', velocity],
  ['hivel', 'strongestBlow', velocity],
  ['seq_length', 'turns', number],
  ['volume', 'loudness', decibels],
];
const region: Parameter[] = [
  ['sample', 'recording', { kind: 'path' }],
  ['lokey', 'bottomKey', key],
  ['hikey', 'topKey', key],
  ['pitch_keycenter', 'ownKey', key],
  ['seq_position', 'turn', number],
  ['volume', 'quietness', { kind: 'level', unit: 'dB', attenuation: true }],
  ['tune', 'fineTuning', { kind: 'tuning', unit: 'semitones' }],
  ['offset', 'skippedFrames', frames],
  [
    'loop_mode',
    'circling',
    {
      kind: 'words',
      words: { always: 'loop_continuous', never: 'no_loop', loop_continuous: 'loop_continuous' },
    },
  ],
  ['loop_start', 'circleFrom', { ...frames, first: 1 }],
  ['loop_end', 'circleTo', { ...frames, first: 1 }],
  ['pan', 'sidewards', { kind: 'pan', left: -50, centre: 0, right: 50 }],
];
const elements = {
  instrument: 'millWheel',
  master: 'waterCourse',
  group: 'bladeRow',
  region: 'blade',
} as const;

const inAttributes = ([parameter, attribute, form]: Parameter): VocabularyParameter => {
  return { parameter, at: `@${attribute}`, form };
};
const inTexts = ([parameter, attribute, form]: Parameter): VocabularyParameter => {
  return { parameter, at: attribute, form };
};

function vocabularyOf(regionPlace: (one: Parameter) => VocabularyParameter): Vocabulary {
  return {
    name: 'Mill wheel',
    levels: [
      { element: elements.instrument, is: 'instrument', parameters: instrument.map(inAttributes) },
      { element: elements.master, is: 'group', parameters: way.map(inAttributes) },
      { element: elements.group, is: 'group', parameters: layer.map(inAttributes) },
      { element: elements.region, is: 'region', parameters: region.map(regionPlace) },
    ],
  };
}

/** A vocabulary that has a place for all that is in the large instrument. */
export const millWheel = vocabularyOf(inAttributes);

/** The large instrument with elements and attributes under the vocabulary's names. */
function rename(xml: string): string {
  const named = (all: Parameter[]) => new Map(all.map(([parameter, attribute]) => [parameter, attribute]));
  const names = { global: named(instrument), master: named(way), group: named(layer), region: named(region) };
  const renamed = xml
    .replace(/<\/?instrument>\n/g, '')
    .replace(
      /<(global|master|group|region)([^>]*?)(\/?)>/g,
      (_, kind: keyof typeof names, inner: string, end: string) => {
        const element = kind === 'global' ? elements.instrument : elements[kind];
        const attributes = inner.replace(
          / (\w+)=/g,
          (_, name: string) => ` ${names[kind].get(name) ?? name}=`,
        );
        return `<${element}${attributes}${end}>`;
      },
    )
    .replace(/<\/(global|master|group)>/g, (_, kind: 'global' | 'master' | 'group') => {
      return `</${kind === 'global' ? elements.instrument : elements[kind]}>`;
    });
  return flat(renamed);
}

/** The regions of a renamed text with child elements in the place of attributes. */
function inChildElements(xml: string): string {
  return flat(
    xml.replace(/ *<blade ([^>]*)\/>/g, (_, inner: string) => {
      const children = inner.replace(
        / ?(\w+)="([^"]*)"/g,
        (_, name: string, value: string) => `\n      <${name}>${value}</${name}>`,
      );
      return `    <blade>${children}\n    </blade>`;
    }),
  );
}

/** One flat string, as a file read from the disk would be. */
function flat(xml: string): string {
  return Buffer.from(xml, 'latin1').toString('latin1');
}

/** Instrument XML in a vocabulary to effective regions, against a bare scan of the same text. */
export async function measureVocabulary(add: AddRow): Promise<void> {
  const attributes = rename(largeInstrument(10_000, 'xml'));
  await measure(
    add,
    'XML in a vocabulary to regions, attributes, to a bare scan',
    vocabularyOf(inAttributes),
    attributes,
  );
  const elementText = inChildElements(attributes);
  await measure(
    add,
    'XML in a vocabulary to regions, child elements, to a bare scan',
    vocabularyOf(inTexts),
    elementText,
  );
}

async function measure(add: AddRow, what: string, vocabulary: Vocabulary, xml: string): Promise<void> {
  const readXml = readVocabularyXml(vocabulary);
  const read = () => readXml(xml, { path: '/a.xml' });
  const once = read();
  const isWhole =
    once.regions.length === 10_000 &&
    once.findings.length === 0 &&
    once.effectiveParameters(once.headers.count - 1).length >= 20;
  if (!isWhole)
    throw new Error(`The large instrument was not read as it was meant: ${once.findings[0]?.message}`);
  add(ratioRow(what, await compare(read, () => bareScan(xml)), '≤ 3'));
}
