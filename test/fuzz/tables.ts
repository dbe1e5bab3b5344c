import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { lackOfZoneTable, looksLikeZoneTable } from '../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../server/table/readTable';
import { notations } from '../../server/workspace/notations/notationOf';
import { effective } from '../unit/features/anyInstrument';
import { damaged, damages } from './damage';
import { target } from './target';

const folder = 'test/corpus/tables';
const tables = readdirSync(folder)
  .filter((name) => name.endsWith('.txt'))
  .map((name) => readFileSync(join(folder, name), 'utf8').slice(0, 4000));

/** Every text is read as a table: spans lie in it, and what is written of its zones means what was read. */
export const tableTargets = [
  target(
    'zone tables',
    'texts',
    fc.record({ text: fc.constantFrom(...tables), list: damages }),
    ({ text: whole, list }) => {
      const text = damaged(whole, list);
      looksLikeZoneTable(text);
      lackOfZoneTable(text);
      const { instrument, notes, problem } = readZoneTable(text);
      assert((problem === undefined) === instrument.regions.length > 0, 'a problem or zones');
      for (const { start, end } of notes) assert(0 <= start && start <= end && end <= text.length);
      for (const notation of [notations.sfz, notations.xml]) {
        const { text: written, notes: losses } = notation.write(instrument);
        if (losses.some(({ kind }) => kind === 'dropped' || kind === 'approximated')) continue;
        const again = notation.read(written, { path: '/music/a' });
        assert.deepEqual(effective(again), effective(instrument));
      }
    },
  ),
];
