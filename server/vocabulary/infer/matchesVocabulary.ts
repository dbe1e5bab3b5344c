import type { XmlHandler } from '../../xml/scan/handler';
import { scanXml } from '../../xml/scan/scan';
import { lacksOutermostElement, outermostElementOf } from '../outermostElement';
import type { Vocabulary } from '../vocabulary';

/** Most texts show their first region in this much. */
const looked = 65_536;

/**
 * Whether a text seems to be written in a vocabulary: it has its outermost element, and a region inside the levels
 * around it. A text that holds its outermost element alone counts too.
 */
export function matchesVocabulary(vocabulary: Vocabulary, text: string): boolean {
  const start = new Look(vocabulary, text.slice(0, looked));
  if (!start.isRootRight || start.hasRegion) return start.hasRegion;
  const whole = text.length > looked ? new Look(vocabulary, text) : start;
  return whole.hasRegion || (whole.isWhole && whole.elements === 1);
}

class Look implements XmlHandler {
  isRootRight = false;
  /** Whether the outermost element alone tells that the text is written in the vocabulary. */
  isWhole = false;
  hasRegion = false;
  elements = 0;
  readonly #vocabulary: Vocabulary;
  readonly #text: string;
  readonly #open: string[] = [];
  #name = '';
  #isAnyRoot = false;
  #hasOutermost = false;

  constructor(vocabulary: Vocabulary, text: string) {
    this.#vocabulary = vocabulary;
    this.#text = text;
    scanXml(text, this);
  }

  open(_tagStart: number, nameStart: number, nameEnd: number): void {
    this.#name = this.#text.slice(nameStart, nameEnd);
    const { levels } = this.#vocabulary;
    const region = levels.at(-1);
    if (this.elements++ === 0) this.#root();
    if (this.hasRegion || !this.isRootRight) return;
    // Where any element may be the outermost one, the vocabulary's own stand right in it.
    if (this.#open.length < 2) this.#hasOutermost ||= this.#name === levels[0]?.element;
    if (this.#name !== region?.element || (this.#isAnyRoot && !this.#hasOutermost)) return;
    this.hasRegion = this.#isInLevels();
  }

  #root(): void {
    const [outermost] = this.#vocabulary.levels;
    const first = outermost?.is === 'region' || outermost?.inside ? outermost.inside?.[0] : undefined;
    const isNamed = this.#name === (first ?? outermost?.element);
    this.#isAnyRoot = !isNamed && lacksOutermostElement(this.#vocabulary);
    this.isRootRight = isNamed || this.#isAnyRoot;
    this.isWhole = isNamed || this.#name === outermostElementOf(this.#vocabulary);
  }

  /** Groups may be left out, as regions can stand beside them. */
  #isInLevels(): boolean {
    const { levels } = this.#vocabulary;
    const region = levels.at(-1);
    if (levels.length > 1 && levels[0]?.is === 'instrument' && !this.#open.includes(levels[0].element))
      return false;
    return (region?.inside ?? []).every((name) => this.#open.includes(name)) || levels.length > 2;
  }

  attribute(): void {}

  openEnd(_end: number, empty: boolean): void {
    if (!empty) this.#open.push(this.#name);
  }

  close(): void {
    this.#open.pop();
  }

  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
