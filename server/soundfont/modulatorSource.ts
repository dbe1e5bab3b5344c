/** What moves a modulator: a controller, or one of what a note or channel has beside them. */
export type Mover =
  | {
      kind:
        | 'none'
        | 'velocity'
        | 'key'
        | 'keyPressure'
        | 'pressure'
        | 'bend'
        | 'bendRange'
        | 'link'
        | 'unknown';
    }
  | { kind: 'controller'; number: number };

/** The source of a modulator, taken apart (SoundFont Technical Specification 2.04, section 8.2). */
export interface ModulatorSource {
  mover: Mover;
  /** Whether it goes from the greatest value to the least. */
  isFalling: boolean;
  /** Whether it goes from −1 to 1 in place of 0 to 1. */
  isBipolar: boolean;
  curve: 'linear' | 'concave' | 'convex' | 'switch' | 'unknown';
}

const curves = ['linear', 'concave', 'convex', 'switch'] as const;

const general: ReadonlyMap<number, Exclude<Mover['kind'], 'controller'>> = new Map([
  [0, 'none'],
  [2, 'velocity'],
  [3, 'key'],
  [10, 'keyPressure'],
  [13, 'pressure'],
  [14, 'bend'],
  [16, 'bendRange'],
  [127, 'link'],
]);

const controllerBit = 0x80;
const fallingBit = 0x100;
const bipolarBit = 0x200;
const curveShift = 10;

/** Takes the source of a modulator apart. */
export function sourceOf(bits: number): ModulatorSource {
  const index = bits & 0x7f;
  const isController = (bits & controllerBit) !== 0;
  return {
    mover: isController ? { kind: 'controller', number: index } : { kind: general.get(index) ?? 'unknown' },
    isFalling: (bits & fallingBit) !== 0,
    isBipolar: (bits & bipolarBit) !== 0,
    curve: curves[bits >> curveShift] ?? 'unknown',
  };
}

/** Puts the source of a modulator together. */
export function sourceBits({ mover, isFalling, isBipolar, curve }: ModulatorSource): number {
  const index =
    mover.kind === 'controller'
      ? mover.number | controllerBit
      : ([...general].find(([, kind]) => kind === mover.kind)?.[0] ?? 0);
  return (
    index |
    (isFalling ? fallingBit : 0) |
    (isBipolar ? bipolarBit : 0) |
    (Math.max(0, curves.indexOf(curve as (typeof curves)[number])) << curveShift)
  );
}

/** Whether a controller may move a modulator: bank, data entry, their low halves, parameter numbers and modes may not. */
export function mayModulate(controller: number): boolean {
  return !(
    controller === 0 ||
    controller === 6 ||
    (controller >= 32 && controller <= 63) ||
    (controller >= 98 && controller <= 101) ||
    controller >= 120
  );
}

/** A source of 7 bits is divided by this, so that it never quite reaches 1. */
const steps = 128;
/** The greatest value of a source of 7 bits. */
const most = 127;

/**
 * A linear source as a line: its value is `base + slope · x / 127` for x from 0 to 127.
 */
export function sourceLine({ isFalling, isBipolar }: ModulatorSource): { base: number; slope: number } {
  const slope = ((isBipolar ? 2 : 1) * most) / steps;
  const base = isBipolar ? -1 : 0;
  return isFalling ? { base: -base + (isBipolar ? 0 : 1), slope: -slope } : { base, slope };
}
