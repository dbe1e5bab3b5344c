import { replacing } from '../../model/editing/edits';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { plainNumber } from '../../model/instrumentBuilder';
import type { Edited, SampleFactsLookup } from '../../model/notation';
import type { Steps } from '../../model/steps';
import { mainSpan } from '../../model/text/span';
import { lineEndOf } from '../../model/text/textLines';
import { encodeXmlComment } from '../../xml/scan/references';
import type { Vocabulary } from '../vocabulary';
import { planElements } from '../write/planElements';
import type { PlannedContent, PlannedElement } from '../write/plannedElement';
import { Accounts } from '../write/writeAccounts';
import { filledElement } from '../write/writeElements';
import { isKeyPart, sourceValue } from '../write/writeOwnValues';
import { placesOf } from '../write/writePlaces';
import { effectiveText, placedTexts } from '../write/writeValues';
import { writeInVocabularyInSteps } from '../write/writeVocabularyXml';
import type { InsertPlace } from './insertPlace';
import { elementsByLevel, findInsertPlace, nearestElement } from './insertPlace';
import { withOuterFolder } from './outerFolder';
import { hasDecimalCommas, indentUnitOf, withDecimalComma } from './styleDocument';
import { elementText } from './styleElement';
import type { StyledElement } from './styleTree';
import { elementTree, indentationAt } from './styleTree';

/**
 * Writes the regions of an instrument into a text in a vocabulary, in the place nearest to an offset, like the regions
 * and groups that stand next to it: their order of attributes and elements, quotes, line breaks and indentation. Groups
 * come along where the vocabulary has them; else what they set goes into the regions.
 */
export function* insertInVocabulary(
  vocabulary: Vocabulary,
  instrument: Instrument,
  offset: number,
  inserted: Instrument,
  sampleFacts: SampleFactsLookup | undefined,
): Steps<Edited> {
  const text = instrument.sources[0]?.text ?? '';
  const root = elementTree(text);
  let top = outermostLevel(inserted, vocabulary);
  const byLevel = elementsByLevel(root, vocabulary);
  let place = findInsertPlace(root, vocabulary, byLevel, top, offset);
  const group = groupNeeded(inserted, vocabulary, top);
  const around = place ? innermostHeader(instrument, place.at) : -1;
  if (place && group >= 0 && !isInheritedAt(instrument, around, inserted, vocabulary, top)) {
    top = group;
    place = findInsertPlace(root, vocabulary, byLevel, top, offset);
  }
  if (!place) {
    const lineEnd = lineEndOf(text);
    const options = { lineEnd, ...(sampleFacts && { sampleFacts }) };
    const { text: newText, notes } = yield* writeInVocabularyInSteps(vocabulary)(inserted, options);
    const isBlank = text.trim() === '';
    const start = isBlank ? 0 : offset;
    return { edits: [replacing(mainSpan(start, isBlank ? text.length : offset), newText)], notes };
  }
  const accounts = new Accounts(inserted);
  yield 0.2;
  const content = planElements(inserted, vocabulary, top, accounts);
  yield 0.5;
  leaveInherited(content, instrument, around, vocabulary, accounts);
  if (content.length === 0) return { edits: [], notes: accounts.finish().notes };
  const writer = new KindWriter(text, vocabulary, byLevel, inserted, sampleFacts, accounts, place);
  const edit = writer.edit(content, top);
  return { edits: [edit], notes: accounts.finish().notes };
}

/** The outermost level that what is inserted needs: that of its groups where there are some, else the region's. */
function outermostLevel(inserted: Instrument, { levels }: Vocabulary): number {
  const groups = levels.flatMap(({ is }, at) => (is === 'group' ? [at] : []));
  const kinds = new Set<HeaderKind>();
  for (const region of inserted.regions) {
    for (let at = inserted.parent(region); at >= 0; at = inserted.parent(at)) kinds.add(inserted.kind(at));
  }
  const inner = groups.at(-1);
  if (inner === undefined || !(kinds.has(HeaderKind.group) || kinds.has(HeaderKind.master)))
    return levels.length - 1;
  return kinds.has(HeaderKind.group) && kinds.has(HeaderKind.master) ? (groups.at(-2) ?? inner) : inner;
}

/** The group level further out than `top` that alone has a place for something that regions set, or −1. */
function groupNeeded(inserted: Instrument, vocabulary: Vocabulary, top: number): number {
  const levels = placesOf(vocabulary);
  let found = -1;
  for (const { name } of valuesWithoutPlace(inserted, vocabulary, top)) {
    const level = levels.findLastIndex(
      ({ level: { is }, byName }, at) => at < top && is === 'group' && byName.has(name),
    );
    if (level >= 0 && (found < 0 || level < found)) found = level;
  }
  return found;
}

/** The values in force in regions that no level from `top` inwards has a place for. */
function* valuesWithoutPlace(
  inserted: Instrument,
  vocabulary: Vocabulary,
  top: number,
): Generator<{ name: string; value: string }> {
  const levels = placesOf(vocabulary).slice(top);
  for (const header of inserted.regions) {
    for (const { name: id, parameter } of inserted.effectiveParameters(header)) {
      const name = inserted.names.text(id);
      if (levels.some(({ byName }) => byName.has(name) || (byName.has('key') && isKeyPart(name)))) continue;
      yield { name, value: sourceValue(inserted, parameter, header, undefined) };
    }
  }
}

/** Whether what regions set without a place for it is what they get at a header anyway, or has no place at all. */
function isInheritedAt(
  instrument: Instrument,
  around: number,
  inserted: Instrument,
  vocabulary: Vocabulary,
  top: number,
): boolean {
  const levels = placesOf(vocabulary);
  for (const { name, value } of valuesWithoutPlace(inserted, vocabulary, top)) {
    const hasPlace = levels.some(({ byName }) => byName.has(name));
    if (hasPlace && !isSameValue(effectiveText(instrument, around, name), value)) return false;
  }
  return true;
}

function isSameValue(one: string | undefined, other: string): boolean {
  return one === other || (one !== undefined && plainNumber(one) === plainNumber(other));
}

/** Leaves out what regions get from the elements around them. */
function leaveInherited(
  content: readonly PlannedContent[],
  instrument: Instrument,
  around: number,
  vocabulary: Vocabulary,
  accounts: Accounts,
): void {
  const region = placesOf(vocabulary)[vocabulary.levels.length - 1];
  for (const one of content) {
    if (one.kind === 'comment') continue;
    leaveInherited(one.content, instrument, around, vocabulary, accounts);
    if (one.level < vocabulary.levels.length - 1) continue;
    for (const [name, { value, parameter }] of one.values) {
      if (region?.byName.has(name) || !isSameValue(effectiveText(instrument, around, name), value)) continue;
      one.values.delete(name);
      accounts.keep(parameter);
    }
  }
}

/** The header of the main file whose element an offset stands in, or −1. */
function innermostHeader(instrument: Instrument, offset: number): number {
  let header = instrument.headerAt(0, offset);
  while (header >= 0) {
    const { start, end } = instrument.bodySpan(header);
    if (start < offset && offset < end) break;
    header = instrument.parent(header);
  }
  return header;
}

/** How elements that stand next to one another are laid out. */
interface RowLayout {
  /** What stands before each of them on its line. */
  indentation: string;
  /** What stands between two. */
  between: string;
  /** Whether each stands on lines of its own. */
  onLines: boolean;
}

class KindWriter {
  readonly #text: string;
  readonly #vocabulary: Vocabulary;
  readonly #byLevel: readonly StyledElement[][];
  readonly #inserted: Instrument;
  readonly #sampleFacts: SampleFactsLookup | undefined;
  readonly #accounts: Accounts;
  readonly #place: InsertPlace;
  readonly #lineEnd: string;
  readonly #unit: string;
  readonly #examples: (StyledElement | undefined)[];
  readonly #commas: boolean;

  constructor(
    text: string,
    vocabulary: Vocabulary,
    byLevel: readonly StyledElement[][],
    inserted: Instrument,
    sampleFacts: SampleFactsLookup | undefined,
    accounts: Accounts,
    place: InsertPlace,
  ) {
    this.#text = text;
    this.#vocabulary = vocabulary;
    this.#byLevel = byLevel;
    this.#inserted = inserted;
    this.#sampleFacts = sampleFacts;
    this.#accounts = accounts;
    this.#place = place;
    this.#lineEnd = lineEndOf(text);
    this.#unit = indentUnitOf(text);
    this.#examples = byLevel.map((elements) => nearestElement(elements, place.at));
    const region = this.#examples[this.#examples.length - 1];
    this.#commas = region !== undefined && hasDecimalCommas(vocabulary, text.slice(region.start));
  }

  edit(content: readonly PlannedContent[], top: number): Edited['edits'][number] {
    const { container, missing, at } = this.#place;
    const row = this.#rowIn(container, top);
    const wrapped = missing.length === 0 ? row : this.#wrappedRow(row, missing.length);
    const inner = this.#rowText(content, wrapped);
    const block = this.#wrap(inner, missing, row, wrapped);
    if (container.isEmpty) return this.#openUp(block, row);
    return row.onLines ? this.#onLines(block, row, at) : this.#inLine(block, row, at, top);
  }

  #wrappedRow(row: RowLayout, steps: number): RowLayout {
    const indentation = row.indentation + this.#unit.repeat(steps);
    return { ...row, indentation, between: row.onLines ? this.#lineEnd + indentation : row.between };
  }

  /** Puts elements that are missing around what is written. */
  #wrap(inner: string, names: readonly string[], row: RowLayout, wrapped: RowLayout): string {
    if (names.length === 0) return inner;
    const line = (depth: number) =>
      row.onLines ? this.#lineEnd + row.indentation + this.#unit.repeat(depth) : '';
    const opened = names.map((name, depth) => `${depth > 0 ? line(depth) : ''}<${name}>`).join('');
    const closed = [...names]
      .reverse()
      .map((name, at) => `${line(names.length - 1 - at)}</${name}>`)
      .join('');
    return opened + (row.onLines ? this.#lineEnd + wrapped.indentation : '') + inner + closed;
  }

  /** How the elements of a level stand in an element, or would. */
  #rowIn(container: StyledElement, level: number): RowLayout {
    const text = this.#text;
    const elements = this.#byLevel[level] ?? [];
    const siblings = elements.filter(({ parent }) => parent === container);
    const example = nearestElement(siblings, this.#place.at);
    const own = indentationAt(text, container.start);
    if (!example) {
      const [child] = container.children;
      const indentation =
        child && startsLine(text, child.start) ? indentationAt(text, child.start) : own + this.#unit;
      return { indentation, between: this.#lineEnd + indentation, onLines: true };
    }
    const onLines = startsLine(text, example.start);
    const indentation = onLines ? indentationAt(text, example.start) : '';
    const at = siblings.indexOf(example);
    const before = siblings[at - 1];
    const after = siblings[at + 1];
    const gaps = [
      before && text.slice(before.end, example.start),
      after && text.slice(example.end, after.start),
    ];
    const gap = gaps.find((one) => one !== undefined && one.trim() === '');
    if (!onLines) return { indentation, between: gap ?? '', onLines };
    const breaks = gap?.match(/\r\n|\r|\n/g)?.length ?? 1;
    return { indentation, between: this.#lineEnd.repeat(Math.max(1, breaks)) + indentation, onLines };
  }

  #rowText(content: readonly PlannedContent[], row: RowLayout): string {
    let text = '';
    content.forEach((one, at) => {
      const afterComment = content[at - 1]?.kind === 'comment' && row.onLines;
      if (at > 0) text += afterComment ? this.#lineEnd + row.indentation : row.between;
      if (one.kind === 'element') text += this.#element(one, row);
      else {
        const lines = encodeXmlComment(one.text).split(/\r\n|\r|\n/);
        text += `<!-- ${lines.join(this.#lineEnd)} -->`;
      }
    });
    return text;
  }

  #element(planned: PlannedElement, row: RowLayout): string {
    const places = placesOf(this.#vocabulary)[planned.level];
    if (!places) return '';
    const texts = placedTexts(places, planned.values, {
      instrument: this.#inserted,
      header: planned.header,
      sampleFacts: this.#sampleFacts,
      accounts: this.#accounts,
      formThere: (form) => withOuterFolder(form, this.#text, this.#vocabulary, this.#place.at),
      ...(this.#commas && { inStyle: withDecimalComma }),
    });
    const example = this.#examples[planned.level];
    const style = {
      example,
      text: this.#text,
      indentation: row.indentation,
      unit: this.#unit,
      lineEnd: this.#lineEnd,
    };
    const element = filledElement(places.level.element, texts);
    return elementText(element, style, this.#inside(planned, example, row));
  }

  /** What stands in an element of an outer level behind its own values, up to its end tag. */
  #inside(planned: PlannedElement, example: StyledElement | undefined, row: RowLayout): string | undefined {
    if (planned.content.length === 0) return undefined;
    const names = this.#vocabulary.levels[planned.level + 1]?.inside ?? [];
    const child = this.#examples[planned.level + 1];
    const onLines = row.onLines && (!child || startsLine(this.#text, child.start));
    let step = this.#unit.repeat(names.length + 1);
    if (example && child && child.start > example.start && child.end <= example.end) {
      const outer = indentationAt(this.#text, example.start);
      const inner = indentationAt(this.#text, child.start);
      if (inner.startsWith(outer)) step = inner.slice(outer.length);
    }
    const indentation = row.indentation + step;
    const like = child?.parent ? this.#rowIn(child.parent, planned.level + 1) : undefined;
    const breaks = like?.between.match(/\r\n|\r|\n/g)?.length ?? 1;
    const inner: RowLayout = {
      indentation: onLines ? indentation : '',
      between: onLines ? this.#lineEnd.repeat(Math.max(1, breaks)) + indentation : (like?.between ?? ''),
      onLines,
    };
    const first: RowLayout = { ...inner, indentation: onLines ? row.indentation + this.#unit : '' };
    const block = this.#wrap(this.#rowText(planned.content, inner), names, first, inner);
    if (!onLines) return block;
    return `${this.#lineEnd}${names.length > 0 ? first.indentation : indentation}${block}${this.#lineEnd}${row.indentation}`;
  }

  /** Gives an element that ends in `/>` an end tag and puts a block inside. */
  #openUp(block: string, row: RowLayout): Edited['edits'][number] {
    const { container } = this.#place;
    let start = container.openEnd - 2;
    while (start > container.nameEnd && /\s/.test(this.#text[start - 1])) start--;
    const close = this.#lineEnd + indentationAt(this.#text, container.start);
    const newText = `>${this.#lineEnd}${row.indentation}${block}${close}</${container.name}>`;
    return replacing(mainSpan(start, container.openEnd), newText);
  }

  #onLines(block: string, row: RowLayout, at: number): Edited['edits'][number] {
    const text = this.#text;
    const { container } = this.#place;
    const before = /[^\r\n]*$/.exec(text.slice(Math.max(0, at - 10_000), at))?.[0] ?? '';
    const after = /^[^\r\n]*/.exec(text.slice(at, at + 10_000))?.[0] ?? '';
    const isBlank = before.trim() === '';
    const lead = isBlank ? '' : row.between.slice(0, row.between.length - row.indentation.length);
    const isLast = text.slice(at, container.closeStart).trim() === '';
    const next = isLast ? indentationAt(text, container.start) : row.indentation;
    const tail = after.trim() === '' ? '' : this.#lineEnd + (isBlank ? before : next);
    const start = isBlank ? at - before.length : at;
    return replacing(mainSpan(start, at), lead + row.indentation + block + tail);
  }

  #inLine(block: string, row: RowLayout, at: number, top: number): Edited['edits'][number] {
    const siblings = (this.#byLevel[top] ?? []).filter(({ parent }) => parent === this.#place.container);
    const isBehind = siblings.some(({ end }) => end === at);
    const isBefore = siblings.some(({ start }) => start === at);
    const newText = isBehind ? row.between + block : isBefore ? block + row.between : block;
    return replacing(mainSpan(at, at), newText);
  }
}

function startsLine(text: string, offset: number): boolean {
  let at = offset;
  while (at > 0 && (text[at - 1] === ' ' || text[at - 1] === '\t')) at--;
  return at === 0 || text[at - 1] === '\n' || text[at - 1] === '\r';
}
