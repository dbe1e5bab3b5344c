import { editedText } from '../../model/editing/changedInstrument';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { OutputError } from '../../model/output';
import { examplesOf } from './examples';
import { factNotes, instrumentFacts } from './facts';
import type { FilledTemplate } from './fillExamples';
import { fillExamples } from './fillExamples';
import type { Facts } from './markings';
import { fillMarkings } from './markings';
import { mergedIn } from './mergedValues';
import { RegionsLeftOut } from './regionsLeftOut';
import { loopsByPoints, namesGroupsAlone, sourceSections } from './sourceSections';
import type { Template } from './template';
import { accountOf } from './templateAccount';
import { templateSamplePath } from './templateSamplePath';
import { unreadOfExamples } from './unreadOfExamples';

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
 * A region that would sound otherwise than it is meant, because the template cannot say what it is, is left out and noted.
 * Fails with an {@link OutputError} where the template has no example, or the source no region.
 */
export async function intoTemplate(template: Template, source: TemplateSource): Promise<TemplateResult> {
  const { notation, read } = template;
  const { instrument } = source;
  if (instrument.regions.length === 0)
    throw new OutputError('what is to be put into the template has no regions');
  const marked = await read(template.text);
  const facts = new Map([...instrumentFacts(instrument), ...source.facts]);
  const filled = fillMarkings(marked, notation, facts);
  const examples = await withGroup(notation, read, await read(filled.text), instrument);
  const slots = examplesOf(examples, notation);
  if (slots.length === 0)
    throw new OutputError('the template has no example: give it a region that stands for the new ones');
  const control = examples.controlAt(0, slots[0].unit.start);
  const sections = sourceSections(instrument, {
    samplePath: templateSamplePath(source, control.defaultPath),
    keyOffset: control.keyOffset,
    merged: mergedIn(notation),
    loopsByPoints: loopsByPoints(notation),
    namesGroupsAlone: namesGroupsAlone(notation),
  });
  const leftOut = new RegionsLeftOut(instrument);
  let work = await fillExamples(template, examples, slots, sections);
  // Only a notation with places for some values alone cannot say what a region is. What is written instead may say less again.
  while (notation.parameters && leftOut.add(work))
    work = await fillExamples(template, examples, slots, leftOut.without(sections));
  if (notation.parameters && writesNoKeys(notation, instrument, work))
    throw new OutputError(
      'no place in the template is known to hold keys, so all regions would keep the keys of its examples: say in a vocabulary file where keys stand',
    );
  const account = accountOf({ ...work, instrument, notation, leftOut: leftOut.regions });
  return {
    ...account,
    text: work.text,
    missing: filled.missing,
    notes: [
      ...factNotes(filled.missing),
      ...unreadOfExamples(notation, examples, instrument),
      ...work.notes,
      ...leftOut.notes(),
      ...account.notes,
    ],
  };
}

const keyNames: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key', 'pitch_keycenter']);

/** Whether regions have keys of which none came into the result, for lack of a place. */
function writesNoKeys(notation: Notation, source: Instrument, { result, regions }: FilledTemplate): boolean {
  if (notation.parameters?.(HeaderKind.unknown).some((name) => keyNames.has(name)) !== false) return false;
  const keyed = regions.filter((one) => [...one.source.parameters.keys()].some((name) => keyNames.has(name)));
  return (
    keyed.length > 0 &&
    keyed.every(
      (one) =>
        source.lowKey[one.source.header] !== result.lowKey[one.header] &&
        source.highKey[one.source.header] !== result.highKey[one.header],
    )
  );
}

/** A template without any group gets one around its examples where the source has groups and the notation allows it. */
async function withGroup(
  notation: Notation,
  read: Template['read'],
  template: Instrument,
  source: Instrument,
): Promise<Instrument> {
  const slots = examplesOf(template, notation);
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
  return isSame && examplesOf(grouped, notation).some(({ group }) => group >= 0) ? grouped : template;
}
