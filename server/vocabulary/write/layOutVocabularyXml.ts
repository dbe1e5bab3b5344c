import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { FormatStyle } from '../../model/formatStyle';
import type { Instrument } from '../../model/instrument';
import { mainSpan } from '../../model/text/span';
import type { Stretch } from '../../model/text/stretch';
import { spaceEndAt } from '../../xml/scan/characters';
import type { XmlHandler } from '../../xml/scan/handler';
import { scanXml } from '../../xml/scan/scan';

/**
 * The edits that indent each tag and comment that starts a line by the elements around it; the further lines of a tag
 * move along. What stands in a line, and text between tags, stay as they are. See `Notation.layOut`.
 */
export function layOutInVocabulary(instrument: Instrument, style: FormatStyle, near?: Stretch): TextEdit[] {
  const text = instrument.sources[0]?.text ?? '';
  const layout = new Indentation(text, style.indentation);
  scanXml(text, layout);
  return near
    ? layout.edits.filter(({ start, end }) => end >= near.start && start <= near.end)
    : layout.edits;
}

/** Lines further in stay as they are: no instrument is so deep, and their indentation alone would fill the memory. */
const deepest = 200;

class Indentation implements XmlHandler {
  readonly edits: TextEdit[] = [];
  readonly #text: string;
  readonly #unit: string;
  /** Of each open element, whether text stands in it, so that white space there may belong to the text. */
  readonly #hasText: boolean[] = [];
  #wasText = false;
  /** The edit of the tag that is being read, and where the tag starts. */
  #tagStart = 0;
  #faulty = false;
  #breaksInValue = false;
  /** Whether nothing stands yet in the innermost element, so that white space may be its text. */
  #justOpened = false;

  constructor(text: string, unit: string) {
    this.#text = text;
    this.#unit = unit;
  }

  /** Indents what starts at an offset and has more lines up to `end`. */
  #indent(start: number, end: number, depth: number): void {
    const text = this.#text;
    let lineStart = start;
    while (lineStart > 0 && (text[lineStart - 1] === ' ' || text[lineStart - 1] === '\t')) lineStart--;
    const before = text[lineStart - 1];
    const startsLine = lineStart === 0 || before === '\n' || before === '\r' || before === '\ufeff';
    if (depth > deepest || !startsLine || this.#wasText || (this.#hasText[this.#hasText.length - 1] ?? false))
      return;
    const old = text.slice(lineStart, start);
    const indentation = this.#unit.repeat(depth);
    if (old === indentation) return;
    this.edits.push(replacing(mainSpan(lineStart, start), indentation));
    for (const line of text.slice(start, end).matchAll(/(?:\r\n|\r|\n)([ \t]*)(?=[^\s])/g)) {
      const inner = line[1];
      const at = start + line.index + line[0].length - inner.length;
      if (old !== '' && !inner.startsWith(old)) continue;
      this.edits.push(replacing(mainSpan(at, at + old.length), indentation));
    }
  }

  open(tagStart: number): void {
    this.#tagStart = tagStart;
    this.#faulty = false;
    this.#breaksInValue = false;
  }

  attribute(_name: number, _nameStart: number, nameEnd: number, _valueStart: number, valueEnd: number): void {
    if (/[\r\n]/.test(this.#text.slice(nameEnd, spaceEndAt(this.#text, valueEnd))))
      this.#breaksInValue = true;
  }

  openEnd(end: number, empty: boolean, broken: boolean): void {
    const inner = this.#hasText.length;
    // A value that goes over several lines stays as it is, and so do the further lines of its tag.
    const last = this.#breaksInValue ? this.#tagStart : end;
    if (!broken && !this.#faulty) this.#indent(this.#tagStart, last, inner);
    this.#justOpened = !empty;
    if (!empty) this.#hasText.push(this.#textStandsAt(end));
    this.#wasText = false;
  }

  #textStandsAt(end: number): boolean {
    let at = end;
    while (at < this.#text.length && /\s/.test(this.#text[at])) at++;
    return this.#text[at] !== '<' || this.#text.startsWith('<![CDATA[', at);
  }

  close(start: number, end: number): void {
    const hadText = this.#hasText[this.#hasText.length - 1] ?? false;
    if (end > start && !hadText && !this.#justOpened) this.#indent(start, start, this.#hasText.length - 1);
    this.#hasText.pop();
    this.#justOpened = false;
    this.#wasText = false;
  }

  characters(): void {
    this.#wasText = true;
    if (this.#hasText.length > 0) this.#hasText[this.#hasText.length - 1] = true;
  }

  comment(start: number): void {
    this.#indent(start, start, this.#hasText.length);
    this.#justOpened = false;
    this.#wasText = false;
  }

  instruction(): void {}

  doctype(): void {}

  problem(): void {
    this.#faulty = true;
  }
}
