import type { RuleFinding } from '../../checks/rule';
import { opcodeUnknown } from '../../checks/rules/opcodeUnknown';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import type { SampleLookup } from '../../model/samples';
import { spanIn } from '../../model/text/span';
import { sfzNotation } from '../../sfz/notation';

/** The rule asks for no samples. */
const noSamples: SampleLookup = { state: () => ({ kind: 'pending' }), nearest: () => [] };

/** Notes on the names in SFZ or instrument XML that the format does not know, each once: what they say is not read. */
export function unknownNames(instrument: Instrument): ConversionNote[] {
  const found = new Map<string, { first: RuleFinding; count: number }>();
  opcodeUnknown.check({ instrument, samples: noSamples, notation: sfzNotation }, (one) => {
    const finding = typeof one === 'function' ? one() : one;
    const known = found.get(finding.message);
    if (known) known.count++;
    else found.set(finding.message, { first: finding, count: 1 });
  });
  return [...found.values()].map(({ first: { source, start, end, message }, count }) => {
    const more = count > 1 ? ` ${count - 1} more like this.` : '';
    return { kind: 'ignored', ...spanIn(source, start, end), message: message + more };
  });
}
