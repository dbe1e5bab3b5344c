import { letterNoteAt } from './noteLetters';
import { flatWords, letterNote, noteSyllable, sharpWords, syllables } from './notePatterns';

/**
 * The octaves by name, as stems of words in the languages that name them (Helmholtz 1863; the names of octaves in handbooks of music,
 * common practice): the key of the C that each starts with, middle C being that of the one-line octave. To know another word, add it.
 */
const octaves: readonly (readonly [key: number, words: string])[] = [
  [12, 'sub-? ?[ck]ontra|субконтр\\p{L}*'],
  [24, '[ck]ontra|contre-?octave|contro-?ottava|контр(?:а|октав)\\p{L}*'],
  [
    36,
    'great|gro(?:\u00df|ss)(?:e[rns]?)?|grande|groot|grote|bolshoj|больш\\p{L}+|велик\\p{L}+|wielk\\p{L}+|velk\\p{L}+|stora?t?|store|suuri|suuren',
  ],
  [
    48,
    'small|klein(?:e[rns]?)?|petite|piccola|kleine?|мал\\p{L}+|mał\\p{L}+|mal[\u00e9\u00e1]\\p{L}*|lilla|lille|pieni|pienen',
  ],
  [
    60,
    '(?:one|1)-?lined?|once[- ]accented|(?:ein|1)-?gestrichen\\p{L}*|[e\u00e9]{1,2}ngestreept\\p{L}*|razkreśln\\p{L}+|jednočárkovan\\p{L}+|ettstruk\\p{L}+|enstreg\\p{L}+|yksiviivai\\p{L}+|перв\\p{L}+|перш\\p{L}+|1-?[йя]',
  ],
  [
    72,
    '(?:two|2)-?lined?|twice[- ]accented|(?:zwei|2)-?gestrichen\\p{L}*|tweegestreept\\p{L}*|dwukreśln\\p{L}+|dvoučárkovan\\p{L}+|tvåstruk\\p{L}+|tostreg\\p{L}+|kaksiviivai\\p{L}+|втор\\p{L}+|друг\\p{L}+|2-?[йя]',
  ],
  [
    84,
    '(?:three|3)-?lined?|(?:drei|3)-?gestrichen\\p{L}*|driegestreept\\p{L}*|trzykreśln\\p{L}+|tříčárkovan\\p{L}+|trestruk\\p{L}+|trestreg\\p{L}+|kolmiviivai\\p{L}+|трет\\p{L}+|3-?[йя]',
  ],
  [
    96,
    '(?:four|4)-?lined?|(?:vier|4)-?gestrichen\\p{L}*|viergestreept\\p{L}*|czterokreśln\\p{L}+|čtyřčárkovan\\p{L}+|fyrstruk\\p{L}+|firstreg\\p{L}+|neliviivai\\p{L}+|четв[её]рт\\p{L}+|четверт\\p{L}+|4-?[йя]',
  ],
  [
    108,
    '(?:five|5)-?lined?|(?:f\u00fcnf|5)-?gestrichen\\p{L}*|vijfgestreept\\p{L}*|femstruk\\p{L}+|пят\\p{L}+|5-?[йя]',
  ],
];

const semitones: ReadonlyMap<string, number> = new Map(syllables);
const note = String.raw`(${noteSyllable}|${letterNote})(?:[ -]?(?:(${sharpWords}|[\u266f#])|(${flatWords}|\u266d|b(?!\p{L}))))?(?!\p{L})`;
const octaveWord =
  '(?:octave|oktav\\p{L}*|ottava|octaaf|octava|oitava|октав\\p{L}*|oktáv\\p{L}*|oktaw\\p{L}*|oktaav\\p{L}*)';
const octave = `(?:${octaveWord} )?(?:${octaves.map(([, words]) => `(${words})`).join('|')})(?:[ -]?${octaveWord})?`;
const link =
  "(?:[ -](?:of(?: the)?|in(?: the)?|der|im|in der|de la|della|dell[\u2019']|van het|van|i|w|ve)(?= )| \\(|,)? ?";
/** What both of the following have, and hardly any other text: they take long to make ready when they are first asked. */
const anyNote = new RegExp(`(?:^|[ -])${note}`, 'iu');
const nameLast = new RegExp(`^${octave}[ -]${note}`, 'iu');
const nameFirst = new RegExp(`^${note}${link}-?${octave}\\)?(?!\\p{L})`, 'iu');
/** Words of languages in which B is a semitone below H. */
const germanWord =
  /gro(?:\u00df|ss)|klein|gestrichen|kontra|wielk|mał|kreśln|velk|mal[éá]|čárkovan|stor|lill|struk|streg|suuri|pieni|viivai/iu;

/** A key whose octave is named in words at the start of a text, and how long that is. */
export interface SpokenKey {
  key: number;
  length: number;
}

/**
 * Reads a key at the start of a text whose octave is named in words: `great C`, `kleines fis`, `ля-бемоль первой октавы`, `c razkreślne`.
 * `undefined` for anything else.
 */
export function spokenKeyIn(text: string): SpokenKey | undefined {
  if (!anyNote.test(text)) return undefined;
  const first = nameFirst.exec(text);
  const last = first ? undefined : nameLast.exec(text);
  const match = first ?? last;
  if (!match) return undefined;
  const [name = '', sharp, flat] = first ? match.slice(1, 4) : match.slice(-3);
  const words = first ? match.slice(4) : match.slice(1, -3);
  const base = octaves[words.findIndex((word) => word !== undefined)]?.[0];
  const isWorded = sharp !== undefined || flat !== undefined;
  // Beside a word for its sign B is the note below C, as in `B flat`.
  const letters = germanWord.test(match[0]) && !isWorded ? 'german' : 'dutch';
  const natural = semitones.get(name.toLowerCase()) ?? letterNoteAt(name, 0, letters)?.key;
  if (base === undefined || natural === undefined) return undefined;
  const key = base + natural + (sharp === undefined ? 0 : 1) - (flat === undefined ? 0 : 1);
  return key >= 0 && key <= 127 ? { key, length: match[0].length } : undefined;
}

/** Whether a text may hold such a name: it has a word of some length, and is no file. */
export function maySpeakOfOctaves(text: string): boolean {
  return /\p{L}{4}|[1-5]-?(?:[йя]|line|gestr)/u.test(text);
}
