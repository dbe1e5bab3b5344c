import { HeaderKind } from '../headerKinds';
import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';

/** The kinds of header that pass values on, outermost first. */
export const passingKinds = [HeaderKind.global, HeaderKind.master, HeaderKind.group] as const;

/** The global, master and group that a header inherits from, −1 where there is none. */
export type Chain = [global: number, master: number, group: number];

/** What a header inherits from, by kind. */
export function chainOf(instrument: Instrument, header: number): Chain {
  const chain: Chain = [-1, -1, -1];
  for (let at = instrument.parent(header); at >= 0; at = instrument.parent(at)) {
    const level = passingKinds.indexOf(instrument.kind(at) as (typeof passingKinds)[number]);
    if (level >= 0) chain[level] = at;
  }
  return chain;
}

/** Comments by the header that they are written with: before it (`leading`) or behind its parameters (`trailing`). */
export interface CommentPlaces {
  leading: Map<number, string[]>;
  trailing: Map<number, string[]>;
}

/**
 * Finds the header that each comment belongs to. One that stands on a line of its own behind a header's parameters
 * leads the next header. Position `headers.count` holds those behind everything.
 */
export function placeComments(instrument: Instrument): CommentPlaces {
  const places: CommentPlaces = { leading: new Map(), trailing: new Map() };
  for (const directive of instrument.directives) {
    if (directive.kind !== 'comment' || directive.value === '') continue;
    const header = directive.headersBefore - 1;
    const trailing =
      header >= 0 &&
      (!standsAlone(instrument, directive) || directive.parametersBefore < instrument.endParameter(header));
    const map = trailing ? places.trailing : places.leading;
    const key = trailing ? header : directive.headersBefore;
    const list = map.get(key);
    if (list) list.push(directive.value);
    else map.set(key, [directive.value]);
  }
  return places;
}

/** Whether a comment has its line to itself, other comments behind it aside. */
export function standsAlone(instrument: Instrument, comment: Directive): boolean {
  const text = instrument.sources[comment.source]?.text ?? '';
  let at = comment.start - 1;
  while (at >= 0 && (text[at] === ' ' || text[at] === '\t')) at--;
  return at < 0 || text[at] === '\n' || text[at] === '\r';
}
