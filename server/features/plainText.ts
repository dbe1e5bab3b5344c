/**
 * Markdown as the features write it (CommonMark 0.31: paragraphs, bold, code, links and pictures, escaped signs) in plain
 * text, for who shows no other. Pictures are left out.
 */
export function plainFromMarkdown(markdown: string): string {
  return markdown
    .replace(
      parts,
      (_whole, _ticks, code, words, bold, sign) => code ?? plainWords(words) ?? bold ?? sign ?? '',
    )
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}

/** A code span between equal runs of backticks; a picture; a link; bold text; an escaped sign. */
const parts =
  /(?<!`)(`+) ?(.*?[^`]) ?\1(?!`)|!\[[^\]]*\]\([^)]*\)|\[((?:\\.|[^\]\\])*)\]\(<[^>]*>\)|\*\*(\w+)\*\*|\\([!-/:-@[-`{-~])/g;

function plainWords(words: string | undefined): string | undefined {
  return words?.replace(/\\([!-/:-@[-`{-~])/g, '$1');
}
