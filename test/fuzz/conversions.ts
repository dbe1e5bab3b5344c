import fc from 'fast-check';
import type { Instrument } from '../../server/model/instrument';
import type { ConversionNote } from '../../server/model/notes';
import { resolveOpcode } from '../../server/model/opcodes/resolve';
import { notations } from '../../server/workspace/notations/notationOf';
import { files, sfzWithDirectives, xmlWithDirectives } from '../unit/conversion/anyDirectives';
import { anyTexts } from '../unit/edits/anyTexts';
import type { Format } from '../unit/features/anyInstrument';
import { anyInstrumentXml, anySfz, effective, readText } from '../unit/features/anyInstrument';
import { damaged, damages } from './damage';
import { target } from './target';

interface Case {
  text: string;
  files: Readonly<Record<string, string>>;
  directives: 'keep' | 'inline';
}

function cases(format: Format): fc.Arbitrary<Case> {
  const plain = format === 'sfz' ? [anySfz, sfzWithDirectives] : [anyInstrumentXml, xmlWithDirectives];
  const texts = fc.oneof(
    ...plain.map((arbitrary) => arbitrary.map((main) => ({ main, files }))),
    anyTexts[format],
  );
  return fc
    .record({ texts, list: damages, directives: fc.constantFrom<'keep' | 'inline'>('keep', 'inline') })
    .map(({ texts: { main, files: beside }, list, directives }) => ({
      text: damaged(main, list),
      files: beside,
      directives,
    }));
}

/** The names of parameters and headers that a note speaks of: in its message, or in the text that it is about. */
function isTold(name: string, notes: readonly ConversionNote[], { sources }: Instrument): boolean {
  const names = /key|pitch|tune/.test(name) ? [plain(name), 'key', 'pitch', 'tune'] : [plain(name)];
  return notes.some(({ message, source, start, end }) => {
    const text = sources[source]?.text.slice(Math.max(0, start - 40), end + 40) ?? '';
    return names.some((one) => isSpelled(one, message) || isSpelled(one, text));
  });
}

/** Whether a text has a name, in whichever of its spellings. */
function isSpelled(name: string, text: string): boolean {
  if (plain(text).includes(name)) return true;
  const words = text.match(/[a-z_]\w+/gi) ?? [];
  return words.some((word) => plain(resolveOpcode(word)?.canonical ?? '') === name);
}

/** As an older spelling of the same name would be too. */
const plain = (text: string) => text.toLowerCase().replaceAll('_', '');

/** Fails where a region has another value in the new text than in the old one and no note says so. */
function expectKeptOrTold(from: Format, to: Format, { text, files: beside, directives }: Case): void {
  const first = readText(from, text, beside);
  const written = notations[to].write(first, { directives });
  const second = readText(to, written.text, beside);
  const before = effective(first);
  const after = effective(second);
  if (JSON.stringify(before) === JSON.stringify(after)) return;
  const losses = written.notes.filter(({ kind }) => kind === 'dropped' || kind === 'approximated');
  const said = losses.map(({ message }) => message).join('\n');
  if (losses.length === 0)
    throw new Error(
      `A value changed and nothing is said of it:\n${difference(before, after)}\n${written.text}`,
    );
  if (before.length !== after.length) return;
  // Values that keys are counted from change them all.
  if (/note_offset|octave_offset|default_path|control/.test(said)) return;
  for (const [at, values] of before.entries()) {
    const names = new Set([...Object.keys(values), ...Object.keys(after[at] ?? {})]);
    for (const name of names)
      if (values[name] !== after[at]?.[name] && !isTold(name, losses, first))
        throw new Error(
          `${name} of region ${at} changed from ${values[name]} to ${after[at]?.[name]}, said is:\n${said}\n${written.text}`,
        );
  }
}

function difference(before: readonly object[], after: readonly object[]): string {
  for (let at = 0; at < Math.max(before.length, after.length); at++) {
    const [one, other] = [JSON.stringify(before[at]), JSON.stringify(after[at])];
    if (one !== other) return `region ${at}: ${one}\nbecame ${other}`;
  }
  return '';
}

/** Conversions between the two notations keep every value in force or say what they lost. */
export const conversionTargets = [
  target('XML to SFZ', 'texts', cases('xml'), (one) => expectKeptOrTold('xml', 'sfz', one)),
  target('SFZ to XML', 'texts', cases('sfz'), (one) => expectKeptOrTold('sfz', 'xml', one)),
  target('XML to XML', 'texts', cases('xml'), (one) => expectKeptOrTold('xml', 'xml', one)),
  target('SFZ to SFZ', 'texts', cases('sfz'), (one) => expectKeptOrTold('sfz', 'sfz', one)),
];
