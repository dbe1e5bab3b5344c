import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';
import type { ParameterNames } from '../model/parameterNames';
import { Parameter } from '../model/parameterNames';
import { InForce } from './inForce';
import { fixOf, valueEdits } from './parameterFixes';
import type { Rule } from './rule';

const rangePattern =
  /^(sw_|xfin_|xfout_|on_|start_)?(lo|hi)(key|vel|chan|bend|prog|bpm|chanaft|polyaft|timer|rand|last|(?:hd)?cc\d+)$/;

/** Low and high parameters of ranges: the canonical numbers of both, by the number of either name as written. */
class RangeNames {
  #low = new Int32Array(1024).fill(-1);
  #high = new Int32Array(1024).fill(-1);
  #known = 0;

  of(names: ParameterNames): { low: Int32Array; high: Int32Array } {
    // Looking up the other end of a range can add its name.
    for (; this.#known < names.size; this.#known++) {
      if (names.size > this.#low.length) {
        this.#low = grown(this.#low, names.size);
        this.#high = grown(this.#high, names.size);
      }
      const name = names.text(names.canonical(this.#known));
      const [, prefix = '', , subject] =
        rangePattern.exec(name) ?? (name === 'key' ? ['', '', '', 'key'] : []);
      if (subject === undefined) continue;
      this.#low[this.#known] = names.canonical(names.idOf(`${prefix}lo${subject}`));
      this.#high[this.#known] = names.canonical(names.idOf(`${prefix}hi${subject}`));
    }
    return { low: this.#low, high: this.#high };
  }
}

function grown(old: Int32Array<ArrayBuffer>, atLeast: number): Int32Array<ArrayBuffer> {
  const fresh = new Int32Array(Math.max(atLeast, old.length * 2)).fill(-1);
  fresh.set(old);
  return fresh;
}

const rangeNames = new WeakMap<ParameterNames, RangeNames>();

/** Finds ranges whose low end is above their high end. */
export const rangeInverted: Rule = {
  code: 'range-inverted',
  severity: 'error',
  finds: 'A range of keys, velocities, controllers or another condition whose low end is above its high end.',
  check(context, report) {
    const { instrument } = context;
    let ranges = rangeNames.get(instrument.names);
    if (!ranges) {
      ranges = new RangeNames();
      rangeNames.set(instrument.names, ranges);
    }
    const { low: lows, high: highs } = ranges.of(instrument.names);
    const { cells } = instrument.parameters;
    const seen = new Set<number>();
    const inForce = new InForce(instrument);
    for (let header = 0; header < instrument.headers.count; header++) {
      const end = instrument.endParameter(header);
      for (let own = instrument.firstParameter(header); own < end; own++) {
        const name = cells[own * parameterStride] as number;
        const lowName = lows[name] as number;
        if (lowName < 0 || isInOrder(instrument, header, lowName)) continue;
        const low = inForce.effective(header, lowName);
        const high = inForce.effective(header, highs[name] as number);
        if (low < 0 || high < 0 || low === high) continue;
        const lowValue = instrument.keyNumber(low);
        const highValue = instrument.keyNumber(high);
        // Below 0 a range is switched off, but for pitch bend.
        if (!(lowValue > highValue) || (highValue < 0 && lowName !== bendOf(instrument.names))) continue;
        const pair = low * 2 ** 26 + high;
        if (
          seen.has(pair) ||
          !isInForce(instrument, inForce, header, lowName, low, highs[name] as number, high)
        )
          continue;
        seen.add(pair);
        const place = Math.max(low, high);
        const other = Math.min(low, high);
        const text = (parameter: number) =>
          `${instrument.names.text(instrument.name(parameter))}=${instrument.valueText(parameter)}`;
        report({
          ...instrument.valueSpan(place),
          message: `${text(low)} is above ${text(high)}, so this never sounds. Put the lower value first.`,
          related: [
            { ...instrument.valueSpan(other), message: `The other end of the range is ${text(other)}.` },
          ],
          fixes: () => {
            if ([low, high].some((one) => instrument.canonicalName(one) === Parameter.key)) return [];
            const edits = [
              ...valueEdits(context, low, instrument.valueText(high)),
              ...valueEdits(context, high, instrument.valueText(low)),
            ];
            return fixOf('Swap the two ends', edits, false);
          },
        });
      }
    }
  },
};

/** A quick answer for the commonest ranges, which the model has worked out already. */
function isInOrder(instrument: Instrument, header: number, lowName: number): boolean {
  if (lowName === Parameter.lokey) {
    return (instrument.lowKey[header] as number) <= (instrument.highKey[header] as number);
  }
  return (
    lowName === Parameter.lovel &&
    (instrument.lowVelocity[header] as number) <= (instrument.highVelocity[header] as number)
  );
}

function bendOf(names: ParameterNames): number {
  return names.canonical(names.idOf('lobend'));
}

/** Whether the two parameters make a range in the header, or in a region that inherits both of them. */
function isInForce(
  instrument: Instrument,
  inForce: InForce,
  header: number,
  lowName: number,
  low: number,
  highName: number,
  high: number,
): boolean {
  const kind = instrument.kind(header);
  if (kind === HeaderKind.region) return true;
  for (let inner = header + 1; inner < instrument.headers.count; inner++) {
    const innerKind = instrument.kind(inner);
    if (innerKind >= HeaderKind.global && innerKind <= kind) return false;
    if (
      innerKind === HeaderKind.region &&
      inForce.effective(inner, lowName) === low &&
      inForce.effective(inner, highName) === high
    )
      return true;
  }
  return false;
}
