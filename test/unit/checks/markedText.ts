import { expect } from 'vitest';
import { checkInstrument } from '../../../server/checks/checkInstrument';
import type { SeveritySettings } from '../../../server/checks/rule';
import type { Finding, Fix } from '../../../server/model/finding';
import type { Instrument } from '../../../server/model/instrument';
import type { SampleFacts, SampleLookup, SampleState } from '../../../server/model/samples';
import { sfzNotation } from '../../../server/sfz/notation';
import { readSfz } from '../../../server/sfz/read';

/** A sample file of a test; what is left out is an ordinary WAV file of one second. */
export function wav(facts: Partial<SampleFacts> = {}): SampleState {
  const whole: SampleFacts = {
    container: 'wav',
    encoding: 'pcm',
    sampleRate: 44100,
    channels: 1,
    bitsPerSample: 16,
    frames: 44100,
    lengthSeconds: 1,
    loops: [],
    rootKey: null,
    fineTuneCents: null,
    problems: [],
    ...facts,
  };
  return { kind: 'file', reading: { kind: 'facts', facts: whole } };
}

export type SampleStates = Readonly<Record<string, SampleState>>;

/** Samples in memory. Without a table, every path is an ordinary file. */
export function samplesInMemory(states?: SampleStates, nearest: readonly string[] = []): SampleLookup {
  return {
    state: (path) => (states ? (states[path] ?? { kind: 'missing' }) : wav()),
    nearest: (_path, count) => nearest.slice(0, count),
  };
}

export interface Checked {
  text: string;
  instrument: Instrument;
  findings: Finding[];
}

export interface CheckOptions {
  samples?: SampleLookup;
  severities?: SeveritySettings;
  includes?: Readonly<Record<string, string>>;
}

export function checkText(text: string, options: CheckOptions = {}): Checked {
  const instrument = readSfz(text, {
    path: 'test.sfz',
    include: (path) => {
      const included = options.includes?.[path];
      return included === undefined ? { kind: 'missing' } : { kind: 'text', text: included };
    },
  });
  const context = { instrument, samples: options.samples ?? samplesInMemory(), notation: sfzNotation };
  return { text, instrument, findings: checkInstrument(context, options.severities) };
}

/**
 * Checks a text with marks in it: `^^^ code severity` under a line says that a finding stands above the carets. All
 * findings have to be marked. Answers what {@link checkText} does of the text without the marks.
 */
export function expectMarks(marked: string, options: CheckOptions = {}): Checked {
  const lines: string[] = [];
  const expected: string[] = [];
  for (const line of marked.split('\n')) {
    const mark = /^(\s*)(\^+) (\S+) (\w+)$/.exec(line);
    if (!mark) {
      lines.push(line);
      continue;
    }
    const [, before = '', carets = '', code, severity] = mark;
    expected.push(
      `${lines.length}:${before.length + 1}-${before.length + carets.length + 1} ${code} ${severity}`,
    );
  }
  const checked = checkText(lines.join('\n'), options);
  const source = checked.instrument.sources[0];
  const actual = checked.findings.map(({ start, end, code, severity }) => {
    const from = source?.positionAt(start);
    const to = source?.positionAt(end);
    return `${from?.line}:${from?.column}-${to?.column} ${code} ${severity}`;
  });
  expect(actual.sort()).toEqual(expected.sort());
  return checked;
}

/** The text after a fix. */
export function applyFix(text: string, fix: Fix | undefined): string {
  let result = text;
  for (const { start, end, newText } of [...(fix?.edits ?? [])].sort((a, b) => b.start - a.start)) {
    result = result.slice(0, start) + newText + result.slice(end);
  }
  return result;
}

/** The fixes of the first finding of a code. */
export function fixesOf({ findings }: Checked, code: string): Fix[] {
  return findings.find((finding) => finding.code === code)?.fixes?.() ?? [];
}
