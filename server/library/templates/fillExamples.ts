import { editedText } from '../../model/editing/changedInstrument';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { CopiedStretch, Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { OutputError } from '../../model/output';
import { mainSpan } from '../../model/text/span';
import type { Assignment } from './assignExamples';
import { assignExamples } from './assignExamples';
import { changeCopy } from './changeCopy';
import { CopyValues } from './copyValues';
import type { ExampleSlot } from './examples';
import { examplesOf } from './examples';
import { groupingOf } from './grouping';
import type { FoundCopy } from './repeatExamples';
import { repeatExamples } from './repeatExamples';
import type { SourceRegion, SourceSection } from './sourceSections';
import type { Template } from './template';
import type { WrittenRegion } from './templateAccount';
import { withFolders, withSampleList } from './templateSamples';
import { stretchesOf } from './unreadOfExamples';

/** A template whose examples gave way to regions, and how each of them was written. */
export interface FilledTemplate {
  text: string;
  /** The text as it reads. */
  result: Instrument;
  values: CopyValues;
  regions: WrittenRegion[];
  /** Whether a word of each group says if its keyswitch counts before any is pressed. */
  saysFirst: boolean;
  /** Notes on the list of samples. */
  notes: ConversionNote[];
}

/**
 * Puts regions in the place of the examples of a template and reads what came of it. Fails with an {@link OutputError} where that cannot be
 * done.
 */
export async function fillExamples(
  { notation, read }: Template,
  template: Instrument,
  slots: readonly ExampleSlot[],
  sections: readonly SourceSection[],
): Promise<FilledTemplate> {
  const { template: examples, notes } = await withSampleList(notation, read, template, slots, sections);
  const found = examplesOf(examples, notation);
  const grouping = groupingOf(notation, examples, found);
  const assignment = assignExamples(examples, found, sections, grouping);
  const { document: repeats, copies } = await repeated(read, examples, assignment);
  const document = await withFolders(notation, read, repeats, copies);
  const values = new CopyValues(examples, notation);
  const filled = await edited(read, document, copyEdits(notation, document, copies, values));
  const differing = notation.differing?.(examples, stretchesOf(found));
  const plain = await edited(read, filled, differing?.edits(filled, stretchesOfCopies(filled, copies)) ?? []);
  const result = await edited(read, plain, notation.countEdits?.(template, plain) ?? []);
  const [{ text }] = result.sources;
  if (result.headers.count !== document.headers.count)
    throw new OutputError(
      'the template cannot take these values, because its groups or regions would change',
    );
  const regions = copies.flatMap(({ source: region, ...copy }) =>
    region ? [{ ...copy, source: region }] : [],
  );
  return { text, result, values, regions, notes, saysFirst: differing?.saysFirst === true };
}

function stretchesOfCopies(document: Instrument, copies: readonly FoundCopy[]): CopiedStretch[] {
  return copies.map(({ header, source, section }) => ({
    span: mainSpan(document.headerSpan(header).start, document.bodySpan(header).end),
    isFirst: soundsFirst(source ?? section.regions[0]?.source),
  }));
}

/** Whether the keyswitch of a region is the one that counts before any is pressed. */
function soundsFirst(source: SourceRegion | undefined): boolean | undefined {
  const own = source?.values.get('sw_last');
  return own === undefined ? undefined : source?.values.get('sw_default') === own;
}

/** A document as it reads with some edits. */
async function edited(
  read: Template['read'],
  document: Instrument,
  edits: readonly TextEdit[],
): Promise<Instrument> {
  return edits.length === 0 ? document : read(editedText(document.sources[0].text, edits));
}

interface RepeatedDocument {
  document: Instrument;
  copies: FoundCopy[];
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
    ({ header, example }) => header >= 0 && document.kind(header) === examples.kind(example),
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
