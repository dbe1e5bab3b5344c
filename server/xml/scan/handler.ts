/** A further place that a problem speaks of. */
export interface RelatedSpan {
  start: number;
  end: number;
  message: string;
}

/** What can be said of an attribute beyond its spans, as bits. */
export const ValueMark = {
  /** References or white space other than blanks stand in it, so that it reads differently from its text. */
  encoded: 1,
  /** A `$` stands in it. */
  dollar: 2,
  /** The name has a prefix, so that it belongs to another vocabulary: `xsi:schemaLocation`, `xml:lang`. */
  prefixed: 4,
} as const;

/**
 * What {@link scanXml} tells its caller, in the order of the text; all positions are offsets in it. The scanner knows
 * the shape of XML alone, not which elements or attributes exist.
 */
export interface XmlHandler {
  /** `<name`. `hash` is the `nameHash` of the name. */
  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void;
  /**
   * `name="value"` in the tag opened last. `name` is a number that equal names in one text share, counted from 0 in the
   * order of first use. The span of the value has neither quotes nor blanks around it. `number` is the value where it
   * is a plain decimal number (else NaN), `marks` are bits of {@link ValueMark}.
   */
  attribute(
    name: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    marks: number,
  ): void;
  /**
   * The end of the tag opened last. `empty` says that it ends in `/>`, so that no {@link close} comes; `broken` that it
   * has no end, so that what follows need not be meant to stand inside.
   */
  openEnd(end: number, empty: boolean, broken: boolean): void;
  /** An end tag and the name in it; an empty span where an element ends without one. */
  close(start: number, end: number, nameStart: number, nameEnd: number): void;
  /**
   * An element without attributes that holds one line of text and nothing else, in the usual form: `<name>text</name>`. The
   * handler that has this gets it in the place of {@link open}, {@link openEnd}, {@link characters} and {@link close}. The text at
   * `start`..`end` is not empty, has no blanks around it and reads as it is written; `number` is as in {@link attribute}, but NaN for
   * more than fifteen digits. The end tag stands at `closeStart`, as long as the name and three more.
   */
  textElement?(
    tagStart: number,
    nameEnd: number,
    hash: number,
    start: number,
    end: number,
    number: number,
    closeStart: number,
  ): void;
  /** Text other than white space inside an element; CDATA sections with their marks. */
  characters(start: number, end: number): void;
  /** A comment with its marks. */
  comment(start: number, end: number): void;
  /** A processing instruction with its marks, the XML declaration among them. */
  instruction(start: number, end: number): void;
  /** A document type declaration. What it defines has no effect. */
  doctype(start: number, end: number): void;
  /** Something that is not well formed; reading goes on. */
  problem(start: number, end: number, message: string, related?: RelatedSpan): void;
  /** Something that is well formed and has no effect here: a document type and what refers to it. */
  remark?(start: number, end: number, message: string): void;
}
