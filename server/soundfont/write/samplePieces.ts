/** A stretch of the frames of a file; frames before 0 are silence. */
export interface FramePiece {
  start: number;
  /** One past the last frame. */
  end: number;
}

/** A sample as it is laid out in a SoundFont: stretches of its file one behind the other, then silence. */
export interface SampleLayout {
  pieces: FramePiece[];
  /** Frames of the pieces with the silence that the format asks for. */
  frames: number;
  /** First frame of the loop and one past its last, where it has one. */
  loop: FramePiece | undefined;
  /** Frames of silence before the first frame of the file. */
  lead: number;
  /** Whether anything was moved or repeated. */
  isRepaired: boolean;
}

/** Frames that players look at around the points of a loop, and the least length of loops and samples (section 7.10). */
const around = 8;
const shortestLoop = 32;
const shortestSample = 48;

/** Frames on each side that a filter looks at which leaves some out, counted in those that are kept. */
export const filterFrames = 32;

/** The frames on each side of a loop's points that are to be the same (section 7.10). */
export const equalFrames = 4;

/**
 * The frames of a file as they are, with silence behind them where there are too few. Where only one of `step` frames is kept
 * afterwards, the rules are kept for what is left.
 */
export function wholeLayout(frames: number, step = 1): SampleLayout {
  return {
    pieces: [{ start: 0, end: frames }],
    frames: upTo(step, Math.max(step * shortestSample, frames)),
    loop: undefined,
    lead: 0,
    isRepaired: false,
  };
}

/**
 * Lays a looped sample out so that it keeps the rules of the format and sounds the same: a loop that is too short is
 * repeated, one that starts too early is moved on by whole passes, and what stands behind its end goes on as the loop does.
 * `isEven` says that the frames around both points are the same already. (SoundFont Technical Specification 2.04, section
 * 7.10; the repairs are common practice.)
 */
export function loopLayout(frames: number, loop: FramePiece, isEven: boolean, step = 1): SampleLayout {
  const length = loop.end - loop.start;
  const lead = leadOf(loop, step);
  const passes = passesOf(length, step);
  const keepsRules =
    isEven && lead === 0 && passes === 1 && loop.start >= step * around && loop.end + step * around <= frames;
  if (keepsRules) return { ...wholeLayout(frames, step), loop };
  // Moved on by eight frames, both points have frames of the loop on both sides; by as many more as a filter reaches.
  const reach = step > 1 ? step * filterFrames : 0;
  const start = lead + loop.start + step * around + reach;
  const moved = { start, end: start + passes * length };
  const pieces: FramePiece[] = [{ start: -lead, end: loop.end }];
  const end = upTo(step, Math.max(step * shortestSample, moved.end + step * around));
  for (let missing = end + reach - lead - loop.end; missing > 0; missing -= length)
    pieces.push({ start: loop.start, end: loop.start + Math.min(length, missing) });
  return { pieces, frames: end, loop: moved, lead, isRepaired: true };
}

/**
 * As {@link loopLayout} for a loop that is left when the key is let go: what stands behind it is played, so it stays where it
 * is but for whole passes.
 */
export function sustainLayout(frames: number, loop: FramePiece, step = 1): SampleLayout {
  const length = loop.end - loop.start;
  const lead = leadOf(loop, step);
  const passes = passesOf(length, step);
  let before = 0;
  while (lead + loop.start + before * length < step * around || (before * length) % step !== 0) before++;
  const start = lead + loop.start + before * length;
  const moved = { start, end: start + passes * length };
  const repeats = before + passes - 1;
  const pieces: FramePiece[] = [{ start: -lead, end: loop.end }];
  for (let pass = 0; pass < repeats; pass++) pieces.push({ ...loop });
  if (frames > loop.end) pieces.push({ start: loop.end, end: frames });
  const all = lead + frames + repeats * length;
  return {
    pieces: repeats === 0 && lead === 0 ? [{ start: 0, end: frames }] : pieces,
    frames: upTo(step, Math.max(step * shortestSample, all, moved.end + step * around)),
    loop: moved,
    lead,
    isRepaired: repeats > 0 || lead > 0,
  };
}

/** Silence that brings the start of a loop to a frame that is kept. */
function leadOf({ start }: FramePiece, step: number): number {
  return upTo(step, start) - start;
}

/** How often a loop is repeated to be long enough and to end at a frame that is kept. */
function passesOf(length: number, step: number): number {
  let passes = Math.ceil((step * shortestLoop) / length);
  while ((passes * length) % step !== 0) passes++;
  return passes;
}

function upTo(step: number, frames: number): number {
  return Math.ceil(frames / step) * step;
}
