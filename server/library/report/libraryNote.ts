import { escaped, markdownTable } from '../../features/sampleReport/markdown';
import { counted } from '../../model/wording/counted';
import { caution } from '../build/conversionNote';
import type { LibraryReport, ReportedInstrument } from './libraryReport';

/** A page about a whole library, to be published with it: what it holds, what is not exact in it, how to report a fault. */
export function libraryNote({ title, instruments }: LibraryReport): string {
  const built = instruments.filter(({ record }) => record?.state === 'built');
  const others = instruments.filter(({ record }) => record?.state !== 'built');
  const parts = [
    `# ${escaped(title).replaceAll('#', '\\#')}`,
    `${counted(built.length, 'instrument')}, converted with Zonewright. Each has a page of its own in the folder notes.`,
    markdownTable(['Instrument', 'Made from', 'Differs', 'Missing samples', 'Licence'], built.map(cellsOf)),
  ];
  if (others.length > 0)
    parts.push(
      '## Not converted',
      others
        .map(({ row }) => `- ${escaped(row.name)}: ${escaped(row.message ?? 'not built yet.')}`)
        .join('\n'),
    );
  parts.push(
    '## If something is wrong',
    'Tell whoever shares this library which instrument, key and velocity, which player and version, what you hear and what you expected.',
    '## Before you share it',
    caution,
  );
  return `${parts.join('\n\n')}\n`;
}

function cellsOf({ row }: ReportedInstrument) {
  return [row.name, row.source, differs(row), row.missing ?? 0, row.licence ?? 'not stated'];
}

function differs({ assumed, approximated, dropped }: ReportedInstrument['row']): string {
  const parts = [
    [assumed, 'assumed'],
    [approximated, 'in another way'],
    [dropped, 'left out'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`);
  return told.length === 0 ? 'in nothing' : told.join(', ');
}
