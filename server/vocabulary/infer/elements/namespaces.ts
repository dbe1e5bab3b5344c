import type { XmlHandler } from '../../../xml/scan/handler';
import { decodeXmlAttribute } from '../../../xml/scan/references';
import { scanXml } from '../../../xml/scan/scan';
import type { VocabularyLevel } from '../../vocabulary';
import { nameWords } from '../words/nameWords';
import type { ElementType } from './survey';

/** Enough of a text to see its outermost element. */
const looked = 65_536;
const prefixOf = /([\p{L}_][^\s:/@[\]"=]*):/gu;

/** The namespaces that the outermost element declares, by prefix: those that the names of a vocabulary belong to. */
export function namespacesIn(
  text: string,
  levels: readonly VocabularyLevel[],
): Record<string, string> | undefined {
  const used = new Set(['']);
  for (const { element, inside = [], parameters } of levels) {
    for (const name of [element, ...inside, ...parameters.map(({ at }) => at)]) {
      for (const [, prefix] of name.replace(/"[^"]*"/g, '').matchAll(prefixOf)) used.add(prefix);
    }
  }
  const root = new RootDeclarations(text.slice(0, looked));
  scanXml(root.text, root);
  const found = [...root.found].filter(([prefix, name]) => used.has(prefix) && name !== '');
  return found.length > 0 ? Object.fromEntries(found) : undefined;
}

/** The words of the namespace that a prefix of an element stands for, as an element around it declares it; none without a prefix. */
export function namespaceWords(type: ElementType): string[] {
  const colon = type.name.indexOf(':');
  if (colon < 0) return [];
  const declared = `xmlns:${type.name.slice(0, colon)}`;
  for (let at: ElementType | undefined = type; at; at = at.parent) {
    const uri = at.attributes.get(declared)?.values[0]?.text;
    if (uri !== undefined) return nameWords(/[^/:#]*[/#]?$/.exec(uri.trim())?.[0] ?? '');
  }
  return [];
}

class RootDeclarations implements XmlHandler {
  readonly text: string;
  readonly found = new Map<string, string>();
  #elements = 0;

  constructor(text: string) {
    this.text = text;
  }

  open(): void {
    this.#elements++;
  }

  attribute(_name: number, nameStart: number, nameEnd: number, valueStart: number, valueEnd: number): void {
    if (this.#elements !== 1) return;
    const [xmlns, prefix = ''] = this.text.slice(nameStart, nameEnd).split(':');
    if (xmlns === 'xmlns') this.found.set(prefix, decodeXmlAttribute(this.text.slice(valueStart, valueEnd)));
  }

  openEnd(): void {}
  close(): void {}
  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
