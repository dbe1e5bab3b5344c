import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rules } from '../../../server/checks/rules';
import { Parameter } from '../../../server/model/parameterNames';
import { readSfz } from '../../../server/sfz/read';
import { applyFix, checkText, samplesInMemory, wav } from './markedText';

const word = fc.constantFrom(
  ...'<region> <group> <master> <global> <control> <curve> <wrong> sample=a.wav sample=*sine sample= key=60 lokey=c4 hikey=10'.split(
    ' ',
  ),
  ...'lokey=-1 lovel=0 hivel=300 loop_start=9 loop_end=2000 end=1000 offset=-5 lorand=2 seq_position=2 locc1=$A hicc1=-3'.split(
    ' ',
  ),
  ...'default_path=x\\ note_offset=70 LOKEY=3 bogus=1 =3 volume=loud sw_last=24 xfin_lokey=z trigger=release // /* */ \n'.split(
    ' ',
  ),
  '\n',
  '#define $A 5\n',
  '#include "a.sfz"\n',
);

const texts = fc.oneof(
  fc.array(word, { maxLength: 60 }).map((words) => words.join(' ')),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
);

const samples = samplesInMemory({ 'a.wav': wav({ frames: 1000 }) }, ['a.wav', 'x/b.wav']);
const codes = new Set(rules.map(({ code }) => code));

describe('any text', () => {
  it('can be checked: findings have a known code, lie in the text, come in order, and their fixes can be applied', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const { findings, instrument } = checkText(text, { samples });
        let last = 0;
        for (const finding of findings) {
          expect(codes).toContain(finding.code);
          expect(finding.start).toBeLessThanOrEqual(finding.end);
          expect(finding.end).toBeLessThanOrEqual(instrument.sources[finding.source]?.text.length ?? -1);
          if (finding.source === 0) {
            expect(finding.start).toBeGreaterThanOrEqual(last);
            last = finding.start;
          }
          for (const fix of finding.fixes?.() ?? []) {
            const edits = [...fix.edits].sort((a, b) => a.start - b.start);
            edits.forEach((edit, at) => {
              expect(edit.start).toBeGreaterThanOrEqual(edits[at - 1]?.end ?? 0);
            });
            expect(fix.edits.length).toBeGreaterThan(0);
          }
        }
      }),
      { numRuns: 400 },
    );
  });

  it('has findings that safe fixes settle', () => {
    fc.assert(
      fc.property(texts, (text) => {
        for (const finding of checkText(text, { samples }).findings) {
          for (const fix of finding.fixes?.() ?? []) {
            if (!fix.safe) continue;
            const after = checkText(applyFix(text, fix), { samples }).findings;
            const same = after.filter(({ code, start }) => code === finding.code && start === finding.start);
            expect(same).toEqual([]);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('parameters in force', () => {
  it('are those that the model finds, in headers with few and with many parameters', () => {
    const names = ['lokey', 'hikey', 'key', 'lovel', 'volume'];
    const opcode = fc.constantFrom(...names).map((name) => `${name}=1`);
    const body = fc.oneof(
      fc.array(opcode, { maxLength: 4 }),
      fc.array(opcode, { minLength: 70, maxLength: 80 }),
    );
    fc.assert(
      fc.property(body, body, (group, region) => {
        const instrument = readSfz(`<group> ${group.join(' ')} <region> ${region.join(' ')}`, {
          path: 'a.sfz',
        });
        const all = instrument.effectiveParameters(1);
        for (const name of [Parameter.lokey, Parameter.hikey, Parameter.lovel, Parameter.pitch_keycenter]) {
          const found = all.find((one) => one.name === name)?.parameter ?? -1;
          expect(instrument.effective(1, name)).toBe(found);
        }
      }),
      { numRuns: 60 },
    );
  });
});
