import type { Directive } from '../model/instrumentParts';
import type { ConversionNote } from '../model/notes';
import { spanIn } from '../model/text/span';
import { byCount } from '../model/wording/counted';
import type { PlannedComment } from '../model/writing/writingPlan';
import { encodeXmlComment } from './scan/references';

/** Writes comments as XML can hold them, and remembers which are not as they were. */
export class CommentTexts {
  readonly #lineEnd: string;
  /** Comments that are not written as they are: how many, and the first. */
  #changed = 0;
  #first: { directive: Directive; position: number } | undefined;

  constructor(lineEnd: string) {
    this.#lineEnd = lineEnd;
  }

  /** A comment with its marks; `position` is where the line that it comes into starts. */
  textOf({ text, directive }: PlannedComment, position: number): string {
    if (text === '') return '<!-- -->';
    const encoded = encodeXmlComment(text);
    if (encoded !== text && this.#changed++ === 0) this.#first = { directive, position };
    return `<!-- ${encoded.split(/\r\n|\r|\n/).join(this.#lineEnd)} -->`;
  }

  /** Says once for all comments that XML cannot hold them as they are; `undefined` where it holds all. */
  note(): ConversionNote | undefined {
    if (!this.#first) return undefined;
    const { directive, position } = this.#first;
    const { source, start, end } = directive;
    const many = byCount(this.#changed, '', `, in ${this.#changed} comments`);
    return {
      kind: 'approximated',
      ...spanIn(source, start, end),
      message: `A comment in XML cannot hold "--" or control characters. Dashes are written as en dashes and the characters are left out${many}.`,
      written: { start: position, end: position },
    };
  }
}
