import { namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';

const looked = 1 << 16;
const mostAnswers = 100;
const isQuoted = /^[ \t]*>/;

/** A paragraph that somebody wrote below quoted lines, and where the last of those stands. */
export interface Answer extends Stretch {
  quoted: Stretch;
}

/** The paragraphs between and below the quoted lines of a mail, where all files are named in quoted lines; none for other texts. */
export function answersIn(text: string): Answer[] {
  const found: Answer[] = [];
  let quoted: Stretch | undefined;
  let open: Answer | undefined;
  let hasFiles = false;
  for (const { 0: line, index } of text.slice(0, looked).matchAll(/[^\r\n]*(?:\r\n?|\n|$)/g)) {
    const written = line.trimEnd();
    const stretch = { start: index, end: index + written.length };
    if (isQuoted.test(written)) {
      open = undefined;
      if (/[^>\s]/.test(written)) quoted = stretch;
      hasFiles ||= namesAudioFileIn(written);
    } else if (written.trim() === '') open = undefined;
    else if (namesAudioFileIn(written)) return [];
    else if (open) open.end = stretch.end;
    else if (quoted && found.length < mostAnswers) {
      open = { ...stretch, quoted };
      found.push(open);
    }
  }
  return hasFiles ? found : [];
}
