import type { RelatedSpan, XmlHandler } from '../../../server/xml/scan/handler';
import { scanXml } from '../../../server/xml/scan/scan';

/** One thing that the scanner told. */
export interface XmlEvent {
  kind:
    | 'open'
    | 'attribute'
    | 'openEnd'
    | 'close'
    | 'characters'
    | 'comment'
    | 'instruction'
    | 'doctype'
    | 'problem'
    | 'remark';
  start: number;
  end: number;
  /** Name, value or message. */
  detail?: string;
  value?: { start: number; end: number; number: number; marks: number };
  related?: RelatedSpan;
}

/** An element that the scanner told of as a whole. */
export interface TextElement {
  text: string;
  number: number;
}

/** All that the scanner tells of a text, in order. Elements that are told of as a whole are put into `wholes`, if that is given. */
export function eventsOf(text: string, wholes?: TextElement[]): XmlEvent[] {
  const events: XmlEvent[] = [];
  const add =
    (kind: XmlEvent['kind']) =>
    (start: number, end: number): void => {
      events.push({ kind, start, end });
    };
  const handler: XmlHandler = {
    open: (tagStart, nameStart, nameEnd) =>
      events.push({ kind: 'open', start: tagStart, end: nameEnd, detail: text.slice(nameStart, nameEnd) }),
    attribute: (_name, nameStart, nameEnd, start, end, number, marks) =>
      events.push({
        kind: 'attribute',
        start: nameStart,
        end: nameEnd,
        detail: text.slice(nameStart, nameEnd),
        value: { start, end, number, marks },
      }),
    openEnd: (end, empty, broken) =>
      events.push({ kind: 'openEnd', start: end, end, detail: empty ? 'empty' : broken ? 'broken' : '' }),
    close: (start, end, nameStart, nameEnd) =>
      events.push({ kind: 'close', start, end, detail: text.slice(nameStart, nameEnd) }),
    characters: add('characters'),
    comment: add('comment'),
    instruction: add('instruction'),
    doctype: add('doctype'),
    problem: (start, end, message, related) =>
      events.push({ kind: 'problem', start, end, detail: message, ...(related && { related }) }),
    remark: (start, end, message) => events.push({ kind: 'remark', start, end, detail: message }),
  };
  if (wholes) {
    handler.textElement = (tagStart, nameEnd, hash, start, end, number, closeStart) => {
      const nameStart = tagStart + 1;
      wholes.push({ text: text.slice(start, end), number });
      handler.open(tagStart, nameStart, nameEnd, hash);
      handler.openEnd(nameEnd + 1, false, false);
      handler.characters(start, end);
      const closeName = closeStart + 2;
      const closeEnd = closeName + nameEnd - nameStart;
      handler.close(closeStart, closeEnd + 1, closeName, closeEnd);
    };
  }
  scanXml(text, handler);
  return events;
}

/** The problems of a text, as the text at their spans. */
export function problemsOf(text: string): string[] {
  return eventsOf(text)
    .filter((event) => event.kind === 'problem')
    .map(({ start, end }) => text.slice(start, end));
}

/** What is well formed in a text and has no effect, as the text at its spans. */
export function remarksOf(text: string): string[] {
  return eventsOf(text)
    .filter((event) => event.kind === 'remark')
    .map(({ start, end }) => text.slice(start, end));
}
