import { escaped, markdownTable } from '../../features/sampleReport/markdown';
import { counted } from '../../model/wording/counted';
import { caution } from '../build/conversionNote';
import type { LibraryReport } from './libraryReport';
import type { LibraryRow } from './libraryRow';
import { proofWords } from './rowCells';

/** A page about a whole library, to be published with it: what it holds, what is not exact in it, how to report a fault. */
export function libraryNote({ title, instruments }: LibraryReport): string {
  const built = instruments.filter(({ record }) => record?.state === 'built');
  const others = instruments.filter(
    ({ row, record }) => record?.state !== 'built' || row.message !== undefined,
  );
  const isProved = built.some(({ row }) => row.proof);
  const headings = ['Instrument', 'Made from', 'Differs', 'Missing samples', 'Licence'];
  const parts = [
    `# ${escaped(title).replaceAll('#', '\\#')}`,
    `${counted(built.length, 'instrument')}, converted with Zonewright. Each has a page of its own in the folder notes.`,
    markdownTable(
      isProved ? [...headings, 'Played beside its source'] : headings,
      built.map(({ row }) => (isProved ? [...cellsOf(row), proofText(row)] : cellsOf(row))),
    ),
  ];
  if (others.length > 0)
    parts.push(
      '## Not converted, or not to all targets',
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

function cellsOf(row: LibraryRow) {
  return [row.name, row.source, differs(row), row.missing ?? 0, row.licence ?? 'not stated'];
}

function proofText({ proof }: LibraryRow): string {
  if (!proof) return 'not compared';
  const db = proof.worstDb === null ? '' : `, ${proof.worstDb} dB at the most`;
  return proofWords[proof.verdict] + db;
}

function differs({ assumed, approximated, dropped }: LibraryRow): string {
  const parts = [
    [assumed, 'assumed'],
    [approximated, 'in another way'],
    [dropped, 'left out'],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, words]) => `${count} ${words}`);
  return told.length === 0 ? 'in nothing' : told.join(', ');
}
