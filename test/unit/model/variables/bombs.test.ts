import { afterEach, describe, expect, it, vi } from 'vitest';
import { checkInstrument } from '../../../../server/checks/checkInstrument';
import { keyGap } from '../../../../server/checks/rules/keyGap';
import { sfzNotation } from '../../../../server/sfz/notation';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { samplesInMemory } from '../../checks/markedText';
import { folderWith, run } from '../../commandLine/runInFolder';
import type { Format } from '../../features/anyInstrument';
import { readText } from '../../features/anyInstrument';

afterEach(() => {
  vi.restoreAllMocks();
});

/** Variables that each stand for the one before twice, and a region that uses the last. */
function doubling(format: Format, lines: number): string {
  const define = (name: string, value: string) =>
    format === 'sfz' ? `#define $${name} ${value}\n` : `<define name="${name}" value="${value}"/>\n`;
  const defines = Array.from({ length: lines }, (_, at) =>
    define(`V${at + 1}Z`, at === 0 ? 'abcdefgh' : `$V${at}Z$V${at}Z`),
  ).join('');
  const last = `$V${lines}Z`;
  return format === 'sfz'
    ? `${defines}<region> sample=${last}.wav key=60\n<region> ${last}=1\n`
    : `<instrument>${defines}<region sample="${last}.wav" key="60"/></instrument>`;
}

describe.each(['sfz', 'xml'] as const)('variables of %s that double', (format) => {
  it('end at a length that a value can have, with a finding where they do', () => {
    const text = doubling(format, 60);
    const instrument = readText(format, text);
    const longest = Math.max(...[...instrument.parameters.values.values()].map(({ length }) => length));
    expect(longest).toBeLessThanOrEqual(65_536);
    expect(longest).toBeGreaterThan(8 * 2 ** 12);
    const findings = checkInstrument({
      instrument,
      notation: notations[format],
      samples: samplesInMemory({}),
    });
    const tooLong = findings.filter(({ message }) => message.includes('longer than any value'));
    // 8 characters doubled 13 times are 65,536; the line after that is the first to be told.
    const first = tooLong[0];
    expect(text.slice(first?.start, first?.end)).toBe('$V14Z');
    for (const { message } of findings) expect(message.length).toBeLessThan(1300);
  });

  it('cannot fill the memory by being used often', () => {
    const use = format === 'sfz' ? '<region> region_label=$V14Z\n' : '<region region_label="$V14Z"/>\n';
    const text = doubling(format, 14);
    const at = format === 'sfz' ? text.length : text.length - '</instrument>'.length;
    const instrument = readText(format, text.slice(0, at) + use.repeat(20_000) + text.slice(at));
    const { values } = instrument.parameters;
    const all = [...values.values()].reduce((sum, { length }) => sum + length, 0);
    expect(all).toBeLessThan(40 * 1024 * 1024);
    expect(instrument.regions.length).toBeGreaterThan(20_000);
  });
});

describe('what goes wrong in one file', () => {
  it('is a finding of it, and all others are checked', async () => {
    const { readInSteps } = sfzNotation;
    vi.spyOn(sfzNotation, 'readInSteps').mockImplementation((text, options) => {
      if (text.includes('odd')) throw new RangeError('Invalid string length');
      return readInSteps(text, options);
    });
    const folder = folderWith({
      'a.sfz': '<region> sample=*sine keyy=60\n',
      'b.sfz': '// odd\n<region> sample=*sine\n#include "a.sfz"\n',
      'c.sfz': '<region> sample=*sine keyy=60\n',
    });
    const { status, out } = await run(folder, ['check', '.', '--format', 'json']);
    expect(status).toBe(1);
    const { files } = JSON.parse(out) as {
      files: { path: string; findings: { code: string; message: string }[] }[];
    };
    expect(files.map(({ path, findings }) => [path, findings.map(({ code }) => code)])).toEqual([
      ['a.sfz', ['opcode-unknown']],
      ['b.sfz', ['syntax-error']],
      ['c.sfz', ['opcode-unknown']],
    ]);
    expect(files[1]?.findings[0]?.message).toBe('This file cannot be checked: Invalid string length.');
  });

  it('takes no finding of another check with it', () => {
    vi.spyOn(keyGap, 'check').mockImplementation(() => {
      throw new Error('out of luck');
    });
    const instrument = readText('sfz', '<region> sample=*sine keyy=60\n');
    const findings = checkInstrument({ instrument, notation: sfzNotation, samples: samplesInMemory() });
    expect(findings.map(({ code }) => code)).toEqual(['syntax-error', 'opcode-unknown']);
    expect(findings[0]?.message).toBe(
      'The check key-gap stopped with an error (out of luck), so its findings are missing here. Please report it.',
    );
  });
});
