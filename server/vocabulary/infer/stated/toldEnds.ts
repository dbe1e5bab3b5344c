import { endsIn } from '../../../trade/statements/playing/statedEnds';
import type { Column } from '../values/column';
import type { XmlStatements } from './statements';
import type { ToldPlace } from './toldPlaces';

/** Statements with what the explanation of an end by its own name says of the frame there, where nothing else does. */
export function withToldEnds(stated: XmlStatements, told: ReadonlyMap<Column, ToldPlace>): XmlStatements {
  if (stated.ends) return stated;
  for (const { meaning, text } of told.values()) {
    if (meaning !== 'end' && meaning !== 'loop_end') continue;
    const ends = endsIn(`end: ${text}`);
    if (ends) return { ...stated, ends: { ...ends, text } };
  }
  return stated;
}
