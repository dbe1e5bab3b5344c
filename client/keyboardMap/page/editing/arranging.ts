import type { Arrangement } from '../../../../server/gestures/arrangement';
import { isNothing } from '../../../../server/gestures/arrangement';
import type { Gesture } from '../../../../server/gestures/gesture';
import { arranged } from '../../../../server/gestures/gesture';
import { l10n } from '../../../webview/page/l10n';
import { previewText } from '../plot/previewMarks';
import type { ShownMap } from '../shown/shownMap';
import { gripNames, gripWords } from './grips';
import type { InHand } from './inHand';
import { gestureOf } from './inHand';

/** What changing a map asks of its page. */
export interface ArrangingEvents {
  map(): ShownMap | undefined;
  /** Has the text changed. */
  send(arrangement: Arrangement): void;
  /** What is shown is another now. */
  changed(): void;
}

/**
 * Changes of a map by gestures: what is in hand, the preview of it, and what is said about it. A gesture ends in one change
 * of the text or leaves all as it was.
 */
export class Arranging {
  readonly #events: ArrangingEvents;
  #hand: InHand | undefined;
  #isByKeys = false;
  /** Whether a change was sent and the text has not come back. */
  #isSent = false;
  #isLook = false;
  #version: number | undefined;
  #message = '';

  constructor(events: ArrangingEvents) {
    this.#events = events;
  }

  /** What is moved just now. */
  get hand(): Readonly<InHand> | undefined {
    return this.#hand;
  }

  /** Whether the arrow keys move what is in hand. */
  get isByKeys(): boolean {
    return this.#hand !== undefined && this.#isByKeys;
  }

  /** What is said about the change: what it would be, or what came of it. */
  get message(): string {
    return this.#message;
  }

  /** Takes shapes into the hand. */
  take(hand: InHand, isByKeys: boolean): void {
    this.#hand = hand;
    this.#isByKeys = isByKeys;
    this.#show();
  }

  /** Moves what is in hand, from where it was taken, or holds it otherwise. */
  move(change: Partial<InHand>): void {
    if (!this.#hand) return;
    this.#hand = { ...this.#hand, ...change };
    this.#show();
  }

  /** Lets go where it is now: the text is changed. */
  finish(): void {
    const hand = this.#hand;
    if (!hand) return;
    this.#hand = undefined;
    this.perform(gestureOf(hand));
  }

  /** Lets go and leaves all as it was. */
  cancel(message = l10n.t('Nothing was changed.')): void {
    if (!this.#hand) return;
    this.#hand = undefined;
    this.#say(undefined, message);
  }

  /** Makes a gesture at once. */
  perform(gesture: Gesture): void {
    const arrangement = this.#arranged(gesture);
    this.#isLook = false;
    if (!arrangement || !this.isPossible) return;
    if ('refusal' in arrangement) this.#say(undefined, arrangement.refusal);
    else if (isNothing(arrangement)) this.#say(undefined, l10n.t('Nothing was changed.'));
    else {
      this.#isSent = true;
      this.#say(arrangement, this.#message);
      this.#events.send(arrangement);
    }
  }

  /** Shows what a gesture would change, or why it cannot be made; nothing without one. */
  look(gesture: Gesture | undefined): void {
    if (this.#hand || this.#isSent || (!gesture && !this.#isLook)) return;
    const arrangement = gesture && this.#arranged(gesture);
    this.#isLook = arrangement !== undefined;
    if (!arrangement) this.#say(undefined, '');
    else if ('refusal' in arrangement) this.#say(undefined, arrangement.refusal);
    else this.#say(arrangement, this.#textOf(arrangement));
  }

  /** The host has changed the text, or says why not; or something is waited for. */
  answered(message: string): void {
    this.#isSent = false;
    this.#say(undefined, message);
  }

  /** Whether the map is one of a text, which can be changed. */
  get isPossible(): boolean {
    return this.#version !== undefined;
  }

  /** Another document: what was said is about the one before. */
  forget(): void {
    this.#hand = undefined;
    this.#isSent = false;
    this.#message = '';
  }

  /** The map of a version of a text has come; what is in hand may be about one that is no more. */
  textCame(version: number | undefined): void {
    if (version === this.#version) return;
    this.#version = version;
    this.#isSent = false;
    if (this.#hand) this.cancel(l10n.t('The text changed in the meantime, so this was dropped.'));
    else this.#events.changed();
  }

  /** Takes what is chosen into the hand, for arrow keys to move. */
  hold(): void {
    const shapes = this.#events.map()?.held ?? [];
    if (shapes.length > 0 && this.isPossible)
      this.take({ shapes, grip: 'whole', keys: 0, velocities: 0, isParted: false }, true);
  }

  /** Takes a key: takes what is chosen into the hand, or moves what is there. Whether it was one for this. */
  key({ key, shiftKey }: KeyboardEvent): boolean {
    if (!this.#hand) {
      if (key.toLowerCase() === 'g') this.hold();
      return this.hand !== undefined;
    }
    return this.#isByKeys || key === 'Escape' ? this.#heldKey(this.#hand, key, shiftKey) : false;
  }

  #heldKey(hand: InHand, key: string, isFast: boolean): boolean {
    const step = stepOf(key, isFast);
    if (step) {
      this.move({ keys: hand.keys + step.keys, velocities: hand.velocities + step.velocities });
      return true;
    }
    switch (key) {
      case 'Enter':
        this.finish();
        return true;
      case 'Escape':
        this.cancel();
        return true;
      case 'g':
      case 'G': {
        const next = gripNames.indexOf(hand.grip) + (key === 'g' ? 1 : gripNames.length - 1);
        this.move({ grip: gripNames[next % gripNames.length], keys: 0, velocities: 0 });
        return true;
      }
      case 'n':
        this.move({ isParted: !hand.isParted });
        return true;
      case 'r':
        this.move({ takesRoots: hand.takesRoots === undefined ? true : !hand.takesRoots });
        return true;
      default:
        return false;
    }
  }

  #arranged(gesture: Gesture) {
    const map = this.#events.map();
    return map && arranged(map.scene.shapes, map.order, gesture);
  }

  #show(): void {
    const hand = this.#hand;
    const arrangement = hand && this.#arranged(gestureOf(hand));
    if (!hand || !arrangement || 'refusal' in arrangement) return;
    const what = l10n.t('Moving {0}', gripWords[hand.grip]);
    const parted = hand.isParted ? [l10n.t('without neighbours')] : [];
    const text = isNothing(arrangement) ? l10n.t('not moved yet') : this.#textOf(arrangement);
    this.#say(arrangement, `${[what, ...parted].join(', ')}: ${text}`);
  }

  #textOf(arrangement: Arrangement): string {
    const { values, copies, removed } = arrangement;
    const count = new Set([...values, ...copies].map(({ header }) => header)).size;
    const text = previewText(this.#events.map()?.scene.shapes ?? [], arrangement);
    const changed = count === 1 ? l10n.t('1 region changes') : l10n.t('{0} regions change', count);
    const parts = [text, changed];
    if (copies.length > 0) parts.push(l10n.t('{0} more', copies.length));
    if (removed.length > 0) parts.push(l10n.t('{0} removed', removed.length));
    return parts.join('; ');
  }

  #say(preview: Arrangement | undefined, message: string): void {
    const map = this.#events.map();
    if (map) map.preview = preview;
    this.#message = message;
    this.#events.changed();
  }
}

/** How far an arrow key moves; with Shift an octave of keys, or ten velocities. */
function stepOf(key: string, isFast: boolean): { keys: number; velocities: number } | undefined {
  const [keys, velocities] = isFast ? [12, 10] : [1, 1];
  switch (key) {
    case 'ArrowLeft':
      return { keys: -keys, velocities: 0 };
    case 'ArrowRight':
      return { keys, velocities: 0 };
    case 'ArrowUp':
      return { keys: 0, velocities };
    case 'ArrowDown':
      return { keys: 0, velocities: -velocities };
    default:
      return undefined;
  }
}
