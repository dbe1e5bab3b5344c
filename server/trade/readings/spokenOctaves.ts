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

const syllables: Readonly<Record<string, number>> = {
  ...{ до: 0, ре: 2, ми: 4, фа: 5, соль: 7, ля: 9, си: 11 },
  ...{ do: 0, ut: 0, re: 2, ré: 2, mi: 4, fa: 5, sol: 7, la: 9, si: 11 },
  ...{ c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, h: 11 },
};
const note = String.raw`(соль|до|ре|ми|фа|ля|си|sol|do|ut|r[eé]|mi|fa|la|si|[a-h])((?:is|es|s)|[ -]?(?:sharp|di[eè]se|diesis|sostenido|kruis|диез|♯|#)|[ -]?(?:flat|b[eé]mol(?:le)?|mol|бемоль|♭|b(?!\p{L})))?(?!\p{L})`;
const octaveWord =
  '(?:octave|oktav\\p{L}*|ottava|octaaf|octava|oitava|октав\\p{L}*|oktáv\\p{L}*|oktaw\\p{L}*|oktaav\\p{L}*)';
const octave = `(?:${octaveWord} )?(?:${octaves.map(([, words]) => `(${words})`).join('|')})(?:[ -]?${octaveWord})?`;
const link =
  "(?:[ -](?:of(?: the)?|in(?: the)?|der|im|in der|de la|della|dell[\u2019']|van het|van|i|w|ve)(?= )| \\(|,)? ?";
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
  const first = nameFirst.exec(text);
  const last = first ? undefined : nameLast.exec(text);
  const match = first ?? last;
  if (!match) return undefined;
  const names = first ? match.slice(1, 3) : match.slice(-2);
  const words = first ? match.slice(3) : match.slice(1, -2);
  const base = octaves[words.findIndex((word) => word !== undefined)]?.[0];
  const letter = names[0]?.toLowerCase() ?? '';
  const sign = names[1]?.toLowerCase() ?? '';
  const natural = letter === 'b' ? (germanWord.test(match[0]) ? 10 : 11) : syllables[letter];
  if (base === undefined || natural === undefined) return undefined;
  const step = sign === '' ? 0 : /is|sharp|di|sost|kruis|диез|♯|#/.test(sign) ? 1 : -1;
  const key = base + natural + step;
  return key >= 0 && key <= 127 ? { key, length: match[0].length } : undefined;
}

/** Whether a text may hold such a name: it has a word of some length, and is no file. */
export function maySpeakOfOctaves(text: string): boolean {
  return /\p{L}{4}|[1-5]-?(?:[йя]|line|gestr)/u.test(text);
}
