import type { Instrument } from '../model/instrument';
import type { WriteOptions, Written } from '../model/notation';
import { encodeXmlComment } from '../xml/references';
import type { ElementStyle } from './styleElement';
import { elementText } from './styleElement';
import type { Vocabulary } from './vocabulary';
import { Accounts } from './writeAccounts';
import { filledElement } from './writeElements';
import { placesOf } from './writePlaces';
import type { PlannedContent, PlannedElement } from './writePlan';
import { planElements } from './writePlan';
import { placedTexts } from './writeValues';

const usualIndentation = '  ';

/** Writes a whole instrument as XML in a vocabulary; see `Notation.write`. */
export function writeInVocabulary(
  vocabulary: Vocabulary,
): (instrument: Instrument, options?: WriteOptions) => Written {
  return (instrument, options = {}) => {
    const accounts = new Accounts(instrument);
    const content = planElements(instrument, vocabulary, 0, accounts, options.move);
    const writer = new DocumentWriter(instrument, vocabulary, accounts, options);
    const lineEnd = options.lineEnd ?? '\n';
    const lines = ['<?xml version="1.0" encoding="UTF-8"?>', ...writer.lines(content)];
    return { text: lines.map((line) => line + lineEnd).join(''), ...accounts.finish() };
  };
}

class DocumentWriter {
  readonly #instrument: Instrument;
  readonly #vocabulary: Vocabulary;
  readonly #accounts: Accounts;
  readonly #options: WriteOptions;
  readonly #lineEnd: string;
  #lines: string[] = [];

  constructor(instrument: Instrument, vocabulary: Vocabulary, accounts: Accounts, options: WriteOptions) {
    this.#instrument = instrument;
    this.#vocabulary = vocabulary;
    this.#accounts = accounts;
    this.#options = options;
    this.#lineEnd = options.lineEnd ?? '\n';
  }

  lines(content: readonly PlannedContent[]): string[] {
    this.#content(content, 0);
    return this.#lines;
  }

  /** Writes elements and comments; what stands between a level and the one before is opened once for a row of them. */
  #content(content: readonly PlannedContent[], depth: number): void {
    let inside: readonly string[] = [];
    const close = () => {
      for (let at = inside.length - 1; at >= 0; at--) this.#line(`</${inside[at]}>`, depth + at);
      inside = [];
    };
    for (const one of content) {
      if (one.kind === 'comment') {
        const text = encodeXmlComment(one.text)
          .split(/\r\n|\r|\n/)
          .join(this.#lineEnd);
        this.#line(`<!-- ${text} -->`, depth + inside.length);
        continue;
      }
      const wrappers = this.#vocabulary.levels[one.level]?.inside ?? [];
      if (inside.length === 0 && wrappers.length > 0) {
        inside = wrappers;
        for (let at = 0; at < inside.length; at++) this.#line(`<${inside[at]}>`, depth + at);
      }
      this.#element(one, depth + inside.length);
    }
    close();
  }

  #element(planned: PlannedElement, depth: number): void {
    const places = placesOf(this.#vocabulary)[planned.level];
    if (!places) return;
    const texts = placedTexts(places, planned.values, {
      instrument: this.#instrument,
      header: planned.header,
      sampleFacts: this.#options.sampleFacts,
      accounts: this.#accounts,
    });
    const element = filledElement(places.level.element, texts);
    if (depth === 0) element.attributes = new Map([...this.#declarations(), ...element.attributes]);
    const style: ElementStyle = {
      example: undefined,
      text: '',
      indentation: usualIndentation.repeat(depth),
      unit: usualIndentation,
      lineEnd: this.#lineEnd,
    };
    if (planned.content.length === 0) {
      this.#line(elementText(element, style), depth);
      return;
    }
    const outer = this.#lines;
    this.#lines = [];
    this.#content(planned.content, depth + 1);
    const inner = this.#lines.map((line) => this.#lineEnd + line).join('');
    this.#lines = outer;
    this.#line(elementText(element, style, `${inner}${this.#lineEnd}${style.indentation}`), depth);
  }

  *#declarations(): Iterable<[string, string]> {
    for (const [prefix, name] of Object.entries(this.#vocabulary.namespaces ?? {})) {
      yield [prefix === '' ? 'xmlns' : `xmlns:${prefix}`, name];
    }
  }

  #line(text: string, depth: number): void {
    this.#lines.push(usualIndentation.repeat(depth) + text);
  }
}
