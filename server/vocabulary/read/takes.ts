import type { Instrument } from '../../model/instrument';
import type { Steps } from '../../model/steps';
import type { XmlHandler } from '../../xml/scan/handler';
import { scanXmlInSteps } from '../../xml/scan/scan';
import type { TakesElement } from '../vocabulary';
import type { StepValue } from './steps';
import { switchedOffIn } from './switchedOff';

/** An element of whose regions one sounds at a time. */
export interface TakesStretch {
  start: number;
  end: number;
  are: TakesElement['are'];
}

/** The elements of a text of whose regions one sounds at a time, the inner ones first; worked out in steps. */
export function* takesIn(text: string, rules: readonly TakesElement[]): Steps<TakesStretch[]> {
  const told = rules.map(({ element, at = '', words = [] }) => ({ element, at, words }));
  const said = yield* switchedOffIn(
    text,
    told.filter(({ at }) => at !== ''),
  );
  const kinds = new Map<number, TakesElement['are']>();
  for (const [start, { rule }] of said) {
    const kind = rules[told.indexOf(rule as (typeof told)[number])]?.are;
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
  const sets = new Map<string, { are: TakesElement['are']; regions: number[] }>();
  for (const region of instrument.regions) {
    const { start } = instrument.headerSpan(region);
    const at = stretches.findIndex((one) => one.start <= start && start < one.end);
    const stretch = stretches[at];
    if (!stretch) continue;
    const { lowKey, highKey, lowVelocity, highVelocity } = instrument;
    const id = [at, lowKey[region], highKey[region], lowVelocity[region], highVelocity[region]].join(' ');
    const set = sets.get(id);
    if (set) set.regions.push(region);
    else sets.set(id, { are: stretch.are, regions: [region] });
  }
  const values = new Map<number, StepValue[]>();
  for (const { are, regions } of sets.values()) {
    const count = regions.length;
    if (count < 2) continue;
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

/** Finds where the elements end, an inner one before those around it. */
class StretchLook implements XmlHandler {
  readonly found: TakesStretch[] = [];
  readonly #open: { start: number; are: TakesElement['are'] | undefined }[] = [];
  readonly #always: ReadonlyMap<string, TakesElement['are']>;

  constructor(
    readonly text: string,
    readonly kinds: ReadonlyMap<number, TakesElement['are']>,
    rules: readonly TakesElement[],
  ) {
    this.#always = new Map(
      rules.flatMap(({ element, at, are }) => (at === undefined ? [[element, are]] : [])),
    );
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    const are = this.kinds.get(tagStart) ?? this.#always.get(this.text.slice(nameStart, nameEnd));
    this.#open.push({ start: tagStart, are });
  }

  openEnd(end: number, empty: boolean): void {
    if (empty) this.close(end);
  }

  close(start: number): void {
    const { start: from, are } = this.#open.pop() ?? {};
    if (are && from !== undefined) this.found.push({ start: from, end: start, are });
  }

  attribute(): void {}
  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
