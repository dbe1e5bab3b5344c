import { HeaderKind } from '../headerKinds';
import type { Control, InstrumentParts } from '../instrumentParts';
import { headerStride, parameterStride } from '../instrumentParts';
import { keyOfNoteName } from '../keys';
import { Parameter } from '../parameterNames';

/** Low or high key that says that keys do not trigger the region. */
export const keysOff = -1;
const notSet = -32768;

/** Headers and parameters with what is asked of them here. */
export interface HeadersToResolve extends Pick<InstrumentParts, 'names' | 'headers' | 'parameters'> {
  valueText(parameter: number): string;
  number(parameter: number): number;
  own(header: number, name: number): number;
}

/** What each header has in force that most questions are about; see `Instrument`. */
export class HeaderRanges {
  readonly regions: Int32Array;
  readonly lowKey: Int16Array;
  readonly highKey: Int16Array;
  readonly lowVelocity: Int16Array;
  readonly highVelocity: Int16Array;
  readonly sampleParameter: Int32Array;
  readonly controls: Control[] = [{ header: -1, defaultPath: '', keyOffset: 0 }];
  /** By header, its position among {@link controls}; `undefined` where there is only the first. */
  readonly controlOf: Int32Array | undefined;

  constructor(instrument: HeadersToResolve) {
    const { count, kinds } = instrument.headers;
    this.lowKey = new Int16Array(count);
    this.highKey = new Int16Array(count);
    this.lowVelocity = new Int16Array(count);
    this.highVelocity = new Int16Array(count);
    this.sampleParameter = new Int32Array(count);
    let regionCount = 0;
    for (let header = 0; header < count; header++) if (kinds[header] === HeaderKind.region) regionCount++;
    this.regions = new Int32Array(regionCount);
    const controlOf = this.#resolve(instrument);
    this.controlOf = this.controls.length > 1 ? controlOf : undefined;
    for (let header = 0; header < count; header++) {
      if (this.lowKey[header] === notSet) this.lowKey[header] = 0;
      if (this.highKey[header] === notSet) this.highKey[header] = 127;
    }
  }

  /** One pass over headers and parameters, in one piece since it runs at each keystroke. */
  #resolve(instrument: HeadersToResolve): Int32Array {
    const { names } = instrument;
    const { count, kinds, cells: headerCells } = instrument.headers;
    const { cells, numbers, count: parameterCount } = instrument.parameters;
    const { lowKey, highKey, lowVelocity, highVelocity, sampleParameter, regions, controls } = this;
    const controlOf = new Int32Array(count);
    let control = 0;
    let region = 0;
    for (let header = 0; header < count; header++) {
      const kind = kinds[header];
      const at = header * headerStride;
      const parent = headerCells[at + 3];
      const first = headerCells[at + 2];
      const end = header + 1 < count ? headerCells[at + headerStride + 2] : parameterCount;
      const isInner = parent >= 0;
      let low: number = isInner ? lowKey[parent] : notSet;
      let high: number = isInner ? highKey[parent] : notSet;
      let lowVel = isInner ? lowVelocity[parent] : 1;
      let highVel = isInner ? highVelocity[parent] : 127;
      let sample = isInner ? sampleParameter[parent] : -1;
      for (let parameter = first; parameter < end; parameter++) {
        const name = names.canonical(cells[parameter * parameterStride]);
        if (name > Parameter.hivel || name === Parameter.pitch_keycenter) continue;
        if (name === Parameter.sample) {
          sample = parameter;
          continue;
        }
        let value = numbers[parameter];
        if (Number.isNaN(value)) value = keyOfNoteName(instrument.valueText(parameter)) ?? Number.NaN;
        if (!(value >= -1 && value <= 127)) continue;
        if (name === Parameter.lokey) low = value;
        else if (name === Parameter.hikey) high = value;
        else if (name === Parameter.key) low = high = value;
        else if (name === Parameter.lovel) lowVel = value;
        else highVel = value;
      }
      lowVelocity[header] = lowVel;
      highVelocity[header] = highVel;
      sampleParameter[header] = sample;
      controlOf[header] = control;
      if (kind === HeaderKind.region) {
        regions[region++] = header;
        const offset = controls[control].keyOffset;
        low = low === notSet ? 0 : shiftKey(low, offset);
        high = high === notSet ? 127 : shiftKey(high, offset);
      } else if (kind === HeaderKind.control) {
        controls.push(controlAfter(instrument, header, controls[control]));
        control = controls.length - 1;
      }
      lowKey[header] = low;
      highKey[header] = high;
    }
    return controlOf;
  }
}

/** A later `<control>` resets `default_path`; offsets stay until they are set anew. */
function controlAfter(instrument: HeadersToResolve, header: number, before: Control): Control {
  const path = instrument.own(header, Parameter.default_path);
  const note = instrument.own(header, Parameter.note_offset);
  const octave = instrument.own(header, Parameter.octave_offset);
  let keyOffset = before.keyOffset;
  if (note >= 0 || octave >= 0) {
    keyOffset =
      (note >= 0 ? wholeOr0(instrument.number(note)) : 0) +
      12 * (octave >= 0 ? wholeOr0(instrument.number(octave)) : 0);
  }
  return { header, defaultPath: path >= 0 ? instrument.valueText(path) : '', keyOffset };
}

/** A key with note and octave offset added, within 0..127; keys that are off stay so. */
export function shiftKey(key: number, offset: number): number {
  if (key === keysOff || offset === 0) return key;
  return Math.max(0, Math.min(127, key + offset));
}

function wholeOr0(value: number): number {
  return Number.isNaN(value) ? 0 : Math.trunc(value);
}
