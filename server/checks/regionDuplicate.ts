import { conditionsOf } from '../model/conditions';
import type { Instrument } from '../model/instrument';
import { rectangleCode } from '../model/overlaps';
import { Parameter } from '../model/parameterNames';
import { fixOf } from './parameterFixes';
import { lineOf, regionTitle } from './regionText';
import type { Rule } from './rule';
import { sampleUsesOf } from './sampleUses';

/** Regions with one sample, place and condition but different sound that are remembered, to compare more with. */
const mostVariants = 8;

/** Finds regions that play the same sample under the same conditions and with the same sound as another. */
export const regionDuplicate: Rule = {
  code: 'region-duplicate',
  severity: 'warning',
  finds: 'The same sample under the same conditions twice, with nothing that makes the two sound different.',
  check(context, report) {
    const { instrument, notation } = context;
    const conditions = conditionsOf(instrument);
    const samples = sampleUsesOf(context);
    const { uses, useOfRegion } = samples;
    const alike = new Map<number, number | number[]>();
    for (let number = 0; number < instrument.regions.length; number++) {
      const use = uses[useOfRegion[number] as number];
      if (!use || use.path === '' || use.path === '*silence') continue;
      const region = instrument.regions[number] as number;
      const code = rectangleCode(instrument, region);
      if (code < 0) continue;
      const key = code * 2 ** 24 + samples.pathNumber(use);
      const known = alike.get(key);
      if (known === undefined) {
        alike.set(key, region);
        continue;
      }
      const variants = typeof known === 'number' ? [known] : known;
      const set = conditions.ofHeader[region];
      const twin = variants.find(
        (one) => conditions.ofHeader[one] === set && soundsAlike(instrument, one, region),
      );
      if (twin === undefined) {
        if (variants.length < mostVariants) variants.push(region);
        alike.set(key, variants);
        continue;
      }
      report({
        ...instrument.headerSpan(region),
        message: `${regionTitle(instrument, region)} plays on the same keys and velocities, under the same conditions and with the same sound as in line ${lineOf(instrument, twin)}, so it is only louder. Take one of the two out.`,
        related: [{ ...instrument.headerSpan(twin), message: 'The same region stands here first.' }],
        fixes: () =>
          fixOf(
            'Take this region out',
            notation.edit(instrument, { kind: 'removeHeader', header: region }).edits,
            false,
          ),
      });
    }
  },
};

/** Whether two regions with the same sample, keys, velocities and conditions have all else in common, labels aside. */
function soundsAlike(instrument: Instrument, one: number, two: number): boolean {
  if (instrument.rootKey(one) !== instrument.rootKey(two)) return false;
  const first = soundOf(instrument, one);
  const second = soundOf(instrument, two);
  if (first.size !== second.size) return false;
  for (const [name, value] of first) if (second.get(name) !== value) return false;
  // A random part makes two equal regions a doubling that is meant.
  return ![...first.keys()].some((name) => /random/.test(instrument.names.text(name)));
}

const withoutSound = new Set<number>([
  Parameter.sample,
  Parameter.key,
  Parameter.lokey,
  Parameter.hikey,
  Parameter.pitch_keycenter,
  Parameter.lovel,
  Parameter.hivel,
  Parameter.region_label,
  Parameter.group_label,
  Parameter.master_label,
  Parameter.global_label,
]);

function soundOf(instrument: Instrument, region: number): Map<number, number | string> {
  const values = new Map<number, number | string>();
  for (const { name, parameter } of instrument.effectiveParameters(region)) {
    if (withoutSound.has(name)) continue;
    const number = instrument.number(parameter);
    values.set(name, Number.isNaN(number) ? instrument.valueText(parameter) : number);
  }
  return values;
}
