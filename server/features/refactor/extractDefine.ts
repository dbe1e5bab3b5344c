import { replacing } from '../../model/editing/edits';
import type { Refactoring, SelectedDocument } from './refactoring';

/** Gives a value a name: a variable that stands for it. */
export const extractDefine: Refactoring = {
  id: 'extractDefine',
  kind: 'refactor.extract',
  offer(selected) {
    const parameter = valueAt(selected);
    if (parameter < 0) return undefined;
    return `Define a variable for ${selected.instrument.valueText(parameter)}`;
  },
  make(selected) {
    const parameter = valueAt(selected);
    if (parameter < 0) return undefined;
    const { notation, instrument } = selected;
    const name = freeName(selected, instrument.names.text(instrument.canonicalName(parameter)));
    const value = instrument.valueText(parameter);
    const { edits } = notation.edit(instrument, { kind: 'define', name, value });
    const use = instrument.valueSpan(parameter);
    // What the outermost element of XML sets stands before all that can define something.
    if (edits.length === 0 || edits.some(({ start }) => start > use.start)) return undefined;
    return { edits: [...edits, replacing(use, name)] };
  },
};

/** The parameter of the document whose value the selection is in, if a variable can stand for it; else −1. */
function valueAt({ notation, instrument, start, end }: SelectedDocument): number {
  const place = notation.placeAt(instrument, start);
  if (place.kind !== 'value' || place.parameter < 0 || end > place.end) return -1;
  const { parameter } = place;
  const text = instrument.valueText(parameter);
  // A variable's value ends at a blank or a remark in one of the notations, and "$" would start another.
  const fits = text !== '' && text.length <= 200 && !/[\s$<>&"'=]|\/\/|\/\*/.test(text);
  return fits && !instrument.parameters.values.has(parameter) && instrument.parameterSource(parameter) === 0
    ? parameter
    : -1;
}

/** A name that no used one begins with, and that begins with no used one. */
function freeName({ instrument }: SelectedDocument, opcode: string): string {
  const used = instrument.sources.flatMap(({ text }) =>
    [...text.matchAll(/\$(\w+)|<define\b[^>]*?\bname\s*=\s*["']\$?(\w+)/g)].map(
      ([, variable, defined]) => variable ?? defined ?? '',
    ),
  );
  const base = opcode.toUpperCase().replace(/\W/g, '_');
  for (let number = 1; ; number++) {
    const name = number === 1 ? base : `V${number}_${base}`;
    const begins = used.some((other) => other.startsWith(name));
    // The longest name that is defined counts, so that beginning with another is no fault, only hard to read.
    const goesOn = number < 100 && used.some((other) => other !== '' && name.startsWith(other));
    if (!begins && !goesOn) return `$${name}`;
  }
}
