import { readKeyRange } from './keyReading';

/** Words and signs for what is not exact, before a key and behind it, in languages of the trade. */
const before =
  /^(?:[~\u2248\u223c]|(?:about|around|approx(?:imately)?|circa|ca|roughly|maybe|probably|etwa|ungef\u00e4hr|rund|vielleicht|wohl|environ|vers|peut-\u00eatre|forse|aprox(?:imadamente)?|quiz\u00e1s?|talvez|ongeveer|ungef\u00e4r|omkring|noin|oko\u0142o|asi|около|примерно|約|约)(?![\p{L}])\.?)\s*/iu;
const behind = /\s*(?:\(?\?+\)?|-?ish|\(?(?:approx|ca|circa|about)\.?\)?)$/iu;

/** The key of a cell that says besides that it is not certain, as `about 45`, `~60`, `C3 (?)`; `undefined` for any other cell. */
export function roughKeyIn(text: string): string | undefined {
  if (text.length > 40) return undefined;
  const key = text.replace(before, '').replace(behind, '').trim();
  return key !== text.trim() && readKeyRange(key)?.single ? key : undefined;
}
