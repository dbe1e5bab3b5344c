import { TextDocument } from 'vscode-languageserver-textdocument';

/** A change of a document as an editor sends it. */
export interface Keystroke {
  range: { start: { line: number; character: number }; end: { line: number; character: number } };
  text: string;
}

/**
 * Keystrokes all over a document: each second one types a digit behind the volume of some region, the one after it
 * takes that digit away again.
 */
export function keystrokesIn(text: string, count: number): Keystroke[] {
  const document = TextDocument.create('file:///a.sfz', 'sfz', 0, text);
  const strokes: Keystroke[] = [];
  for (let pair = 0; strokes.length < count; pair++) {
    const from = Math.floor((text.length * ((pair * 37) % 101)) / 101);
    const value =
      text.indexOf('volume=', from) >= 0 ? text.indexOf('volume=', from) : text.indexOf('volume=');
    const at = value + 'volume='.length + /^-?\d/.exec(text.slice(value + 7, value + 20))![0].length;
    const start = document.positionAt(at);
    const end = { line: start.line, character: start.character + 1 };
    strokes.push({ range: { start, end: start }, text: '1' }, { range: { start, end }, text: '' });
  }
  return strokes.slice(0, count);
}
