import type { Instrument } from '../../model/instrument';
import type { Steps } from '../../model/steps';
import { endsFromLimits } from '../../trade/layerLimits';
import type { XmlHandler } from '../../xml/scan/handler';
import { scanXmlInSteps } from '../../xml/scan/scan';
import type { TakesElement } from '../vocabulary';
import type { StepValue } from './steps';
import { switchedOffIn } from './switchedOff';

/** An element of whose regions one sounds at a time. */
export interface TakesStretch {
  start: number;
  end: number;
  rule: Pick<TakesElement, 'are' | 'upTo'>;
}

/** The elements of a text of whose regions one sounds at a time, the inner ones first; worked out in steps. */
export function* takesIn(text: string, rules: readonly TakesElement[]): Steps<TakesStretch[]> {
  const told = rules.map(({ element, at = '', words = [] }) => ({ element, at, words }));
  const said = yield* switchedOffIn(
    text,
    told.filter(({ at }) => at !== ''),
  );
  const kinds = new Map<number, TakesElement>();
  for (const [start, { rule }] of said) {
    const kind = rules[told.indexOf(rule as (typeof told)[number])];
    if (kind) kinds.set(start, kind);
  }
  const look = new StretchLook(text, kinds, rules);
  yield* scanXmlInSteps(text, look);
  return look.found;
}

/** What tells which of several regions of the same keys and velocities sounds, by region. */
export function takeValues(
  instrument: Instrument,
  stretches: readonly TakesStretch[],
): ReadonlyMap<number, StepValue[]> {
  const sets = new Map<string, { rule: TakesStretch['rule']; regions: number[] }>();
  for (const region of instrument.regions) {
    const { start } = instrument.headerSpan(region);
    const at = stretches.findIndex((one) => one.start <= start && start < one.end);
    const stretch = stretches[at];
    if (!stretch) continue;
    const { lowKey, highKey, lowVelocity, highVelocity } = instrument;
    const id = [at, lowKey[region], highKey[region], lowVelocity[region], highVelocity[region]].join(' ');
    const set = sets.get(id);
    if (set) set.regions.push(region);
    else sets.set(id, { rule: stretch.rule, regions: [region] });
  }
  const values = new Map<number, StepValue[]>();
  for (const { rule, regions } of sets.values()) {
    const count = regions.length;
    if (count < 2) continue;
    const { are } = rule;
    if (are === 'layers') {
      for (const [at, ends] of layerEnds(rule, count).entries()) values.set(regions[at], ends);
      continue;
    }
    const shareOf = (position: number) => Math.round((position / count) * 1e6) / 1e6;
    for (const [at, region] of regions.entries())
      values.set(
        region,
        are === 'turns'
          ? [
              { parameter: 'seq_position', value: at + 1 },
              { parameter: 'seq_length', value: count },
            ]
          : [
              ...(at > 0 ? [{ parameter: 'lorand' as const, value: shareOf(at) }] : []),
              ...(at < count - 1 ? [{ parameter: 'hirand' as const, value: shareOf(at + 1) }] : []),
            ],
      );
  }
  return values;
}

/** The velocities of so many layers; none where there are others than the rule tells of. */
function layerEnds({ upTo = [] }: TakesStretch['rule'], count: number): StepValue[][] {
  if (upTo.length !== count) return [];
  return endsFromLimits(upTo, 'upper').map((ends) =>
    ends
      ? [
          { parameter: 'lovel', value: ends.low },
          { parameter: 'hivel', value: ends.high },
        ]
      : [],
  );
}

/** Finds where the elements end, an inner one before those around it. */
class StretchLook implements XmlHandler {
  readonly found: TakesStretch[] = [];
  readonly #open: { start: number; rule: TakesElement | undefined }[] = [];
  readonly #always: ReadonlyMap<string, TakesElement>;

  constructor(
    readonly text: string,
    readonly kinds: ReadonlyMap<number, TakesElement>,
    rules: readonly TakesElement[],
  ) {
    this.#always = new Map(rules.flatMap((rule) => (rule.at === undefined ? [[rule.element, rule]] : [])));
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    const rule = this.kinds.get(tagStart) ?? this.#always.get(this.text.slice(nameStart, nameEnd));
    this.#open.push({ start: tagStart, rule });
  }

  openEnd(end: number, empty: boolean): void {
    if (empty) this.close(end);
  }

  close(start: number): void {
    const { start: from, rule } = this.#open.pop() ?? {};
    if (rule && from !== undefined) this.found.push({ start: from, end: start, rule });
  }

  attribute(): void {}
  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
