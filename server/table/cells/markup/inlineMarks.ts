import { isAudioFileName } from '../../../model/fileNames';
import { fileWords } from '../../../trade/fileWords';
import { withRaisedMarks } from './raisedMarks';

const mayHold = /[<[{`]/;
const comments = /<!--.*?-->|<ref[^>]*>.*?<\/ref>|<ref[^>]*\/>/giu;
const tags =
  /<\/?(?:code|tt|kbd|samp|pre|nowiki|small|big|sub|sup|b|i|u|s|del|strike|em|strong|span|font|center|noinclude|includeonly|var|abbr)(?:\s[^>]*)?>/giu;
const breaks = /<br\s*\/?>/giu;
const wikiLink = /\[\[([^\]|]{1,300})(?:\|([^\]]{0,300}))?\]\]/gu;
const medium = /\{\{:?\s*([^}|]{1,300})(?:\|[^}]{0,300})?\s*\}\}/gu;
const namespace = new RegExp(String.raw`^:?(?:media|image|medium|${fileWords.join('|')})\s*:\s*`, 'iu');
const textLink = /!?\[([^\]]{1,300})\]\(\s*<?([^)\s>]{1,300})>?(?:\s[^)]*)?\)/gu;

/**
 * The text of a cell without the marks inside it: tags such as `<code>` and `<br />`, links in double square brackets or as in Markdown,
 * and comments. Of a link to an audio file the file counts, of any other what it shows.
 */
export function withoutInlineMarks(text: string): string {
  if (!mayHold.test(text)) return text;
  return withRaisedMarks(text)
    .replace(comments, '')
    .replace(breaks, ' ')
    .replace(tags, '')
    .replace(wikiLink, (_, target: string, shown: string | undefined) => linked(target, shown))
    .replace(medium, (whole: string, target: string) =>
      isAudioFileName(target.trim()) ? linked(target, undefined) : whole,
    )
    .replace(textLink, (_, shown: string, target: string) =>
      isAudioFileName(shown) || !isAudioFileName(target) ? shown : target,
    )
    .trim();
}

function linked(target: string, shown: string | undefined): string {
  const file = target.replace(namespace, '').trim();
  if (isAudioFileName(file)) return file;
  return shown?.trim() || file;
}
