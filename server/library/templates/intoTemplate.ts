import { editedText } from '../../model/editing/changedInstrument';
import type { TextEdit } from '../../model/finding';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { OutputError } from '../../model/output';
import type { Assignment } from './assignExamples';
import { assignExamples } from './assignExamples';
import { changeCopy } from './changeCopy';
import { CopyValues } from './copyValues';
import { examplesOf } from './examples';
import { factNotes, instrumentFacts } from './facts';
import type { Facts } from './markings';
import { fillMarkings } from './markings';
import type { ExampleCopy } from './repeatExamples';
import { repeatExamples } from './repeatExamples';
import { sourceSections, takesTuningAlone } from './sourceSections';
import { accountOf } from './templateAccount';
import { templateSamplePath } from './templateSamplePath';
import { unreadOfExamples } from './unreadOfExamples';

/** An instrument text as a person wrote it, with examples that stand for regions to come. */
export interface Template {
  text: string;
  notation: Notation;
  /** Reads a text as the template is read, with what it includes and what is known of samples. */
  read(text: string): Promise<Instrument>;
}

/** What is put into a template. */
export interface TemplateSource {
  instrument: Instrument;
  /** The folder of the instrument and that of the result, absolute with `/`; paths stay as they are where one is missing. */
  folder: string | undefined;
  targetFolder: string | undefined;
  facts: Facts;
}

/** The text that came of a template, with an account of every value of the source. */
export interface TemplateResult {
  text: string;
  notes: ConversionNote[];
  /** How many values of the source were carried over exactly. */
  kept: number;
  /** Facts that the template has a place for and that stay marked. */
  missing: string[];
}

/**
 * Puts an instrument into a template: its groups and regions take the place of the examples, in their style, facts are put
 * where the template marks them, and all else stays byte for byte. Values of the source come before those of the template.
 * Fails with an {@link OutputError} where the template has no example.
 */
export async function intoTemplate(template: Template, source: TemplateSource): Promise<TemplateResult> {
  const { notation, read } = template;
  const { instrument } = source;
  const marked = await read(template.text);
  const facts = new Map([...instrumentFacts(instrument), ...source.facts]);
  const filled = fillMarkings(marked, notation, facts);
  const examples = await withGroup(notation, read, await read(filled.text), instrument);
  const slots = examplesOf(examples);
  if (slots.length === 0)
    throw new OutputError('the template has no example: give it a region that stands for the new ones');
  const control = examples.controlAt(0, slots[0].unit.start);
  const sections = sourceSections(instrument, {
    samplePath: templateSamplePath(source, control.defaultPath),
    keyOffset: control.keyOffset,
    takesTuningAlone: takesTuningAlone(notation),
  });
  const assignment = assignExamples(examples, slots, sections);
  const { document, copies } = await repeated(read, examples, assignment);
  const values = new CopyValues(examples, notation);
  const text = editedText(document.sources[0].text, copyEdits(notation, document, copies, values));
  const result = await read(text);
  if (result.headers.count !== document.headers.count)
    throw new OutputError(
      'the template cannot take these values, because its groups or regions would change',
    );
  const regions = copies.flatMap(({ source: region, ...copy }) =>
    region ? [{ ...copy, source: region }] : [],
  );
  const account = accountOf({ instrument, values, result, regions });
  return {
    ...account,
    text,
    missing: filled.missing,
    notes: [
      ...factNotes(filled.missing),
      ...unreadOfExamples(notation, examples, instrument),
      ...account.notes,
    ],
  };
}

/** A template without any group gets one around its examples where the source has groups and the notation allows it. */
async function withGroup(
  notation: Notation,
  read: Template['read'],
  template: Instrument,
  source: Instrument,
): Promise<Instrument> {
  const slots = examplesOf(template);
  const isGrouped = [...source.regions].some((region) => source.groupLabel(region));
  if (!isGrouped || slots.length !== 1 || slots[0].group >= 0) return template;
  if (notation.headers && !notation.headers.includes('group')) return template;
  const [{ regions }] = slots;
  const { edits } = notation.edit(template, {
    kind: 'group',
    first: regions[0].header,
    last: regions[regions.length - 1].header,
    sets: [{ name: 'group_label', value: 'group' }],
  });
  if (edits.length === 0) return template;
  const grouped = await read(editedText(template.sources[0].text, edits));
  const isSame = grouped.regions.length === template.regions.length;
  return isSame && examplesOf(grouped).some(({ group }) => group >= 0) ? grouped : template;
}

interface RepeatedDocument {
  document: Instrument;
  copies: FoundCopy[];
}

/** A copy with its header in the document. */
interface FoundCopy extends ExampleCopy {
  header: number;
}

async function repeated(
  read: Template['read'],
  examples: Instrument,
  assignment: Assignment,
): Promise<RepeatedDocument> {
  const { text, copies } = repeatExamples(examples, assignment);
  const document = await read(text);
  const byStart = new Map<number, number>();
  for (let header = 0; header < document.headers.count; header++)
    if (document.headerSource(header) === 0) byStart.set(document.headerSpan(header).start, header);
  const found = copies.map((copy) => ({ ...copy, header: byStart.get(copy.start) ?? -1 }));
  const isWhole = found.every(
    ({ header, source }) =>
      header >= 0 && document.kind(header) === (source ? HeaderKind.region : HeaderKind.group),
  );
  if (!isWhole)
    throw new OutputError(
      'the examples of the template cannot be repeated: what they mean depends on where they stand',
    );
  return { document, copies: found };
}

function copyEdits(
  notation: Notation,
  document: Instrument,
  copies: readonly FoundCopy[],
  values: CopyValues,
): TextEdit[] {
  return copies.flatMap((copy) =>
    changeCopy(notation, document, copy.header, values.of(copy), (name) => values.keeps(copy, name)),
  );
}
