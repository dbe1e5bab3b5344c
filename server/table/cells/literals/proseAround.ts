import { namesAudioFileIn } from '../../../model/fileNames';

/** A literal that stands in a text, and the sentences around it. */
export interface ProseAround {
  /** The text with blanks in place of the sentences: all offsets stay. */
  body: string;
  sentences: readonly string[];
}

const mostLines = 60;
const longestLine = 600;
const fence = /^\s*(?:```|~~~)/;
const commentLine = /^\s*(?:\/\/|#|--|\/?\*)/;
/** What sentences do not have, and code does. */
const code =
  /[{}<>[\]]|=>|==|\w\(\)|;\s*$|^\s*(?:for|if|while|def|class|with|else|try)(?!\p{L}).*:\s*$|^\s*(?:function|var|const|let|def|class|local|if|for|while|return|import|export|end)(?![\p{L}' ]*\s\p{L}+\s\p{L}+\s\p{L})/u;
const closing = /[\]}]\s*[,;)]*\s*$|^\s*[\])}]+[,;]*\s*$/;
const fewestWords = 3;

/**
 * Parts sentences before and behind a literal from it, such as `one object per line; "vol" is 0-127` above lines of JSON, and the fences that
 * mark it as code. `isOpening` tells whether a line starts the literal, `isSetting` whether it gives a name a value and belongs to it.
 * `undefined` where there are none, or something else than sentences.
 */
export function proseAround(
  text: string,
  isOpening: (line: string) => boolean,
  isSetting: (line: string) => boolean,
): ProseAround | undefined {
  const lines = linesOf(text);
  const first = lines.slice(0, mostLines).findIndex(({ written }) => isOpening(written));
  if (first < 0) return undefined;
  let last = lines.length - 1;
  while (last > first && !closing.test(lines[last].written) && !namesAudioFileIn(lines[last].written)) last--;
  const around = [...lines.slice(0, first), ...lines.slice(last + 1)].filter(
    ({ written }) => !isSetting(written),
  );
  if (!around.every(({ written }) => isAside(written))) return undefined;
  const others = around.filter(({ written }) => written.trim() !== '' && !commentLine.test(written));
  if (others.length === 0) return undefined;
  let body = '';
  let at = 0;
  for (const { start, written } of others) {
    body += text.slice(at, start) + ' '.repeat(written.length);
    at = start + written.length;
  }
  const sentences = others.map(({ written }) => written.trim()).filter((written) => !fence.test(written));
  return { body: body + text.slice(at), sentences };
}

/** Whether a line is blank, a comment, a fence or a sentence. */
function isAside(line: string): boolean {
  if (line.trim() === '' || fence.test(line) || commentLine.test(line)) return true;
  if (line.length > longestLine || code.test(line) || namesAudioFileIn(line)) return false;
  const words = line.match(/[\p{L}\p{N}]+/gu)?.length ?? 0;
  // Some scripts have no blanks between words.
  return words >= fewestWords || /\p{L}.*[:.!?\u2026]\s*$|[\u3040-\u9fff]{6}/u.test(line);
}

function linesOf(text: string): { start: number; written: string }[] {
  const lines: { start: number; written: string }[] = [];
  let start = 0;
  for (const line of text.split('\n')) {
    lines.push({ start, written: line.replace(/\r$/, '') });
    start += line.length + 1;
  }
  return lines;
}
