import { escaped } from '../../features/sampleReport/markdown';
import type { NoteKind } from '../../model/notes';
import { nameOf } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { keyText, noteNamesText } from '../../model/wording/rangeWords';
import type { InstrumentRecord, RecordNote } from './instrumentRecord';
import type { SourceKind } from './readSource';

const kinds: Readonly<Record<SourceKind, string>> = {
  sfz: 'an SFZ text',
  xml: 'an instrument XML text',
  vocabulary: 'an XML text of other names',
  table: 'a copied zone table',
  soundfont: 'a preset of a SoundFont',
  recordings: 'a folder of recordings',
};

const told: Readonly<Record<Exclude<NoteKind, 'ignored'>, string>> = {
  dropped: 'What could not be written',
  approximated: 'What is written in another way and may sound a little different',
  assumed: 'What the source does not say and was set to what is usual',
};

/** The caution that goes with everything that is shared or played. */
export const caution =
  'The recordings belong to their makers. Before you share them, make sure that their licence allows it, and ask the maker where it does not say; law differs by country. Play a new instrument quietly at first.';

/** A page about one instrument, to be published with it: what it was made of, what differs, how to report a fault. */
export function conversionNote(record: InstrumentRecord): string {
  const { name, facts, figures } = record;
  const parts = [`# ${heading(facts.title ?? name)}`, madeOf(record)];
  if (figures) parts.push(contents(record));
  parts.push('## Who made it', makers(record));
  parts.push('## What differs from the source', ...differences(record));
  if (record.totals.error + record.totals.warning > 0) parts.push('## What to look at', findingsText(record));
  parts.push('## If something is wrong', faultText(record), '## Before you share it', caution);
  return `${parts.join('\n\n')}\n`;
}

function heading(text: string): string {
  return escaped(text).replaceAll('#', '\\#');
}

function madeOf({ source, sourceKind, outputs, program }: InstrumentRecord): string {
  const targets = [...new Set(outputs.map(({ target }) => target))].join(', ');
  const kind = sourceKind ? kinds[sourceKind] : 'a source';
  return `Converted from ${escaped(nameOf(source))}, ${kind}, to ${escaped(targets)} with Zonewright ${program}.`;
}

function contents({ figures, measures }: InstrumentRecord): string {
  if (!figures) return '';
  const { regions, samples, layers, keys, missing } = figures;
  const range = keys ? ` on the keys ${noteNamesText(...keys)}` : '';
  const lines = [
    `${counted(regions, 'region')}${range}, ${counted(layers, 'velocity layer')}, ${counted(samples, 'sample file')}.`,
  ];
  if (missing > 0)
    lines.push(
      `${counted(missing, 'sample file is', 'sample files are')} missing, so some notes stay silent.`,
    );
  if (measures?.meanCents !== undefined)
    lines.push(
      `The measured pitch is ${measures.meanCents} cents from the root keys on average, and ${measures.greatestCents} at most.`,
    );
  return lines.join(' ');
}

function makers({ facts }: InstrumentRecord): string {
  const { maker, licence, source, credits = [], contact } = facts;
  const known = [
    maker && `Maker: ${escaped(maker)}`,
    source && `Source of the recordings: ${escaped(source)}`,
    `Licence: ${licence ? escaped(licence) : 'not stated. Ask the maker before you share it.'}`,
    ...credits.map((one) => `Credit: ${escaped(one)}`),
    contact && `Contact: ${escaped(contact)}`,
  ];
  return known.flatMap((line) => (line ? [`- ${line}`] : [])).join('\n');
}

function differences(record: InstrumentRecord): string[] {
  const { kept, notes, doubts } = record;
  const counts = `${counted(kept, 'value was', 'values were')} carried over exactly.`;
  const parts = notes.some(({ kind }) => kind !== 'ignored')
    ? [counts]
    : [`${counts} Nothing that sounds was left out or changed.`];
  for (const [kind, title] of Object.entries(told)) {
    const lines = notes.filter((note) => note.kind === kind).map(noteLine);
    if (lines.length > 0) parts.push(`${title}:`, lines.join('\n'));
  }
  const unread = notes.filter(({ kind }) => kind === 'ignored');
  if (unread.length > 0) parts.push('What was not read, or has no effect:', unread.map(noteLine).join('\n'));
  parts.push(...proofLines(record));
  if (doubts.length > 0)
    parts.push(
      'What was matched by evidence and is not confirmed yet:',
      doubts.map((one) => `- ${escaped(one)}`).join('\n'),
    );
  return parts;
}

function noteLine({ message, count, lines }: RecordNote): string {
  return `- ${escaped(message)}${count > 1 ? ` (${count} times: lines ${lines})` : ` (line ${lines})`}`;
}

/** How it sounds beside its source, where that was proved. */
function proofLines({ proofs = [] }: InstrumentRecord): string[] {
  return proofs.map(({ target, verdict, notes, differing, explained, worstDb, worst }) => {
    const played = `${counted(notes, 'note')} of the source and of the ${escaped(target)} text were played and compared.`;
    if (verdict === 'alike')
      return `${played} They sound alike${worstDb === null ? '' : `: the largest difference is ${worstDb} dB to full scale`}.`;
    const where = worst
      ? ` The largest difference is at key ${keyText(worst.key)}, velocity ${worst.velocity}, ${worstDb} dB to full scale: ${escaped(worst.cause)}`
      : '';
    if (verdict === 'noted')
      return `${played} ${counted(explained, 'note differs', 'notes differ')}, only where this page says why.${where}`;
    return `${played} ${counted(differing, 'note differs', 'notes differ')} for a reason that is not noted here.${where}`;
  });
}

/** Findings that are named; the others are counted. */
const mostNamed = 12;

function findingsText({ findings }: InstrumentRecord): string {
  const shown = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
  const lines = shown
    .slice(0, mostNamed)
    .map(({ message, file, line }) => `- ${escaped(message)} (${escaped(file)}, line ${line})`);
  if (shown.length > mostNamed) lines.push(`- and ${shown.length - mostNamed} more`);
  return lines.join('\n');
}

function faultText({ facts }: InstrumentRecord): string {
  const whom = facts.contact ? escaped(facts.contact) : 'whoever shares this instrument';
  return `Tell ${whom} which instrument, key and velocity, which player and version, what you hear and what you expected.`;
}
