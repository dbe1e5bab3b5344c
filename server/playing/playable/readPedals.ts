import { pedalDownFrom } from '../playingChoices';
import type { PedalSetting } from './playableInstrument';
import type { ValuesInForce } from './valuesInForce';

/** How pedals work in each region; see `PlayableInstrument`. */
export interface RegionPedals {
  pedal: Uint16Array;
  pedals: PedalSetting[];
}

/** Reads `sustain_sw`, `sustain_cc`, `sustain_lo` and those of the sostenuto pedal; regions with equal settings share one. */
export function readPedals(values: ValuesInForce): RegionPedals {
  const count = values.instrument.regions.length;
  const column = (name: string, without: number) => values.numbers(name, new Float64Array(count), without);
  const isOff = (name: string) => values.words(name, ['on', 'off'], new Uint8Array(count), 0);
  const sustain = {
    off: isOff('sustain_sw'),
    cc: column('sustain_cc', 64),
    from: column('sustain_lo', pedalDownFrom),
  };
  const sostenuto = {
    off: isOff('sostenuto_sw'),
    cc: column('sostenuto_cc', 66),
    from: column('sostenuto_lo', pedalDownFrom),
  };
  const pedal = new Uint16Array(count);
  const pedals: PedalSetting[] = [];
  const known = new Map<string, number>();
  const columns = [sustain.off, sustain.cc, sustain.from, sostenuto.off, sostenuto.cc, sostenuto.from];
  for (let region = 0; region < count; region++) {
    if (region > 0 && columns.every((column) => column[region] === column[region - 1])) {
      pedal[region] = pedal[region - 1];
      continue;
    }
    const setting: PedalSetting = {
      sustainController: sustain.cc[region],
      sustainFrom: sustain.off[region] === 1 ? Number.POSITIVE_INFINITY : sustain.from[region],
      sostenutoController: sostenuto.cc[region],
      sostenutoFrom: sostenuto.off[region] === 1 ? Number.POSITIVE_INFINITY : sostenuto.from[region],
    };
    const key = Object.values(setting).join(' ');
    let at = known.get(key);
    if (at === undefined) {
      at = pedals.length;
      pedals.push(setting);
      known.set(key, at);
    }
    pedal[region] = at;
  }
  return { pedal, pedals };
}
