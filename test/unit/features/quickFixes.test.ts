import { describe, expect, it } from 'vitest';
import { allSafeEdits, quickFixesAt } from '../../../server/features/quickFixes';
import { replacing } from '../../../server/model/editing/edits';
import type { Finding, Fix } from '../../../server/model/finding';
import { spanIn } from '../../../server/model/text/span';

function finding(start: number, end: number, fixes: Fix[], source = 0): Finding {
  return {
    code: 'opcode-alias',
    severity: 'hint',
    message: 'm',
    ...spanIn(source, start, end),
    fixes: () => fixes,
  };
}

function fix(start: number, end: number, safe = true, source = 0): Fix {
  return { title: 't', safe, edits: [replacing(spanIn(source, start, end), 'x')] };
}

describe('quick fixes', () => {
  const list = [
    finding(0, 4, [fix(0, 4, false)]),
    finding(10, 14, [fix(10, 14), fix(10, 12)]),
    finding(10, 14, [fix(0, 1)], 1),
  ];

  it('are those of findings that touch the place', () => {
    expect(quickFixesAt(list, 0, 4, 4)).toHaveLength(1);
    expect(quickFixesAt(list, 0, 5, 9)).toEqual([]);
    expect(quickFixesAt(list, 0, 0, 99)).toHaveLength(3);
    expect(quickFixesAt(list, 1, 10, 10)).toHaveLength(1);
  });

  it('are preferred where the first one is safe', () => {
    expect(quickFixesAt(list, 0, 0, 99).map(({ isPreferred }) => isPreferred)).toEqual([false, true, false]);
  });
});

describe('all safe fixes together', () => {
  it('leave out what is not safe, meets another change or belongs to another file', () => {
    const edits = allSafeEdits(
      [
        finding(0, 4, [fix(0, 4)]),
        finding(2, 6, [fix(2, 6)]),
        finding(8, 9, [fix(8, 9, false)]),
        finding(20, 24, [fix(20, 24, false), fix(21, 22)]),
        finding(30, 31, [fix(30, 31)], 1),
        finding(40, 41, [fix(40, 41, true, 1)]),
      ],
      0,
    );
    expect(edits.map(({ start, end }) => [start, end])).toEqual([
      [0, 4],
      [21, 22],
    ]);
  });
});
