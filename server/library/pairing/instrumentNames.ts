import { titleOf } from '../../model/paths';
import { editDistance } from '../../model/text/nearest';
import { fileWords } from '../../trade/fileWords';
import { nameKinds } from '../../trade/names/nameParts';

/** Words that say what a file or folder is for, not which instrument it belongs to, without accents (common practice). */
const plainWords = new Set(
  [
    ...fileWords,
    ...(
      'sample samples smp smpls wav wavs wave waves aif aiff flac ogg audio audiofiles sound sounds recording recordings raw data ' +
      'zone zones zonelist map maps mapping mappings keymap keymaps keymapping table tables list lists sheet sheet1 untitled export exported ' +
      'instrument instruments preset presets patch patches program programs sfz xml misc new final copy tab tabs csv tsv txt text notes stereo mono ' +
      'klange aufnahme aufnahmen zonen zuordnung tabelle tabellen instrumente liste ' +
      'son sons echantillons enregistrements tableau zones muestras sonidos grabaciones tabla zonas ' +
      'campioni suoni registrazioni tabella zone amostras sons gravacoes tabela zonas opnamen tabel probki dzwieki tabela ' +
      'сэмплы звуки записи таблица зоны サンプル 音声 録音 表 采样 录音 샘플 녹음'
    ).split(' '),
  ].map(folded),
);

const layerLabels = nameKinds.map(({ labelOf }) => labelOf);
const orderNumber = /^\(?\d{1,3}\)?(?:\s*[-._)]+\s*|\s+)(?=\D)/u;

/** The name that a file or folder gives an instrument: without order numbers and words such as `zones`; empty where nothing is left. */
export function instrumentName(nameOfFile: string, isFile: boolean): string {
  const title = (isFile ? titleOf(nameOfFile) : nameOfFile).replaceAll('_', ' ').trim();
  const words = title.replace(orderNumber, '').split(/\s+/);
  const isPlain = (word: string) => folded(word) === '' || plainWords.has(folded(word));
  while (words.length > 0 && isPlain(words[words.length - 1])) words.pop();
  while (words.length > 0 && isPlain(words[0])) words.shift();
  return words.join(' ').replace(/^[\s\-–,;]+|[\s\-–,;]+$/g, '');
}

/** Whether a folder is named after a layer, a microphone or what kind of file it holds, so that the instrument is the folder around it. */
export function isPartFolder(name: string): boolean {
  if (instrumentName(name, false) === '') return true;
  const words = name.split(/[\s_.-]+/).filter(Boolean);
  return words.every(
    (word) => /^v?\d{1,3}$/i.test(word) || layerLabels.some((labelOf) => labelOf(word) !== undefined),
  );
}

/** Whether a name is too short to tell people anything, as `vc1`. */
export function isAbbreviation(name: string): boolean {
  const letters = name.replace(/[^\p{L}]/gu, '');
  return /^[\p{ASCII}]*$/u.test(letters) && letters.length < 3;
}

/** Whether a short name may stand for a longer one: its letters are there in the same order, the first one first. */
export function mayStandFor(short: string, long: string): boolean {
  const letters = [...folded(short).replace(/\d/g, '')];
  const whole = folded(long);
  if (letters.length === 0 || whole[0] !== letters[0]) return false;
  let at = 0;
  return letters.every((letter) => {
    at = whole.indexOf(letter, at) + 1;
    return at > 0;
  });
}

/**
 * How much two names of instruments are alike, from 0 to 1 for the same: letter case, accents, signs between words, and
 * `ue` for `ü` make no difference.
 */
export function nameLikeness(one: string, other: string): number {
  const [a, b] = [folded(one), folded(other)];
  if (a === '' || b === '') return 0;
  if (a === b) return 1;
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  if (short.length >= 3 && long.includes(short)) return 0.6 + 0.3 * (short.length / long.length);
  const most = Math.floor(long.length / 4);
  const distance = editDistance(a, b, most);
  return most > 0 && distance <= most ? 0.8 - distance / long.length : 0;
}

/** A name without letter case, accents and signs; both ways to write an umlaut come to one. */
function folded(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .replace(/(?<=[aou])e/g, '');
}
