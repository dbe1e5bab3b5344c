import fc from 'fast-check';
import type { SampleFacts } from '../../../server/model/samples';
import type { Vocabulary, VocabularyParameter } from '../../../server/vocabulary/vocabulary';
import { facts } from './examples/invented';

/** The facts of every sample that {@link anyInstrument} names. */
export const anyFacts: SampleFacts = facts(60_000, 48_000);

/** A value that a parameter can have, as SFZ text. Loops and ends lie in an order that makes sense. */
export function anyValue({ parameter, form }: VocabularyParameter): fc.Arbitrary<string> {
  switch (form.kind) {
    case 'key':
    case 'velocity':
    case 'count':
      return whole(0, 127);
    case 'level':
      return whole(-40, 0).map((half) => String(Number(half) / 2));
    case 'pan':
      return whole(-100, 100);
    case 'tuning':
      return form.unit === 'semitones' && parameter === 'transpose' ? whole(-12, 12) : whole(-100, 100);
    case 'position':
      if (parameter === 'end') return whole(40_000, 59_999);
      if (parameter === 'loop_end') return whole(20_000, 30_000);
      return parameter === 'loop_start' ? whole(10_000, 19_000) : whole(0, 9000);
    case 'time':
      return whole(0, 300).map((hundredth) => String(Number(hundredth) / 100));
    case 'number':
      return whole(1, 9);
    case 'words':
      return fc.constantFrom(...new Set(Object.values(form.words)));
    case 'path': {
      const { folder = '', ending = '.wav' } = form;
      const start = folder === '' || folder.endsWith('/') ? folder : `${folder}/`;
      return fc.constantFrom('a', 'b & c', 'deep/d', 'e #1').map((name) => `${start}${name}${ending}`);
    }
    case 'text':
      return fc.constantFrom('plain', 'two words', `<"it's" & so>`, 'é');
  }
}

function whole(min: number, max: number): fc.Arbitrary<string> {
  return fc.integer({ min, max }).map(String);
}

/** Opcodes of some of the parameters that one of the levels has a place for. */
function anyOpcodes(parameters: readonly VocabularyParameter[], most: number): fc.Arbitrary<string> {
  const opcodes = parameters.map((one) => anyValue(one).map((value) => `${one.parameter}=${value}`));
  return fc
    .subarray(opcodes, { maxLength: most })
    .chain((some) => fc.tuple(...some))
    .map((list) => [...new Map(list.map((opcode) => [opcode.split('=')[0], opcode])).values()].join('\n'));
}

/** An SFZ text with all kinds of headers, of parameters that regions or groups of the vocabulary have a place for. */
export function anyInstrument({ levels }: Vocabulary): fc.Arbitrary<string> {
  const parameters = levels.filter(({ is }) => is !== 'instrument').flatMap((level) => level.parameters);
  const header = (names: readonly string[], most: number) =>
    fc
      .tuple(fc.constantFrom(...names), anyOpcodes(parameters, most))
      .map(([name, opcodes]) => `<${name}>\n${opcodes}\n`);
  const hasKeys = parameters.some(({ parameter }) => parameter === 'lokey');
  return fc
    .array(
      fc.oneof(
        { weight: 5, arbitrary: header(['region'], parameters.length) },
        { weight: 2, arbitrary: header(['group', 'master'], 3) },
        { weight: 1, arbitrary: header(['global'], 2) },
        fc.constantFrom('// a remark -- of two\n', '<region>\n', '<group>\n'),
        ...(hasKeys ? [fc.constantFrom('<control>\nnote_offset=3\n', '<control>\noctave_offset=-1\n')] : []),
      ),
      { minLength: 1, maxLength: 14 },
    )
    .map((pieces) => pieces.join(''));
}
