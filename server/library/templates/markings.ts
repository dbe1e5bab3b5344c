import { editedText } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { mainSpan } from '../../model/text/span';
import { lineStartAt } from '../../model/text/textLayout';
import { isHeldBy } from './isHeldBy';

/** What is known of an instrument, by what it is called: `title`, `maker`, `licence`, or any other name. */
export type Facts = ReadonlyMap<string, string>;

/** A template with facts in the places that it marks. */
export interface FilledText {
  text: string;
  /** Facts that the template has a place for and nobody gave, or that the place cannot hold. */
  missing: string[];
}

/** `(title goes here)`: the fact takes the place of the whole marking. */
const marking = /\(\s*([\p{L}][\p{L}\p{N} _-]{0,39}?) goes here\s*\)/giu;
/** `low: lowest key goes here; high: highest key goes here`, alone in a remark: values of what stands right before it. */
const setting = /^\s*([\p{L}_][\p{L}\p{N}_.:-]*)\s*:\s*([\p{L}][\p{L}\p{N} _-]{0,39}?) goes here\s*$/iu;

/** Puts facts where a template marks a place for them. A place whose fact is not known stays marked. */
export function fillMarkings(template: Instrument, notation: Notation, facts: Facts): FilledText {
  const { text } = template.sources[0];
  const known = new Map(
    [...facts].map(([name, value]) => [name.toLowerCase(), value.replace(/\s+/g, ' ').trim()]),
  );
  const missing = new Set<string>();
  const edits: TextEdit[] = [];
  const changed = new Set<number>();
  const value = (name: string) => {
    const found = known.get(name.toLowerCase().replace(/\s+/g, ' '));
    if (found === undefined || found === '') missing.add(name.toLowerCase());
    return found === '' ? undefined : found;
  };
  for (const found of text.matchAll(marking)) {
    const [whole, name] = found;
    const fact = value(name);
    if (fact === undefined) continue;
    const parameter = parameterAround(template, found.index);
    if (parameter < 0)
      edits.push(
        replacing(mainSpan(found.index, found.index + whole.length), plainFact(template, found.index, fact)),
      );
    else if (!changed.has(parameter)) {
      changed.add(parameter);
      const held = parameterEdits(template, notation, parameter, known);
      if (held) edits.push(...held);
      else missing.add(name.toLowerCase());
    }
  }
  for (const edit of settingEdits(template, text, value)) edits.push(edit);
  return { text: editedText(text, edits), missing: [...missing] };
}

function parameterAround(template: Instrument, offset: number): number {
  const parameter = template.parameterAt(0, offset);
  if (parameter < 0) return -1;
  const { start, end } = template.valueSpan(parameter);
  return start <= offset && offset < end ? parameter : -1;
}

/** The edits that put all facts known into a value; `undefined` where the notation cannot hold it. */
function parameterEdits(
  template: Instrument,
  notation: Notation,
  parameter: number,
  facts: ReadonlyMap<string, string>,
): TextEdit[] | undefined {
  const value = template
    .valueText(parameter)
    .replace(marking, (whole, name: string) => facts.get(name.toLowerCase()) || whole);
  const name = template.names.text(template.name(parameter));
  if (!isHeldBy(notation, name, value)) return undefined;
  const header = template.headerOfParameter(parameter);
  const { edits } = notation.edit(template, { kind: 'set', header, name, value });
  return edits.length > 0 ? edits : undefined;
}

/** A fact ready to stand in text that is no value of the instrument. */
function plainFact(template: Instrument, offset: number, fact: string): string {
  const isComment = template.directives.some(
    ({ kind, source, start, end }) => kind === 'comment' && source === 0 && start <= offset && offset < end,
  );
  if (template.format !== 'xml') return fact.replaceAll('*/', '* /');
  // What a comment must not hold: XML 1.0 (fifth edition), section 2.5.
  if (isComment) return fact.replaceAll(/-(?=-)/g, '- ').replace(/-$/, '- ');
  const references: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
    "'": '&apos;',
  };
  return fact.replaceAll(/[&<>"']/g, (character) => references[character]);
}

/** The values that remarks set of what stands right before them; a remark that did so goes. */
function* settingEdits(
  template: Instrument,
  text: string,
  factOf: (name: string) => string | undefined,
): Generator<TextEdit> {
  for (const { kind, source, start, end, value } of template.directives) {
    if (kind !== 'comment' || source !== 0) continue;
    const settings = value.split(';').map((one) => setting.exec(one));
    if (settings.some((one) => !one)) continue;
    const from = template.format === 'xml' ? text.lastIndexOf('<', start - 1) : lineStartAt(text, start);
    const before = text.slice(from, start);
    let isAll = true;
    for (const found of settings) {
      const [, name = '', fact = ''] = found ?? [];
      const known = factOf(fact);
      const place = known === undefined ? undefined : placeOf(before, name);
      if (known === undefined || !place || !/^[^\s"'<>&$]+$/.test(known)) {
        isAll = false;
        continue;
      }
      yield replacing(mainSpan(from + place[0], from + place[1]), known);
    }
    let blanks = start;
    while (text[blanks - 1] === ' ' || text[blanks - 1] === '\t') blanks--;
    if (isAll) yield replacing(mainSpan(blanks, end), '');
  }
}

/** Where the last value of a name stands in a stretch of text. */
function placeOf(text: string, name: string): readonly [number, number] | undefined {
  const escaped = name.replace(/[.]/g, '\\.');
  const all = [
    ...text.matchAll(new RegExp(`(?<![\\w.:-])${escaped}\\s*=\\s*(?:"([^"]*)"|'([^']*)'|([^\\s"']+))`, 'g')),
  ];
  const found = all.at(-1);
  if (!found) return undefined;
  const value = found[1] ?? found[2] ?? found[3];
  const end = found.index + found[0].length - (found[3] === undefined ? 1 : 0);
  return [end - value.length, end];
}
