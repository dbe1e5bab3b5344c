import { characterNumber, findIllegalCharacters, isXmlCharacter, nameEndAt } from './characters';

/** The entities that every XML document has: XML 1.0 (fifth edition), section 4.6. */
const entities: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
]);

/**
 * A reference as it stands in text: where it ends, and the character that it means or what is wrong with it. `name` is
 * that of an entity that a document type could declare.
 */
export type CharacterReference =
  | { end: number; value: string; problem?: undefined; name?: undefined }
  | { end: number; value?: undefined; problem: string; name?: string };

/** Where an entity is referred to: in the text of an element or in the value of an attribute. */
export type EntityPlace = 'text' | 'attribute';

/** Is told of each reference by the name of an entity. */
export interface NamedReferences {
  found(name: string, start: number, end: number, place: EntityPlace): void;
}

/** What an entity stands for, as far as it says what is well formed: what is wrong with it, and what it refers to. */
export interface EntityText {
  fault?: string;
  references: { name: string; place: EntityPlace }[];
}

/** Reads what an entity stands for as the text of an element. */
export type EntityReader = (text: string) => EntityText;

/** Reads the reference whose `&` stands at `start`: XML 1.0 (fifth edition), section 4.1. */
export function readReference(text: string, start: number): CharacterReference {
  if (text[start + 1] === '#') return readCharacterReference(text, start);
  const nameEnd = nameEndAt(text, start + 1);
  if (nameEnd === start + 1 || text[nameEnd] !== ';') {
    const known = nameEnd - start < 6 && entities.has(text.slice(start + 1, nameEnd));
    return known
      ? { end: nameEnd, problem: `This reference is not closed. Write ${text.slice(start, nameEnd)};.` }
      : { end: start + 1, problem: 'A bare "&" cannot stand here. Write &amp;.' };
  }
  const name = text.slice(start + 1, nameEnd);
  const value = entities.get(name);
  if (value !== undefined) return { end: nameEnd + 1, value };
  const shown = name.length > 40 ? `${name.slice(0, 39)}…` : name;
  return {
    end: nameEnd + 1,
    name,
    problem: `&${shown}; is not known. The references are &amp;, &lt;, &gt;, &quot;, &apos; and numbers such as &#233;.`,
  };
}

function readCharacterReference(text: string, start: number): CharacterReference {
  const hex = text[start + 2] === 'x';
  const digits = start + (hex ? 3 : 2);
  let at = digits;
  let code = 0;
  for (; at < text.length; at++) {
    const digit = digitValue(text.charCodeAt(at), hex);
    if (digit < 0) break;
    code = Math.min(code * (hex ? 16 : 10) + digit, 0x110000);
  }
  if (at === digits || text[at] !== ';') {
    return { end: at, problem: 'A character is written &#233; or &#xE9;: a number between &# and ";".' };
  }
  if (!isXmlCharacter(code)) {
    const shown = code > 0x10ffff ? 'a character beyond the last one' : characterNumber(code);
    return { end: at + 1, problem: `This stands for ${shown}, which XML cannot hold. Remove it.` };
  }
  return { end: at + 1, value: String.fromCodePoint(code) };
}

function digitValue(code: number, hex: boolean): number {
  if (code >= 48 && code <= 57) return code - 48;
  if (!hex) return -1;
  const letter = code | 32;
  return letter >= 97 && letter <= 102 ? letter - 87 : -1;
}

/**
 * Puts characters in for references. A reference that means nothing stays as it is written and is told to `problem`,
 * with its place in `value`. `declared` are the entities that the document declares.
 */
export function decodeXmlText(
  value: string,
  problem: (start: number, end: number, message: string) => void = () => {},
  declared?: ReadonlyMap<string, string>,
): string {
  let from = 0;
  let at = value.indexOf('&');
  if (at < 0) return value;
  let decoded = '';
  while (at >= 0) {
    const reference = readReference(value, at);
    decoded += value.slice(from, at);
    const known = reference.problem === undefined ? reference.value : declared?.get(reference.name ?? '');
    if (known !== undefined) decoded += known;
    else if (reference.problem !== undefined) {
      decoded += value.slice(at, reference.end);
      problem(at, reference.end, reference.problem);
    }
    from = reference.end;
    at = value.indexOf('&', from);
  }
  return decoded + value.slice(from);
}

/**
 * The value of an attribute as it reads: white space becomes blanks (XML 1.0, fifth edition, sections 2.11 and 3.3.3) and
 * references become the characters that they mean.
 */
export function decodeXmlAttribute(value: string, declared?: ReadonlyMap<string, string>): string {
  const spaced = /[\t\n\r]/.test(value) ? value.replace(/\r\n|[\t\n\r]/g, ' ') : value;
  return decodeXmlText(spaced, undefined, declared);
}

/** A value made ready to stand between double quotes. */
export interface EncodedAttribute {
  text: string;
  /** Characters that XML 1.0 cannot hold in any way and that were left out, such as `U+0007`. */
  leftOut: string[];
}

const special = /[&<>"\t\n\r]|^ | $/g;
const harmless = /^(?! )[ !#-%'-;=?-\ud7ff\ue000-\ufffd]*(?<! )$/;

const written: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
  ['\t', '&#9;'],
  ['\n', '&#10;'],
  ['\r', '&#13;'],
  [' ', '&#32;'],
]);

/**
 * Makes a value ready to stand between double quotes so that it reads back as it is: white space other than blanks
 * between other characters is written as character references.
 */
export function encodeXmlAttribute(value: string): EncodedAttribute {
  if (harmless.test(value)) return { text: value, leftOut: [] };
  const { kept, leftOut } = withoutIllegalCharacters(value);
  return { text: kept.replace(special, (character) => written.get(character) as string), leftOut };
}

/** Makes text ready to stand between the blanks in `<!--  -->`, which cannot hold `--`: dashes in a row become en dashes. */
export function encodeXmlComment(text: string): string {
  return withoutIllegalCharacters(text).kept.replace(/--+/g, (dashes) => '–'.repeat(dashes.length));
}

function withoutIllegalCharacters(text: string): { kept: string; leftOut: string[] } {
  const leftOut: string[] = [];
  let kept = '';
  let from = 0;
  findIllegalCharacters(text, 0, text.length, (start, end, code) => {
    kept += text.slice(from, start);
    from = end;
    leftOut.push(characterNumber(code));
  });
  return { kept: kept + text.slice(from), leftOut };
}
