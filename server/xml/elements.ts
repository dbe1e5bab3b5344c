import type { HeaderName } from '../model/headerKinds';
import { HeaderKind, headerNames } from '../model/headerKinds';
import { nameHash } from './scan/nameHash';

/** The elements of the notation: the headers of the format, with their numbers, and three of XML alone. */
export const ElementKind = { ...HeaderKind, instrument: 10, define: 11, include: 12 } as const;

export type ElementKind = (typeof ElementKind)[keyof typeof ElementKind];

interface Known {
  name: string;
  kind: ElementKind;
}

const byHash: ReadonlyMap<number, Known> = new Map(
  [
    ...headerNames.map((name: HeaderName, kind) => ({ name, kind: kind as ElementKind })),
    { name: 'instrument', kind: ElementKind.instrument },
    { name: 'define', kind: ElementKind.define },
    { name: 'include', kind: ElementKind.include },
  ].map((known) => [nameHash(known.name, 0, known.name.length), known]),
);

/** The kind of the element whose name stands at `start`..`end` with a hash of `nameHash`. */
export function elementKindAt(text: string, start: number, end: number, hash: number): ElementKind {
  const known = byHash.get(hash);
  if (known && known.name.length === end - start && text.startsWith(known.name, start)) return known.kind;
  return ElementKind.unknown;
}

/** The kind of an element by its name. */
export function elementKindOf(name: string): ElementKind {
  return elementKindAt(name, 0, name.length, nameHash(name, 0, name.length));
}

/** Whether a kind of element is a header of the format, known or not. */
export function isHeaderKind(kind: ElementKind): kind is HeaderKind {
  return kind <= HeaderKind.unknown;
}

const inAnyPlace =
  bits(HeaderKind.control, HeaderKind.region, HeaderKind.curve, HeaderKind.effect, HeaderKind.midi) |
  bits(HeaderKind.sample, ElementKind.define, ElementKind.include, HeaderKind.unknown);

/** What each kind of element can hold, as bits `1 << kind`. */
const contents: readonly number[] = Array.from({ length: 13 }, (_, kind) => {
  switch (kind) {
    case ElementKind.instrument:
      return inAnyPlace | bits(HeaderKind.global, HeaderKind.master, HeaderKind.group);
    case HeaderKind.global:
      return inAnyPlace | bits(HeaderKind.master, HeaderKind.group);
    case HeaderKind.master:
      return inAnyPlace | bits(HeaderKind.group);
    case HeaderKind.group:
      return inAnyPlace;
    case HeaderKind.unknown:
      return -1;
    default:
      return bits(HeaderKind.unknown);
  }
});

function bits(...kinds: number[]): number {
  return kinds.reduce((mask, kind) => mask | (1 << kind), 0);
}

/** Whether an element of one kind can hold one of another. An unknown element is a fault by itself, wherever it stands. */
export function canContain(outer: ElementKind, inner: ElementKind): boolean {
  return (contents[outer] & (1 << inner)) !== 0;
}
