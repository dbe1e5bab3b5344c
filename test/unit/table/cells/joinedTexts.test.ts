import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const values = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter }) => [sample, lokey, hikey, pitch_keycenter]);
const expected = ['a', 'b', 'c'].map((name, at) => [
  `rec/gusle_${name}.wav`,
  String(50 + 4 * at),
  String(53 + 4 * at),
  String(51 + 4 * at),
]);
const rows = (join: (name: string) => string, open = '{', close = '}') =>
  ['a', 'b', 'c']
    .map(
      (name, at) =>
        `  ${open} ${join(`gusle_${name}`)}, ${50 + 4 * at}, ${53 + 4 * at}, ${51 + 4 * at} ${close},`,
    )
    .join('\n');

describe('names of files that a script joins from texts', () => {
  it.each([
    [
      'two dots',
      `local base = "rec/"\nzones = {\n  -- file, low, high, root\n${rows((one) => `base .. "${one}.wav"`)}\n}`,
    ],
    [
      'two dots without blanks',
      `local base = "rec/"\nzones = {\n  -- file, low, high, root\n${rows((one) => `base.."${one}.wav"`)}\n}`,
    ],
    [
      'a plus',
      `base = "rec/"\nzones = [\n  # file, low, high, root\n${rows((one) => `base + "${one}.wav"`, '(', ')')}\n]`,
    ],
    [
      'a slash',
      `base = "rec"\nzones = [\n  # file, low, high, root\n${rows((one) => `base / "${one}.wav"`, '(', ')')}\n]`,
    ],
    [
      'braces',
      `const base = "rec";\nconst zones = [\n  // file, low, high, root\n${rows((one) => `\`\${base}/${one}.wav\``, '[', ']')}\n];`,
    ],
  ])('are read with %s', (_, text) => {
    expect(values(text)).toEqual(expected);
  });
});
