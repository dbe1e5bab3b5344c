import { decodeXmlText } from './scan/references';

/** A document type stands at the start. */
const looked = 65_536;
const most = 200;
const longest = 10_000;
const deepest = 4;
const subset = /<!DOCTYPE\s[^[<>]*\[([\s\S]*?)\]\s*>/;
const declaration = /<!--[\s\S]*?-->|<!ENTITY\s+([^\s%"'<>&;]+)\s+(?:"([^"]*)"|'([^']*)')\s*>/g;

const none: ReadonlyMap<string, string> = new Map();
/** The text that was looked at last: readers ask for each value of one text. */
let last: { text: string; entities: ReadonlyMap<string, string> } = { text: '', entities: none };

/**
 * What the entities that a document type declares in itself stand for (XML 1.0, fifth edition, section 4.2.1). The first declaration
 * of a name counts (section 4.2). Those that hold elements or grow too long are left out.
 */
export function declaredEntities(text: string): ReadonlyMap<string, string> {
  if (last.text !== text) last = { text, entities: entitiesIn(text) };
  return last.entities;
}

function entitiesIn(text: string): ReadonlyMap<string, string> {
  const declared = subset.exec(text.slice(0, looked))?.[1];
  if (declared === undefined) return none;
  const found = new Map<string, string>();
  for (const [, name, double, single] of declared.matchAll(declaration)) {
    const value = double ?? single;
    if (name === undefined || value === undefined || found.has(name) || found.size >= most) continue;
    found.set(name, value);
  }
  const whole = new Map<string, string>();
  for (const [name, value] of found) {
    const expanded = expand(value, found, deepest);
    if (expanded !== undefined && !expanded.includes('<')) whole.set(name, expanded);
  }
  return whole;
}

/** A value with what it refers to; `undefined` where that refers to itself or grows too long. */
function expand(value: string, all: ReadonlyMap<string, string>, depth: number): string | undefined {
  let expanded = '';
  let from = 0;
  for (const reference of value.matchAll(/&([^\s&;#]+);/g)) {
    const inner = all.get(reference[1] ?? '');
    if (inner === undefined) continue;
    const text = depth > 0 ? expand(inner, all, depth - 1) : undefined;
    if (text === undefined) return undefined;
    expanded += value.slice(from, reference.index) + text;
    from = reference.index + reference[0].length;
    if (expanded.length > longest) return undefined;
  }
  const whole = expanded + value.slice(from);
  return whole.length > longest ? undefined : decodeXmlText(whole);
}
