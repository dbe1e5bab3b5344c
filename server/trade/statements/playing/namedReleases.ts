import { bareWord } from '../../languages/spelling';
import { startInWords } from '../../readings/triggerPhrases';
import { triggerOf } from '../../readings/triggers';
import { turningWords } from '../../turningWords';

/** Parts of file names that a text explains as those of samples that sound when the key is let go. */
export interface NamedReleases {
  /** Letters that stand in the names, bare. */
  marks: readonly string[];
  /** Whether they name folders. */
  areFolders: boolean;
  text: string;
}

const longest = 2000;
const longestSentence = 300;
/** Words for a name or a file, or a part at the end or the start of one, without accents. */
const ofNames =
  /(?<!\p{L})(?:(?:file|sample)s?|(?:file ?)?names?|suffix\p{L}*|prefix\p{L}*|ending|dateien?|datei(?:name)?n?|namen?|endung\p{L}*|endend?\p{L}*|fichiers?|echantillons?|noms?|suffixe|archivos?|ficheros?|muestras?|nombres?|sufijo|nome|nomi|campioni|suffisso|ficheiros?|arquivos?|amostras?|sufixo|bestand\p{L}*|achtervoegsel|fil(?:er|en|erne)?|navn\p{L}*|namn\p{L}*|tiedosto\p{L}*|naytte\p{L}*|nime\p{L}*|plik\p{L}*|probk\p{L}*|nazw\p{L}*|soubor\p{L}*|vzork\p{L}*|nazv\p{L}*|nazev|файл\p{L}*|сэмпл\p{L}*|семпл\p{L}*|имен\p{L}*|имя|fajl\p{L}*|nev\p{L}*|dosya\p{L}*|ornek\p{L}*|αρχει\p{L}*|δειγμα\p{L}*)(?!\p{L})|ファイル|サンプル|文件|采样|採樣|파일|샘플/u;
/** A part with the sign that parts it from the rest, a pattern of names, or one in quotation marks. */
const marked =
  /(?<![\p{L}\d/\\])(?:\*?[_-]|\*)(\p{L}[\p{L}\d]{0,14})[_-]?(?:\*|\.\w{2,4})?(?![\p{L}\d])|(?<![\p{L}\d*])(\p{L}[\p{L}\d]{0,14})_(?:\*|(?![\p{L}\d]))|["'\u201c\u201e\u00ab\u2018\x60\u300c]\s?[*_-]{0,2}(\p{L}[\p{L}\d]{0,14})[*_-]{0,2}\s?(?:\.\w{2,4})?["'\u201d\u201c\u00bb\u2019\x60\u300d]/giu;
/** A part behind the word that says where it stands. */
const unmarked =
  /(?<!\p{L})(?:ending (?:in|with|on)|end (?:in|with|on)|ends (?:in|with)|starting with|start with|called|named|marked|suffix|prefix|ending|tag|endung|endend auf|auf|finissant par|en|terminan en|che finiscono (?:in|con)|met)\s+(\p{L}[\p{L}\d]{0,14})(?!\p{L})/giu;
/** A folder with its name, before or behind. */
const folder =
  /(?<!\p{L})(?:folder|directory|dir|subfolder|ordner|verzeichnis|unterordner|dossier|repertoire|carpeta|cartella|pasta|map|mapp(?:en)?|mappe(?:n)?|kansio\p{L}*|folder\p{L}*|katalog\p{L}*|slozk\p{L}*|папк\p{L}*)\s+(?:called\s+|named\s+)?["'\u201c\u201e\u00ab]?([\p{L}\d][\p{L}\d_-]{0,30})\/?["'\u201d\u201c\u00bb]?(?![\p{L}\d])|(?<![\p{L}\d])(?!(?:the|this|that|a|one|same|in|of)\s)["'\u201c\u201e\u00ab]?([\p{L}\d][\p{L}\d_-]{0,30})\/?["'\u201d\u201c\u00bb]?\s+(?:folder|directory|subfolder)(?!\p{L})|(?<![\p{L}\d/.])([\p{L}\d][\p{L}\d_-]{0,30})\/(?=[\s*,:;)]|$)/giu;

function foldersIn(text: string): string[] {
  const small = /^(?:the|this|that|a|one|same|der|die|das|im|le|la|el|il|are|is|of|sind|sont|son|sono)$/u;
  return Array.from(text.matchAll(folder), ([, ...parts]) => bareWord(parts.find((one) => one) ?? '')).filter(
    (one) => one !== '' && !small.test(one),
  );
}

/** What turns a sentence round, or says that it is open. */
const turning = new RegExp(
  String.raw`${turningWords('not', 'none', 'except')}|(?<!\p{L})(?:if|maybe|perhaps|loop\p{L}*|keeps?|on (?:after|past|through)|continu\p{L}+|until|before|weiter\p{L}*|bis|jusqu\p{L}*|hasta|fino)(?!\p{L})`,
  'iu',
);

/** Reads sentences such as `Files ending in _rel are release samples` and `*_off.wav: sounds when the key is let go`. */
export function namedReleasesIn(texts: readonly string[]): NamedReleases[] {
  const found: NamedReleases[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const text = sentence.trim();
      const isShort = text.length <= longestSentence;
      const folders = isShort && saysRelease(text.replace(folder, ' ')) ? foldersIn(text) : [];
      const areFolders = folders.length > 0;
      const marks = areFolders ? folders : isShort ? marksOf(text) : [];
      const isNew = marks.some((mark) => !found.some((one) => one.marks.includes(mark)));
      if (isNew) found.push({ marks, areFolders, text });
    }
  return found;
}

/** Of clauses that explain several parts each counts for itself. */
function marksOf(sentence: string): string[] {
  if (saysRelease(sentence)) return marksIn(sentence);
  return sentence.split(/,(?=\s)/u).flatMap((clause) => (saysRelease(clause) ? marksIn(clause) : []));
}

function saysRelease(sentence: string): boolean {
  if (turning.test(sentence)) return false;
  // What stands in quotation marks or behind a sign is the mark itself.
  const pieces = sentence.replace(marked, ' ').split(/[,:()=]/u);
  const said = pieces.map((piece) => startInWords(piece) ?? triggerOf(piece.trim()));
  return said.includes('release') && !said.includes('attack');
}

function marksIn(sentence: string): string[] {
  const of = (pattern: RegExp) =>
    Array.from(sentence.matchAll(pattern), ([, ...parts]) => bareWord(parts.find((one) => one) ?? ''));
  const signs = of(marked);
  if (signs.length > 0) return /[_*=:]/.test(sentence) || ofNames.test(bareWord(sentence)) ? signs : [];
  return ofNames.test(bareWord(sentence)) ? of(unmarked) : [];
}
