import type { ParameterNames } from '../../../model/parameterNames';

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

/** The two ends of the range that each name belongs to, by the number of the name; −1 for others. */
export function rangeNamesOf(names: ParameterNames): { low: Int32Array; high: Int32Array } {
  let ranges = rangeNames.get(names);
  if (!ranges) {
    ranges = new RangeNames();
    rangeNames.set(names, ranges);
  }
  return ranges.of(names);
}
