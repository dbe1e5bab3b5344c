import { bareWord } from '../../trade/languages/spelling';
import type { TableCells } from './cells';
import type { TableRows } from './tableRows';

/** Generators of SoundFont (SoundFont Technical Specification 2.04, 8.1.2), as the standard spells them. */
const generators: ReadonlySet<string> = new Set([
  'keyrange',
  'velrange',
  'overridingrootkey',
  'initialattenuation',
  'coarsetune',
  'finetune',
  'samplemodes',
  'sampleid',
]);
/** Names that stand in no other tables. */
const ownNames: ReadonlySet<string> = new Set(['overridingrootkey', 'initialattenuation', 'samplemodes']);
/** So many generators make a table one of generators (our choice). */
const fewestGenerators = 3;
const wholeNumber = /^[-+]?\d{1,5}$/;
/** What `sampleModes` says by its two lowest bits (8.1.2, 54); 2 is not used, and sounds as 0 does. */
const modes = ['no loop', 'loop continuous', 'no loop', 'loop sustain'];

/** How the whole numbers of generators are counted (8.1.2 and 8.1.3): attenuation in centibels, pan in tenths of a percent to either side of 50. */
const readings: ReadonlyMap<string, (amount: number) => string> = new Map([
  ['initialattenuation', (amount) => `${amount / 10} dB`],
  ['pan', (amount) => `${amount / 5}%`],
  ['samplemodes', (amount) => modes[amount] ?? String(amount)],
]);

/** Puts the usual units in place of those that generators of SoundFont are counted in, where the headings of a table are their names. */
export function useGeneratorUnits(cells: TableCells, { headings, data }: TableRows): void {
  const names = headings.map(({ text }) => bareWord(text));
  const count = names.filter((name) => generators.has(name)).length;
  if (count < fewestGenerators || !names.some((name) => ownNames.has(name))) return;
  const taken: string[] = [];
  for (const [column, name] of names.entries()) {
    const reading = readings.get(name);
    const filled = data.map((row) => cells.cell(row, column)).filter((cell) => cells.value(cell) !== '');
    if (!reading || !filled.every((cell) => wholeNumber.test(cells.value(cell)))) continue;
    for (const cell of filled) cells.rewritten.set(cell, reading(Number(cells.value(cell))));
    if (name !== 'samplemodes')
      taken.push(name === 'pan' ? 'pan in tenths of a percent' : 'attenuation in tenths of a decibel');
  }
  if (taken.length === 0 || data.length === 0) return;
  const { start, end } = cells.rowSpan(data[0]);
  const fraction = taken.some((text) => text.startsWith('attenuation'))
    ? ' Some players take only 0.4 of the attenuation; if the instrument sounds uneven, try that.'
    : '';
  const text = `The headings are generators of SoundFont, which count ${taken.join(' and ')}. The values are read so.${fraction}`;
  cells.assumptions = [...cells.assumptions, { text, start, end }];
}
