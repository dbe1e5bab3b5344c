import { expect, it } from 'vitest';
import { regions } from '../tableRegions';

const rows = '\nvat_a.wav\t36\t40\t1\t60\t100\t2000\nvat_b.wav\t41\t45\t61\t127\t100\t3000\n';

it.each([
  'File\tKey from\tto\tVel from\tto\tLoop from\tto',
  'File\tLow key\thigh\tLow vel\thigh\tLoop start\tend',
  'Datei\tTaste von\tbis\tAnschlag von\tbis\tLoop von\tbis',
])('a heading of one word gives the other end of what stands in front of it: %j', (headings) => {
  const read = regions(headings + rows).map(
    ({ lokey, hikey, lovel, hivel, loop_start: start, loop_end: end }) =>
      [lokey, hikey, lovel, hivel, start, end].join(' '),
  );
  expect(read).toEqual(['36 40 1 60 100 2000', '41 45 61 127 100 3000']);
});

it('an end alone stays that of the sample', () => {
  const read = regions('File\tRoot\tStart\tEnd\nvat_a.wav\t36\t10\t2000\nvat_b.wav\t41\t10\t3000\n');
  expect(read.map(({ offset, end }) => [offset, end])).toEqual([
    ['10', '2000'],
    ['10', '3000'],
  ]);
});
