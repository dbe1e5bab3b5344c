import type { Instrument } from '../model/instrument';
import type { WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { joinedText } from '../model/variables/variableText';
import { writeKeeping } from '../model/writing/writeKeeping';
import type { DirectiveForms, WritingPlan } from '../model/writing/writingPlan';
import { planWriting } from '../model/writing/writingPlan';
import { writtenInPieces } from '../model/writing/writtenPieces';
import { encodedAttributeText } from './attributeText';
import type { ElementOptions } from './elementWriter';
import { ElementWriter } from './elementWriter';
import { readXmlInSteps } from './read';

/**
 * Writes an instrument as one XML text in our notation: nested elements in the order of the headers, comments with the
 * header that they belong to, variables and included files written out or kept, as `options` say. What XML cannot hold is
 * left out with a note.
 *
 * The lines are made here and not by a general builder of XML: fast-xml-parser's keeps the order, but it lets line ends,
 * tabs and control characters stand in values as they are, so that these read back changed or the text is not well formed.
 */
export function writeXml(instrument: Instrument, options: WriteOptions = {}): Written {
  return finish(writeXmlInSteps(instrument, options));
}

/** As {@link writeXml}, in steps. */
export function writeXmlInSteps(instrument: Instrument, options: WriteOptions = {}): Steps<Written> {
  return writeKeeping(instrument, options, {
    forms: directiveForms,
    write: (plan) => writeDocument(instrument, options, plan),
    read: readXmlInSteps,
  });
}

/** What instrument XML can say of variables and includes. */
const directiveForms: DirectiveForms = {
  hasLiterals: true,
  hasVariableNames: false,
  canDefine: (name, value) => /^\w+$/.test(name) && encodedAttributeText(value).leftOut.length === 0,
  canInclude: (path) => joinedText(path) !== '' && encodedAttributeText(path).leftOut.length === 0,
};

function* writeDocument(instrument: Instrument, options: WriteOptions, plan: WritingPlan): Steps<Written> {
  const writer = new ElementWriter(instrument, 1, options, plan);
  writer.writeRoot();
  yield* writer.write();
  writer.line('</instrument>', 0);
  writer.noteComments();
  const kept = instrument.parameters.count - writer.noted.size;
  return writtenInPieces(writer.pieces(), { notes: writer.notes, kept });
}

/** The lines of an instrument's elements without the one around them, indented by `depth` steps; variables and includes are written out. */
export function* writeElements(
  instrument: Instrument,
  depth: number,
  options: ElementOptions = {},
): Steps<{ text: string; notes: ConversionNote[] }> {
  const plan = planWriting(instrument, options, directiveForms, 'nothing');
  const writer = new ElementWriter(instrument, depth, options, plan);
  yield* writer.write();
  return { text: writer.pieces().join(''), notes: writer.notes.map(({ written: _, ...note }) => note) };
}
