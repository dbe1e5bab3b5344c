import type { ColumnMeaning } from '../meaning';

/** One thing that parts of file names can tell. */
export interface NameKind {
  kind: 'layers' | 'articulations' | 'microphones' | 'releases' | 'round_robins';
  /** As a message names it. */
  what: string;
  /** A column of this meaning tells the same. */
  column: ColumnMeaning;
  /** What a part of a file name says; `undefined` where it says nothing of the kind. */
  labelOf: (part: string) => string | undefined;
}

/** Trade words by the label that they stand for (common practice). To know another word, add it here. */
const layers: Readonly<Record<string, readonly string[]>> = {
  ppp: ['ppp'],
  pp: ['pp'],
  p: [
    'p',
    'piano',
    'soft',
    'softly',
    'softer',
    'quiet',
    'gentle',
    'leise',
    'weich',
    'sanft',
    'doux',
    'douce',
    'suave',
    'zacht',
    'tenue',
  ],
  mp: ['mp'],
  mf: ['mf', 'medium', 'med', 'middle', 'mid', 'mezzo', 'mittel', 'moyen', 'medio', 'gemiddeld'],
  f: [
    'f',
    'forte',
    'loud',
    'loudly',
    'louder',
    'hard',
    'harder',
    'strong',
    'laut',
    'hart',
    'stark',
    'fort',
    'forte',
    'fuerte',
    'luid',
  ],
  ff: ['ff'],
  fff: ['fff'],
};

const articulations: Readonly<Record<string, readonly string[]>> = {
  sustain: ['sus', 'sust', 'sustain', 'arco'],
  staccato: ['stac', 'stacc', 'staccato'],
  legato: ['leg', 'legato'],
  pizzicato: ['pizz', 'pizzicato'],
  tremolo: ['trem', 'tremolo'],
  marcato: ['marc', 'marcato'],
  spiccato: ['spic', 'spicc', 'spiccato'],
  mute: ['mute', 'muted', 'palm'],
  harmonics: ['harm', 'harmonic', 'harmonics', 'flageolet'],
  sordino: ['sordino', 'sord', 'sordina', 'sourdine'],
  trill: ['trill', 'triller', 'trille', 'trino'],
  vibrato: ['vib', 'vibrato', 'nonvib', 'nonvibrato'],
  portato: ['portato', 'detache', 'tenuto'],
  glissando: ['gliss', 'glissando', 'portamento'],
};

const microphones: Readonly<Record<string, readonly string[]>> = {
  close: [
    'close',
    'cls',
    'near',
    'spot',
    'contact',
    'nah',
    'nahe',
    'proche',
    'cerca',
    'vicino',
    'perto',
    'dichtbij',
    'blisko',
    'близко',
  ],
  room: ['room', 'rm', 'raum', 'salle', 'sala', 'saal', 'zaal'],
  far: ['far', 'distant', 'fern', 'loin', 'lejos', 'lontano', 'longe', 'veraf', 'daleko', 'далеко'],
  overhead: ['oh', 'overhead', 'overheads'],
  ambient: ['amb', 'ambient', 'ambience', 'hall'],
  direct: ['di', 'direct'],
};

const releases: Readonly<Record<string, readonly string[]>> = {
  release: ['rel', 'release', 'noteoff', 'off'],
};

export const nameKinds: readonly NameKind[] = [
  { kind: 'layers', what: 'velocity layers', column: 'hivel', labelOf: labelIn(layers) },
  { kind: 'round_robins', what: 'round robin positions', column: 'seq_position', labelOf: roundRobin },
  { kind: 'releases', what: 'release samples', column: 'group', labelOf: labelIn(releases) },
  { kind: 'articulations', what: 'articulations', column: 'group', labelOf: labelIn(articulations) },
  { kind: 'microphones', what: 'microphones', column: 'group', labelOf: labelIn(microphones) },
];

function labelIn(words: Readonly<Record<string, readonly string[]>>): (part: string) => string | undefined {
  const labels = new Map(
    Object.entries(words).flatMap(([label, list]) => list.map((word) => [word, label] as const)),
  );
  return (part) => labels.get(part.toLowerCase());
}

function roundRobin(part: string): string | undefined {
  const number = /^(?:rr|robin|take)0*(\d{1,2})$/i.exec(part)?.[1];
  return number === undefined ? undefined : `rr${number}`;
}

/** The parts of the name of a file between signs, without its folders and its ending. */
export function partsOfFileName(path: string): string[] {
  const name = path.slice(-200).replace(/^.*[\\/]/, '');
  return name.replace(/\.\w{1,5}$/, '').split(/[\s_.()[\]-]+/);
}
