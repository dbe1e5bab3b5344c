import { it } from 'vitest';
import { readFileSync } from 'node:fs';
import { tableCells } from '/work/wt/shapes2/server/table/cells/tableCells';
import { findTables } from '/work/wt/shapes2/server/table/cells/tableRows';
it('x', () => {
  const c = tableCells(readFileSync(process.env.F ?? '', 'utf8'))!;
  for (let r = 0; r < c.rowCount; r++) { const o = []; for (let k = 0; k < c.width(r); k++) o.push(c.value(c.cell(r, k))); console.log(r, o.join(' | ')); }
  for (const t of findTables(c)) console.log(t.headings.map((h) => h.text), t.data.length, t.others);
});
