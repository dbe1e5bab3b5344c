import { nameKinds } from '../trade/names/nameParts';

/** One word of a file's path, with where it stands: in its name, or in the name of a folder around it. */
export interface NameWord {
  text: string;
  /** In lower case, without accents. */
  plain: string;
  isFolder: boolean;
}

/** What words of names say of a recording (common practice). */
export interface NameMarks {
  articulation?: string;
  microphone?: string;
  isRelease?: true;
  /** A word for how loud it was played, such as `p`, or the number of a layer, such as `v2`. */
  layer?: string;
  turn?: number;
  side?: 'left' | 'right';
}

const labels = new Map(nameKinds.map(({ kind, labelOf }) => [kind, labelOf]));

const layerNumber = /^(?:v|vl|vel|velo|velocity|layer|dyn)0*(\d{1,2})$/;
const turnNumber = /^(?:rr|robin|take|tk|round)0*(\d{1,2})$/;

/** Further words for how loud something was played, by the dynamic that they stand for (common practice). */
const dynamicWords: Readonly<Record<string, string>> = {
  pianissimo: 'pp',
  mezzopiano: 'mp',
  mezzoforte: 'mf',
  fortissimo: 'ff',
  fraco: 'p',
  moderado: 'mf',
  yowaku: 'p',
  tsuyoku: 'f',
  fuerte: 'f',
};

const releaseWords =
  /^(?:rel|release|releases|noteoff|loslassen|relache|suelta|rilascio|soltar|loslaten|keyup)$/;
const leftWords = /^(?:l|left|links|gauche|izq|izquierda|sinistra|esquerda)$/;
const rightWords = /^(?:r|right|rechts|droite|der|derecha|destra|direita)$/;

/** Words of recordings that are no notes of an instrument: of the session, of the room (common practice). */
const sessionWords =
  /^(?:metronome|metronom|click|clicktrack|countin|count|slate|roomtone|tone|reference|ref|silence|spoken|voice|talkback|test|tuning|noise|line)$/;

/** The words of a path: parted by spaces and signs; those of folders come first. The ending is left out. */
export function wordsOfPath(path: string): NameWord[] {
  const parts = path.split('/');
  const name = (parts.pop() ?? '').replace(/\.\w{1,5}$/, '');
  return [...parts.flatMap((folder) => wordsIn(folder, true)), ...wordsIn(name, false)];
}

function wordsIn(text: string, isFolder: boolean): NameWord[] {
  return text
    .replace(/(\p{Ll}{2})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .split(/[\s_.,;()[\]{}+&-]+/)
    .filter((word) => word !== '')
    .map((word) => ({ text: word, plain: plainOf(word), isFolder }));
}

/** In lower case, without accents. */
function plainOf(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** What one word says; `undefined` for one that says nothing of the kind. */
export function markOf({ plain }: NameWord): NameMarks | undefined {
  const number = layerNumber.exec(plain)?.[1];
  if (number !== undefined) return { layer: `v${Number(number)}` };
  const turn = turnNumber.exec(plain)?.[1];
  if (turn !== undefined) return { turn: Number(turn) };
  if (releaseWords.test(plain)) return { isRelease: true };
  const dynamic = dynamicWords[plain] ?? labels.get('layers')?.(plain);
  if (dynamic !== undefined) return { layer: dynamic };
  const articulation = labels.get('articulations')?.(plain);
  if (articulation !== undefined) return { articulation: plain };
  const microphone = labels.get('microphones')?.(plain);
  if (microphone !== undefined) return { microphone: plain };
  if (leftWords.test(plain)) return { side: 'left' };
  if (rightWords.test(plain)) return { side: 'right' };
  return undefined;
}

/** Whether the words are those of something that was recorded beside the notes. */
export function isOfSession(words: readonly NameWord[]): boolean {
  const all = words.filter(({ isFolder }) => !isFolder).map(({ plain }) => plain);
  return all.some((word) => sessionWords.test(word)) || sessionWords.test(all.join(''));
}
