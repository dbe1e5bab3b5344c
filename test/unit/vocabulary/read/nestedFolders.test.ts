import { describe, expect, it } from 'vitest';
import { nestedFolder } from '../../../../server/vocabulary/nestedFolders';

const dir = (folder: string) => ({ element: 'dir', folder });

// As folders of a disk stand in one another.
describe('the folder that elements around a path name', () => {
  it.each([
    ['of one element', [dir('Reeds')], 'Reeds'],
    ['of elements of one name in one another', [dir('Organ/Wood'), dir('Reeds')], 'Organ/Wood/Reeds'],
    ['of an element of another name', [{ element: 'set', folder: 'Organ' }, dir('Reeds')], 'Reeds'],
    ['that names the outer one itself', [dir('Organ'), dir('Organ/Reeds')], 'Organ/Reeds'],
    ['with backslashes', [dir('Organ\\'), dir('Old\\Reeds')], 'Organ/Old/Reeds'],
    ['of none', [], undefined],
  ])('is that %s', (_, around, expected) => {
    expect(nestedFolder(around)).toBe(expected);
  });
});
