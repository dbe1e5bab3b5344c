import { bareWord } from '../../languages/spelling';
import { noteName } from '../../readings/notePatterns';
import { switchWords } from '../../switchTitles';

/** Keys that switch to articulations, by the names of these, and the sentence that says so. */
export interface NamedSwitches {
  /** Keys as written, by bare name. */
  keys: ReadonlyMap<string, string>;
  text: string;
}

const longest = 2000;
const word = new RegExp(switchWords, 'giu');
const key = String.raw`(${noteName}[-\u2212]?\d|\d{1,3})(?![\p{L}\d])`;
const name = String.raw`["'\u201c]?(\p{L}[\p{L}\p{M}\d '-]{0,30}?)["'\u201d]?`;
const sign = String.raw`(?:\s*(?:=>?|:|[-\u2013]>|\u2192|\u2013|-|\()\s*|\s+(?:is|on|at|ist|auf|est|sur|es|en|su|op|på)\s+|\s+)`;
const nameFirst = new RegExp(`^${name}${sign}${key}\\)?$`, 'iu');
const keyFirst = new RegExp(`^${key}${sign}(?:(?:for|für|pour|para|per|voor)\\s+)?${name}\\)?$`, 'iu');
const parts = /[,;/|\n\u3001\uff0c]|\s(?:and|und|et|y|e|en|och|og|i|a|и)\s/iu;
const edges = /^[\s:=(*.\u2013-]+|[\s:=*.\u2013-]+$/gu;

/** The list of key switches that a sentence gives: `keyswitches: bow 24, pluck 25`, `C0 = bow, D0 = pluck (key switches)`. */
export function namedSwitchesIn(texts: readonly string[]): NamedSwitches | undefined {
  for (const whole of texts) {
    for (const text of whole.slice(0, longest).split(/[.!?](?=\s|$)|\n/u)) {
      word.lastIndex = 0;
      if (!word.test(text)) continue;
      const keys = keysIn(text);
      if (keys) return { keys, text: text.trim() };
    }
  }
  return undefined;
}

/** The keys by name in a sentence of nothing else; `undefined` for any other. */
function keysIn(text: string): Map<string, string> | undefined {
  const list = text.replace(/\(\s*\)/gu, '').replace(word, ' ');
  const found = new Map<string, string>();
  for (const part of list.split(parts)) {
    const piece = part.replace(edges, '').replace(/\s+/gu, ' ');
    if (piece === '' || /^(?:the|die|les|las|los|le|i|are|sind)$/iu.test(piece)) continue;
    const [first, last] = [nameFirst.exec(piece), keyFirst.exec(piece)];
    const [called, at] = first ? [first[1], first[2]] : last ? [last[2], last[1]] : [];
    if (called === undefined || at === undefined || found.has(bareWord(called))) return undefined;
    found.set(bareWord(called), at);
  }
  return found.size > 1 && new Set(found.values()).size === found.size ? found : undefined;
}
