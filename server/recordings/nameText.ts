import { dynamicIn, dynamicLetters } from '../trade/dynamics';
import { panWord, triggerWord } from '../trade/languages/cellWords';
import { nameKinds } from '../trade/names/nameParts';

/** One word of a file's path, with where it stands. */
export interface NameWord {
  text: string;
  /** In lower case, without accents. */
  plain: string;
  /** The folder around the file, counted from the outermost one as 0, that has the word in its name; −1 for the file itself. */
  folder: number;
}

/** What words of names say of a recording (common practice). */
export interface NameMarks {
  articulation?: string;
  microphone?: string;
  isRelease?: true;
  /** A word for how loud it was played, such as `p`, or the number of a layer, such as `v2`. */
  layer?: string;
  /** The words that say so, as they stand in the name. */
  layerWords?: string;
  /** The velocities that it is for. */
  velocities?: { low: number; high: number };
  turn?: number;
  side?: 'left' | 'right';
}

const labels = new Map(nameKinds.map(({ kind, labelOf }) => [kind, labelOf]));

const layerNumber = /^(?:v|vl|vel|velo|velocity|layer|lay|dyn)0*(\d{1,3})$/;
const turnNumber = /^(?:rr|robin|take|tk|round)0*(\d{1,2})$/;
/** A range of velocities: the two ends with a sign between them, which is why it is looked for before words are parted. */
const velocityRange =
  /(?<![\p{L}\p{N}])(?:v|vl|vel|velo|velocity)[ _]?(\d{1,3}) ?(?:-|–|_|\.\.|to) ?(\d{1,3})(?!\p{N})/iu;

/** Further words for how loud something was played, by the dynamic that they stand for (common practice). */
const dynamicWords: Readonly<Record<string, string>> = {
  pianissimo: 'pp',
  mezzopiano: 'mp',
  mezzoforte: 'mf',
  fortissimo: 'ff',
  moderado: 'mf',
  yowaku: 'p',
  tsuyoku: 'f',
};
/** Words that say how loud in a table, and which instrument or kind of playing in a name. */
const noDynamics = /^(?:alto|alta|bajo|baixo|normal|normalni|stille|forti|faible|middle)$/;

/** Words for the noise of a key that goes up, beside those that tables have. */
const releaseWords =
  /^(?:noteoff|relache|suelta|keyup|rls|slapp|frigiv|losgelassene?|release\w*|nachklang|abschalt)$/;

/** Words of recordings that are no notes of an instrument: of the session, of the room (common practice). */
const sessionWords =
  /^(?:metronome|metronom|metronomo|click|clicktrack|countin|count|slate|roomtone|tone|reference|ref|silence|spoken|voice|talkback|test|tuning|noise|line|klappe|raumton|ansage|stille|silencio|silenzio|bruit|ruido)$/;

/** The words of a path: parted by spaces and signs; those of folders come first. The ending is left out. */
export function wordsOfPath(path: string): NameWord[] {
  const parts = path.split('/');
  const name = (parts.pop() ?? '').replace(/\.\w{1,5}$/, '');
  return [...parts.flatMap(wordsIn), ...wordsIn(name, -1)];
}

function wordsIn(text: string, folder: number): NameWord[] {
  return (
    text
      .replace(/(\p{Ll}{2})(\p{Lu}\p{Ll})/gu, '$1 $2')
      // `2b` counts twice.
      .replace(/(?<![\p{L}\p{N}])(\d{1,2})([a-d])(?![\p{L}\p{N}])/giu, '$1 $2')
      .split(/[\s_.,;()[\]{}+&-]+/)
      .filter((word) => word !== '')
      .map((word) => ({ text: word, plain: plainOf(word), folder }))
  );
}

/** In lower case, without accents. */
function plainOf(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** A range of velocities in a path, and the path without it. */
export function velocityRangeIn(
  path: string,
): { velocities: { low: number; high: number }; rest: string } | undefined {
  const found = velocityRange.exec(path);
  if (!found) return undefined;
  const [low, high] = [Number(found[1]), Number(found[2])];
  if (low > high || high > 127 || high === 0) return undefined;
  const rest = `${path.slice(0, found.index)} ${path.slice(found.index + found[0].length)}`;
  return { velocities: { low: Math.max(1, low), high }, rest };
}

/** What one word says; `undefined` for one that says nothing of the kind. */
export function markOf({ plain, text }: NameWord): NameMarks | undefined {
  const number = layerNumber.exec(plain)?.[1];
  if (number !== undefined) return { layer: `v${Number(number)}`, layerWords: text };
  const turn = turnNumber.exec(plain)?.[1];
  if (turn !== undefined) return { turn: Number(turn) };
  if (isReleaseWord(plain)) return { isRelease: true };
  const dynamic = dynamicOfWords(plain);
  if (dynamic !== undefined) return { layer: dynamic, layerWords: text };
  const articulation = labels.get('articulations')?.(plain);
  if (articulation !== undefined) return { articulation: plain };
  const microphone = labels.get('microphones')?.(plain);
  if (microphone !== undefined) return { microphone: plain };
  const side = sideOf(plain);
  return side && { side };
}

/** What two words beside one another say of how loud something was played: `very soft`. */
export function markOfTwo(one: NameWord, other: NameWord): NameMarks | undefined {
  if (one.folder !== other.folder) return undefined;
  const dynamic = dynamicOfWords(`${one.plain} ${other.plain}`) ?? dynamicWords[`${one.plain}${other.plain}`];
  return dynamic === undefined ? undefined : { layer: dynamic, layerWords: `${one.text} ${other.text}` };
}

function dynamicOfWords(words: string): string | undefined {
  if (noDynamics.test(words)) return undefined;
  return dynamicWords[words] ?? dynamicLetters[dynamicIn(words)];
}

function isReleaseWord(plain: string): boolean {
  return releaseWords.test(plain) || triggerWord(plain) === 'release';
}

function sideOf(plain: string): NameMarks['side'] {
  const said = plain === 're' || plain === 'm' ? undefined : panWord(plain);
  if (said === 'left' || said === 'right') return said;
  return /^izq$/.test(plain) ? 'left' : /^der$/.test(plain) ? 'right' : undefined;
}

/** Whether a path speaks of a key that goes up. */
export function speaksOfRelease(path: string): boolean {
  return wordsOfPath(path).some(({ plain }) => isReleaseWord(plain));
}

/** Whether the words are those of something that was recorded beside the notes. */
export function isOfSession(words: readonly NameWord[]): boolean {
  const all = words.filter(({ folder }) => folder < 0).map(({ plain }) => plain);
  return all.some((word) => sessionWords.test(word)) || sessionWords.test(all.join(''));
}
