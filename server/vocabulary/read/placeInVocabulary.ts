import type { Instrument } from '../../model/instrument';
import type { Notation, Place } from '../../model/notation';
import { isXmlSpace } from '../../xml/scan/characters';
import type { TagPlace } from '../../xml/scan/tagAt';
import { tagAt } from '../../xml/scan/tagAt';
import type { Vocabulary } from '../vocabulary';
import type { CompiledVocabulary, ElementPlace } from './compile';
import { compileVocabulary } from './compile';
import { findElement } from './elementAt';
import type { ReadTarget } from './targets';

/** What stands at an offset of instrument XML in a vocabulary; see `Notation.placeAt`. */
export function placeInVocabulary(vocabulary: Vocabulary): Notation['placeAt'] {
  const compiled = compileVocabulary(vocabulary);
  return (instrument, offset) => new PlaceFinder(compiled, instrument, offset).find();
}

class PlaceFinder {
  readonly #vocabulary: CompiledVocabulary;
  readonly #instrument: Instrument;
  readonly #offset: number;
  readonly #text: string;

  constructor(vocabulary: CompiledVocabulary, instrument: Instrument, offset: number) {
    this.#vocabulary = vocabulary;
    this.#instrument = instrument;
    this.#offset = offset;
    this.#text = instrument.sources[0]?.text ?? '';
  }

  find(): Place {
    const offset = this.#offset;
    const inComment = this.#instrument.directives.some(
      ({ kind, start, end }) => kind === 'comment' && start < offset && offset < end,
    );
    if (inComment) return { kind: 'other' };
    const tag = tagAt(this.#text, offset);
    const around = this.#headerAround(tag ? tag.start : offset);
    return tag ? this.#inTag(tag, around) : this.#inText(around);
  }

  /** The innermost header whose element is open where something starts, or which starts there; −1 where there is none. */
  #headerAround(offset: number): number {
    const instrument = this.#instrument;
    let header = instrument.headerAt(0, offset);
    while (header >= 0) {
      const { start, end } = instrument.bodySpan(header);
      if (start === offset || offset < end) break;
      header = instrument.parent(header);
    }
    return header;
  }

  #inTag(tag: TagPlace, header: number): Place {
    const { part } = tag;
    const { element, naming } = findElement(this.#vocabulary, this.#instrument, header, tag.start, tag.name);
    if (part.kind === 'element') return this.#onElement(part, header, element, tag);
    if (part.kind === 'other' || !element) return { kind: 'other' };
    if (part.kind === 'gap') {
      const { level } = element;
      if (level >= 0 && this.#vocabulary.levels[level]?.kind === undefined) return { kind: 'other' };
      return { kind: 'name', start: this.#offset, end: this.#offset, header, parameter: -1 };
    }
    if (header < 0) return { kind: 'other' };
    const attribute = part.kind === 'attribute' ? this.#text.slice(part.start, part.end) : part.attribute;
    const number = this.#vocabulary.attributes.get(attribute);
    const targets = number === undefined ? undefined : element.attributes[number];
    const { start, end } = part;
    if (part.kind === 'attribute') {
      if (number !== undefined && naming.has(number)) return { kind: 'other' };
      const parameter = targets ? this.#parameterOf(header, targets, start, tag) : -1;
      return { kind: 'name', start, end, header, parameter };
    }
    if (targets) return this.#onValue(header, targets, start, end);
    if (number === undefined || !naming.has(number)) return { kind: 'other' };
    // The value of this attribute is the name of what the others of its element say.
    const named = [...element.attributes.flatMap((one) => one ?? []), ...(element.text ?? [])];
    return { kind: 'name', start, end, header, parameter: this.#parameterOf(header, named, start, tag) };
  }

  #onElement(
    { start, end }: { start: number; end: number },
    header: number,
    element: ElementPlace | undefined,
    tag: TagPlace,
  ): Place {
    if (header >= 0 && this.#instrument.headerSpan(header).start === tag.start) {
      return { kind: 'header', start, end, header };
    }
    if (header >= 0 && element?.text && !element.isMixed) {
      return {
        kind: 'name',
        start,
        end,
        header,
        parameter: this.#parameterOf(header, element.text, start, tag),
      };
    }
    return { kind: 'header', start, end, header: -1 };
  }

  /** In the text of an element: between the tags around the offset. */
  #inText(header: number): Place {
    const text = this.#text;
    const offset = this.#offset;
    if (header < 0 || offset === 0) return { kind: 'other' };
    let start = text.lastIndexOf('>', offset - 1) + 1;
    const next = text.indexOf('<', offset);
    let end = next < 0 ? text.length : next;
    const open = findElement(this.#vocabulary, this.#instrument, header, start, undefined).element;
    if (!open) return { kind: 'other' };
    while (start < end && isXmlSpace(text.charCodeAt(start))) start++;
    while (end > start && isXmlSpace(text.charCodeAt(end - 1))) end--;
    if (!open.text) {
      // A child element with a value in it could start here.
      const isFree = start === end && this.#holdsValues(open);
      return isFree ? { kind: 'name', start: offset, end: offset, header, parameter: -1 } : { kind: 'other' };
    }
    if (start === end) return this.#onValue(header, open.text, offset, offset);
    return offset < start || offset > end ? { kind: 'other' } : this.#onValue(header, open.text, start, end);
  }

  #holdsValues({ level, children }: ElementPlace): boolean {
    return level >= 0 && children.some((child) => child.goesByAttributes || child.place.level < 0);
  }

  /** A value, or the part of a range that the offset is in. */
  #onValue(header: number, targets: readonly ReadTarget[], start: number, end: number): Place {
    const instrument = this.#instrument;
    const offset = this.#offset;
    for (const { parameter } of targets) {
      const found = this.#lastIn(header, parameter, start, end);
      if (found < 0) continue;
      const span = instrument.valueSpan(found);
      if (offset < span.start || offset > span.end) continue;
      return { kind: 'value', start: span.start, end: span.end, header, parameter: found, name: parameter };
    }
    return { kind: 'value', start, end, header, parameter: -1, name: targets[0]?.parameter ?? '' };
  }

  /** The parameter of a header with one of the names of the targets that stands in a tag, its name at `start` if any does. */
  #parameterOf(header: number, targets: readonly ReadTarget[], start: number, tag: TagPlace): number {
    const instrument = this.#instrument;
    for (const { parameter } of targets) {
      const found = this.#lastIn(header, parameter, tag.start, this.#text.length);
      if (found >= 0 && instrument.nameSpan(found).start === start) return found;
    }
    for (const { parameter } of targets) {
      const close = this.#text.indexOf('>', this.#offset);
      const found = this.#lastIn(header, parameter, tag.start, close < 0 ? this.#text.length : close);
      if (found >= 0) return found;
    }
    return -1;
  }

  /** A header's own parameter of a name whose value lies within a stretch of the text, or −1. */
  #lastIn(header: number, name: string, start: number, end: number): number {
    const instrument = this.#instrument;
    const canonical = instrument.names.canonical(instrument.names.idOf(name));
    const first = instrument.firstParameter(header);
    for (let at = instrument.endParameter(header) - 1; at >= first; at--) {
      const value = instrument.valueSpan(at);
      if (instrument.canonicalName(at) === canonical && value.start >= start && value.end <= end) return at;
    }
    return -1;
  }
}
