import { joinEdits, puttingBehind, replacing } from '../model/editing/edits';
import { sharedTextRefusal, touchedSource } from '../model/editing/sharedText';
import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Change, Edited, NewParameter } from '../model/notation';
import { finish } from '../model/steps';
import type { Span } from '../model/text/span';
import { endOf, spanIn } from '../model/text/span';
import { lineEndOf } from '../model/text/textLines';
import { editSfz } from '../sfz/edit';
import { isAttributeName } from './attributeText';
import { insertElements } from './insert';
import { isReadAsXml } from './isInstrumentXml';
import { removeElement } from './removeElement';
import { defineInXml, groupInXml, inlineInXml, moveOutOfXml } from './restructure';
import { isXmlSpace, spaceEndAt } from './scan/characters';
import { quoteBefore } from './scan/quotes';
import { encodeXmlAttribute } from './scan/references';

/** The text edits that make a change in instrument XML, in the style of the text around; see `Notation.edit`. */
export function editXml(instrument: Instrument, change: Change): Edited {
  // An XML instrument can include SFZ, whose text is edited by its own rules.
  const touched = instrument.sources[touchedSource(instrument, change)];
  if (touched && touched !== instrument.sources[0] && !isReadAsXml(touched.path, touched.text))
    return editSfz(instrument, change);
  const refusal = sharedTextRefusal(instrument, change);
  if (refusal) return refusal;
  switch (change.kind) {
    case 'set':
      return setValue(instrument, change.header, change.name, change.value);
    case 'remove':
      return { edits: [removeAttribute(instrument, change.parameter)], notes: [] };
    case 'rename':
      if (!isAttributeName(change.name))
        return refused(instrument, instrument.headerOfParameter(change.parameter), change.name);
      return { edits: [replacing(instrument.nameSpan(change.parameter), change.name)], notes: [] };
    case 'removeHeader':
      return removeElement(instrument, change.header);
    case 'insert':
      return finish(insertElements(instrument, change.offset, change.instrument));
    case 'revise':
      return revise(instrument, change.header, change.remove, change.add);
    case 'define':
      return defineInXml(instrument, change.name, change.value);
    case 'group':
      return groupInXml(instrument, change.first, change.last, change.sets);
    case 'moveOut':
      return moveOutOfXml(instrument, change.first, change.last, change.path);
    case 'inline':
      return inlineInXml(instrument, change.directive);
  }
}

/** Takes attributes out of an element and adds others behind those that stay. */
function revise(
  instrument: Instrument,
  header: number,
  remove: readonly number[],
  add: readonly NewParameter[],
): Edited {
  const gone = new Set(remove);
  const edits = remove.map((parameter) => removeAttribute(instrument, parameter));
  const odd = add.find(({ name }) => !isAttributeName(name));
  if (odd) return refused(instrument, header, odd.name);
  if (add.length > 0) {
    const newText = add.map(({ name, value }) => ` ${name}="${encodeXmlAttribute(value).text}"`).join('');
    let kept = instrument.endParameter(header) - 1;
    while (kept >= instrument.firstParameter(header) && gone.has(kept)) kept--;
    const isNone = kept < instrument.firstParameter(header);
    const last = isNone ? instrument.headerSpan(header) : attributeEnd(instrument, kept);
    edits.push(puttingBehind(last, newText));
  }
  return { edits: joinEdits(edits), notes: [] };
}

function textOf(instrument: Instrument, source: number): string {
  return instrument.sources[source]?.text ?? '';
}

function refused(instrument: Instrument, header: number, name: string): Edited {
  const message = `"${name}" cannot be the name of an attribute, so nothing was changed.`;
  return { edits: [], notes: [{ kind: 'dropped', ...instrument.headerSpan(header), message }] };
}

function setValue(instrument: Instrument, header: number, name: string, value: string): Edited {
  const { text: encoded, leftOut } = encodeXmlAttribute(value);
  const notes: Edited['notes'] = [];
  if (leftOut.length > 0) {
    const message = `XML cannot hold ${leftOut.join(', ')}, so the value of ${name} is written without.`;
    notes.push({ kind: 'dropped', ...instrument.headerSpan(header), message });
  }
  const own = instrument.own(header, instrument.names.canonical(instrument.names.idOf(name)));
  if (own >= 0) {
    const span = instrument.valueSpan(own);
    const single = quoteBefore(textOf(instrument, span.source), span.start) === "'";
    return { edits: [replacing(span, single ? encoded.replaceAll("'", '&apos;') : encoded)], notes };
  }
  if (!isAttributeName(name)) return refused(instrument, header, name);
  return { edits: [addAttribute(instrument, header, `${name}="${encoded}"`)], notes };
}

function addAttribute(instrument: Instrument, header: number, attribute: string): TextEdit {
  const last = instrument.endParameter(header) - 1;
  if (last < instrument.firstParameter(header))
    return puttingBehind(instrument.headerSpan(header), ` ${attribute}`);
  const { source, start } = instrument.parameterSpan(last);
  const text = textOf(instrument, source);
  // The new attribute goes on a line of its own where the last one has one.
  const lead = /(^|[\r\n])([ \t]*)$/.exec(text.slice(Math.max(0, start - 200), start));
  const before = lead ? lineEndOf(text) + lead[2] : ' ';
  return puttingBehind(attributeEnd(instrument, last), before + attribute);
}

/** Behind the closing quote of a parameter's value, or the value's end where there is none. */
function attributeEnd(instrument: Instrument, parameter: number): Span {
  const value = instrument.valueSpan(parameter);
  const text = textOf(instrument, value.source);
  const quote = quoteBefore(text, value.start);
  const close = spaceEndAt(text, value.end);
  return quote !== '' && text[close] === quote ? spanIn(value.source, close + 1, close + 1) : endOf(value);
}

function removeAttribute(instrument: Instrument, parameter: number): TextEdit {
  const { source, start: nameStart } = instrument.nameSpan(parameter);
  const text = textOf(instrument, source);
  const { end } = attributeEnd(instrument, parameter);
  let start = nameStart;
  while (start > 0 && isXmlSpace(text.charCodeAt(start - 1))) start--;
  return replacing(spanIn(source, start, end), '');
}
