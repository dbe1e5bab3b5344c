import { describe, expect, it } from 'vitest';
import { offByUnknown } from '../../../../server/checks/rules/offByUnknown';
import { foundBy, markedBy } from '../foundBy';

const marks = (text: string) => markedBy(offByUnknown, text);

/** sfzformat.com: off_by is the number of a group whose regions silence this one; group and off_by default to 0, which is none. */
describe('an off_by whose group no region has', () => {
  it.each([
    ['<region> group=1 off_by=2', ['2']],
    ['<region> off_by=2', ['2']],
    ['<region> off_by=2 <region> off_by=3 <region> group=3', ['2']],
    ['<region> off_by=-1 <region> group=1', ['-1']],
    ['<region> polyphony_group=3 offby=4', ['4']],
  ])('%s', (text, expected) => {
    expect(marks(text).sort()).toEqual(expected);
  });

  it.each([
    '<region> group=1 off_by=1',
    '<region> off_by=2 <region> group=2',
    '<group> group=2 <region> off_by=2',
    '<region> off_by=0',
    '<region> off_by=x',
    '<region> group=1',
    '<region> group=2.0 off_by=2',
  ])('is none in %s', (text) => {
    expect(marks(text)).toEqual([]);
  });

  it('says which groups there are, in their order', () => {
    const message = (groups: number[]) =>
      foundBy(offByUnknown, `${groups.map((one) => `<region> group=${one} `).join('')}<region> off_by=99`)
        .messages[0];
    expect(message([10, 9])).toMatch(/in group 99, .*Groups in use: 9, 10\. Correct/);
    expect(message([9, 10])).toMatch(/Groups in use: 9, 10\./);
    expect(message([2, 3, 1])).toMatch(/Groups in use: 1, 2, 3\./);
    expect(message([8, 7, 6, 5, 4, 3, 2, 1])).toMatch(/in use: 1, 2, 3, 4, 5, 6, 7, 8\. /);
    expect(message([9, 8, 7, 6, 5, 4, 3, 2, 1])).toMatch(/in use: 1, 2, 3, 4, 5, 6, 7, 8, …\. /);
    expect(message([])).toMatch(/^No region has a group, so nothing silences this\. Correct/);
    expect(foundBy(offByUnknown, '<region> group=x off_by=9').messages[0]).toMatch(/No region has a group,/);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(offByUnknown).toMatchObject({
      code: 'off-by-unknown',
      severity: 'warning',
      finds: expect.stringContaining('a group that no region is in'),
    });
  });
});
