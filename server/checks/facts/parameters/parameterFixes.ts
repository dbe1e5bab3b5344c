import { joinEdits, replacing } from '../../../model/editing/edits';
import type { Fix, TextEdit } from '../../../model/finding';
import { HeaderEdits, type RangeName } from '../../../model/style/headerEdits';
import { hasVariableInName } from '../../../model/variables/textBeforeVariables';
import type { CheckContext } from '../../rule';

/**
 * Edits that give a parameter another value in its place; none where its name and value come from one variable, or where
 * the text stands for several regions since several includes bring it in.
 */
export function valueEdits(
  { instrument, notation }: CheckContext,
  parameter: number,
  value: string,
): TextEdit[] {
  const span = instrument.valueSpan(parameter);
  if (instrument.nameSpan(parameter).end > span.start || instrument.readOften.has(span.source)) return [];
  const header = instrument.headerOfParameter(parameter);
  const name = instrument.canonicalName(parameter);
  if (instrument.own(header, name) !== parameter) return [replacing(span, value)];
  return notation.edit(instrument, { kind: 'set', header, name: instrument.names.text(name), value }).edits;
}

/** Edits that give a header an end of a range or a root key of its own, in the document's style; none where it cannot be written. */
export function rangeEdits(
  { instrument, notation }: CheckContext,
  header: number,
  name: RangeName,
  value: number,
): TextEdit[] {
  const editor = new HeaderEdits(notation, instrument);
  const edits = editor.values(header, new Map([[name, value]]));
  return editor.refusal === undefined ? edits : [];
}

/** A fix that gives a parameter another value. */
export function valueFix(
  context: CheckContext,
  parameter: number,
  value: string,
  title: string,
  safe: boolean,
): Fix[] {
  return fixOf(title, valueEdits(context, parameter, value), safe);
}

/** Fixes whose titles tell of one place, with what they do at any place. */
export function ofKind(kind: string, fixes: Fix[]): Fix[] {
  return fixes.map((fix) => ({ ...fix, kind }));
}

/** A fix that writes a parameter under another name. */
export function renameFix(
  { instrument, notation }: CheckContext,
  parameter: number,
  name: string,
  safe: boolean,
): Fix[] {
  if (instrument.nameSpan(parameter).end > instrument.valueSpan(parameter).start) return [];
  const source = instrument.parameterSource(parameter);
  if (instrument.readOften.has(source) && hasVariableInName(instrument, parameter)) return [];
  return fixOf(`Write ${name}`, notation.edit(instrument, { kind: 'rename', parameter, name }).edits, safe);
}

/** A fix that takes a parameter out. */
export function removeFix({ instrument, notation }: CheckContext, parameter: number, title: string): Fix[] {
  return fixOf(title, notation.edit(instrument, { kind: 'remove', parameter }).edits, false);
}

/** A fix whose parts only make sense together: none where one of them gives no edit. What one part takes out, another may add to. */
export function fixOfParts(title: string, parts: readonly (readonly TextEdit[])[], safe: boolean): Fix[] {
  return parts.some((edits) => edits.length === 0) ? [] : fixOf(title, joinEdits(parts.flat()), safe);
}

/** A fix of these edits; none where there is nothing to edit. */
export function fixOf(title: string, edits: TextEdit[], safe: boolean): Fix[] {
  return edits.length > 0 ? [{ title, edits, safe }] : [];
}
