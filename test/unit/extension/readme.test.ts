import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { rules } from '../../../server/checks/rules';

const readme = readFileSync(resolve(import.meta.dirname, '../../../README.md'), 'utf8');

it.each(rules.map(({ code, severity, finds }) => [code, severity, finds]))(
  'the README tells of %s as it is',
  (code, severity, finds) => {
    expect(readme).toContain(`| \`${code}\` | ${severity} | ${finds} |`);
  },
);
