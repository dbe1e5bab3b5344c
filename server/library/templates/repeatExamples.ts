import type { Instrument } from '../../model/instrument';
import type { Span } from '../../model/text/span';
import { breaksBetween } from '../../model/text/textLayout';
import { lineEndOf } from '../../model/text/textLines';
import type { Assignment, FilledSection } from './assignExamples';
import type { ExampleSlot, OuterGroup } from './examples';
import type { SourceRegion } from './sourceSections';

/** A copy of an example's header in the text. */
export interface ExampleCopy {
  /** Where its header starts in the new text. */
  start: number;
  section: FilledSection;
  slot: ExampleSlot;
  /** The region of the source that it is for; `undefined` for the group. */
  source: SourceRegion | undefined;
  /** The header of the template that it is a copy of. */
  example: number;
}

/** A copy with its header in the document. */
export interface FoundCopy extends ExampleCopy {
  header: number;
}

/** A template with its examples repeated as often as they are needed; the copies still say what the examples do. */
export interface RepeatedText {
  text: string;
  copies: ExampleCopy[];
}

/** Repeats the examples of a template for the regions that they stand for, and takes those out that stand for none. */
export function repeatExamples(template: Instrument, assignment: Assignment): RepeatedText {
  const all = [...assignment];
  const further = all.flatMap(([{ regions }]) => regions.slice(1).map(({ unit }) => unit));
  const writer = new RepeatWriter(
    template,
    further.sort((one, other) => one.start - other.start),
  );
  for (let at = 0; at < all.length; at++) {
    const [slot, sections] = all[at];
    const { outer } = slot;
    if (!outer) writer.slot(slot, sections);
    else {
      let end = at;
      while (all[end]?.[0].outer === outer) end++;
      writer.outer(outer, all.slice(at, end));
      at = end - 1;
    }
  }
  return writer.finish();
}

class RepeatWriter {
  readonly #template: Instrument;
  readonly #text: string;
  readonly #lineEnd: string;
  readonly #copies: ExampleCopy[] = [];
  /** The examples that no copies stand in the place of, as these stand in that of the first one beside them, in the order of the text. */
  readonly #further: readonly Span[];
  #written = '';
  #at = 0;

  constructor(template: Instrument, further: readonly Span[]) {
    this.#template = template;
    this.#further = further;
    this.#text = template.sources[0].text;
    this.#lineEnd = lineEndOf(this.#text);
  }

  /** Writes a group of groups for each section of it, with the groups that stand in that. */
  outer(
    { header, unit }: OuterGroup,
    slots: readonly (readonly [ExampleSlot, readonly FilledSection[]])[],
  ): void {
    this.#copy(unit.start);
    const outers = new Map<FilledSection, ExampleSlot>();
    for (const [slot, sections] of slots)
      for (const { outer } of sections) if (outer && !outers.has(outer)) outers.set(outer, slot);
    let count = 0;
    for (const [outer, slot] of outers) {
      if (count++ > 0) this.#written += this.#between(unit.start, unit.end, this.#text.slice(0, unit.start));
      const start = this.#written.length + this.#template.headerSpan(header).start - unit.start;
      this.#copies.push({
        start,
        section: outer,
        slot: { ...slot, group: header },
        source: undefined,
        example: header,
      });
      this.#at = unit.start;
      for (const [inner, sections] of slots)
        this.slot(
          inner,
          sections.filter((one) => one.outer === outer),
        );
      this.#copy(unit.end);
    }
    this.#at = unit.end;
  }

  slot(slot: ExampleSlot, sections: readonly FilledSection[]): void {
    const { unit } = slot;
    if (slot.group < 0) {
      this.#examples(slot, sections);
      return;
    }
    this.#copy(unit.start);
    sections.forEach((section, at) => {
      if (at > 0) this.#written += this.#between(unit.start, unit.end, this.#text.slice(0, unit.start));
      const start = this.#written.length + this.#template.headerSpan(slot.group).start - unit.start;
      this.#copies.push({ start, section, slot, source: undefined, example: slot.group });
      this.#at = unit.start;
      this.#examples(slot, [section]);
      this.#copy(unit.end);
    });
    this.#at = unit.end;
  }

  finish(): RepeatedText {
    this.#copy(this.#text.length);
    return { text: this.#written, copies: this.#copies };
  }

  /** Copies what stands up to a place, without other examples on the way and blank space before these. */
  #copy(to: number): void {
    for (let next = this.#firstFrom(this.#at); next < this.#further.length; next++) {
      const { start, end } = this.#further[next];
      if (end > to) break;
      const between = this.#text.slice(this.#at, start);
      if (between.trim() !== '') this.#written += between;
      this.#at = end;
    }
    this.#written += this.#text.slice(this.#at, to);
    this.#at = Math.max(this.#at, to);
  }

  /** Writes the copies in the place of the first example of a slot and leaves the others out. */
  #examples(slot: ExampleSlot, sections: readonly FilledSection[]): void {
    const [first, next] = slot.regions;
    this.#copy(first.unit.start);
    const gap = next && this.#text.slice(first.unit.end, next.unit.start);
    let count = 0;
    for (const section of sections) {
      for (const { source, example } of section.regions) {
        const { start, end } = example.unit;
        if (count++ > 0)
          this.#written += this.#between(start, end, this.#text.slice(0, first.unit.start), gap);
        this.#copies.push({
          start: this.#written.length + this.#template.headerSpan(example.header).start - start,
          section,
          slot,
          source,
          example: example.header,
        });
        this.#written += this.#text.slice(start, end);
      }
    }
    this.#at = first.unit.end;
  }

  /** The position of the first further example that starts at a place or behind it. */
  #firstFrom(start: number): number {
    let [low, high] = [0, this.#further.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#further[middle].start < start) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** What stands between two copies of a stretch: what stands between examples, else a blank line where one stands before it. */
  #between(start: number, end: number, before: string, gap?: string): string {
    const unit = this.#text.slice(start, end);
    const endsLine = /[\r\n]$/.test(unit);
    if (gap !== undefined && gap.trim() === '' && (endsLine || gap !== '')) return gap;
    if (endsLine) {
      const isLong = unit.trimEnd().includes('\n');
      const lead = /\s*$/.exec(before)?.[0] ?? '';
      return isLong && breaksBetween(lead, 0, lead.length) > 1 ? this.#lineEnd : '';
    }
    const after = this.#text[end];
    if (after === undefined || after === '\n' || after === '\r') return this.#lineEnd;
    return this.#template.format === 'xml' ? '' : ' ';
  }
}
